"""Reports."""

import pytest

from backprobe.evidence.report import Event, Report, ReportsTable


@pytest.mark.parametrize(
    ("event", "on"),
    [(Event.IGNITION_ON, True), (Event.IGNITION_OFF, False), (Event.BOOT, None), (Event.HEARTBEAT, None), (None, None)],
)
def test_two_events_speak_of_the_ignition(event, on):
    """All others say nothing of it."""
    assert Report("L1", 0.0, "0", event=event).ignition_event is on


def test_a_units_reports_whatever_its_capitals():
    """Servers and labels differ in them."""
    table = ReportsTable(
        file="r",
        reports=(Report("l1", 0.0, "0"), Report("L1", 1.0, "1"), Report("L2", 2.0, "2")),
        columns=frozenset(),
        units={"l1": 1, "L1": 1, "L2": 1},
    )
    assert [report.time_s for report in table.of_unit(" L1 ")] == [0.0, 1.0]
    assert table.of_unit("L3") == ()
