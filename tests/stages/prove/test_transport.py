"""What only keeps the evidence from being complete."""

import pytest
from tests.samples.prove_cases import STEPS, aligned, healthy, named, proven, row, script

from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.transport import backlog, interval_reporting, late_attach, script_too_short


def check(what, rows, steps=STEPS, timing=None):
    """What a check says of script and reports: the strength, None where the pattern is not there."""
    timing = timing or Timing()
    found = what(aligned(rows, steps, timing).best, script(steps), timing=timing)
    return found and found.strength


def together(rows, count):
    """The same rows, `count` of the script's arriving in one second."""
    moved = []
    for index, line in enumerate(rows):
        cells = line.split(",")
        cells[2] = "2026-03-31T09:00:00Z" if index in range(1, 1 + count) else cells[2]
        moved.append(",".join(cells))
    return moved


def test_half_of_the_scripts_reports_in_one_second():
    """14 heartbeats and two events are of the script's time, one heartbeat is older: nine are half and it."""
    assert check(backlog, together(healthy(), 9)) > 0.6
    assert check(backlog, together(healthy(), 3)) is None
    assert check(backlog, healthy()) is None


def test_four_key_events_in_one_second():
    """However many other reports there are."""
    steps = [(0, "off"), (100, "on"), (200, "off"), (300, "on"), (400, "off")]
    told = [(102, "ignition_on"), (220, "ignition_off"), (302, "ignition_on"), (420, "ignition_off")]
    rows = [row(-60, "boot"), *(row(t, event) for t, event in told), *(row(t) for t in range(0, 460, 20))]
    assert check(backlog, together(rows, 4), steps) >= 0.75
    assert check(backlog, together(rows, 3), steps) is None


def test_an_event_beside_a_heartbeat_is_no_backlog():
    """Two reports of one moment arrive together."""
    rows = [row(-60, "boot"), row(302, "ignition_on"), row(303), row(820, "ignition_off"), row(821)]
    assert check(backlog, rows) is None


def test_stamps_that_are_the_servers():
    """All alike to the arrival; or, without arrivals, four key events on one second."""
    assert check(backlog, healthy(late=0.0)) > 0.9
    one_second = [row(900, event, late=None) for event in ("ignition_on", "ignition_off") * 2]
    assert check(backlog, [row(-60, "boot", late=None), *one_second]) > 0.9
    assert check(backlog, healthy(late=None)) is None


def test_nothing_is_said_of_wires_by_the_servers_stamps():
    """The order of what came at once means nothing."""
    rows = [row(-60, "boot", late=0.0), *(row(900, event, late=0.0) for event in ("ignition_on", "ignition_off") * 2)]
    assert named(proven(rows)) == ["backlog"]


LATE = [row(350, "heartbeat", 1), row(410, "heartbeat", 1), row(820, "ignition_off", 0), row(900, "heartbeat", 0)]


def test_the_modem_was_still_attaching():
    """Nothing before the first on could be seen, then all went well."""
    assert check(late_attach, LATE) == 0.9
    assert check(late_attach, [row(290, "boot", late=70.0), *LATE]) == 0.9
    assert named(proven(LATE)) == ["late_attach"]


@pytest.mark.parametrize(
    "rows",
    [healthy(), [row(0), *LATE], [row(-60, "boot"), row(302, "ignition_on"), row(320)], LATE[:2]],
    ids=["reported", "heard before it", "no later turn", "nothing later"],
)
def test_no_late_attach(rows):
    """The on was reported, the unit was heard before it, or nothing shows that it works."""
    assert check(late_attach, rows) is None


def by_interval(interval):
    """A unit that shows its ignition by interval alone."""
    return [row(t, ignition=int(302 <= t < 820)) for t in range(-interval, 1500, interval)]


def test_states_too_short_for_the_interval():
    """On for 500 s: enough for 2 × 200 s and debounce, not for 2 × 300 s."""
    assert check(interval_reporting, by_interval(300), timing=Timing(interval_s=300)) >= 0.65
    assert check(interval_reporting, by_interval(200), timing=Timing(interval_s=200)) is None
    assert check(interval_reporting, healthy(), timing=Timing(interval_s=300)) is None


def test_the_last_report_is_too_early():
    """30 s behind the off it may still come; 90 s behind it is missing. A reported one is there."""
    early = [row(-60, "boot"), row(302, "ignition_on"), row(830)]
    assert check(script_too_short, early) == 0.95
    assert check(script_too_short, [*early, row(890)]) is None
    assert check(script_too_short, healthy()) is None
    assert named(proven(early)) == ["script_too_short"]


def test_a_constant_supply_owes_no_off():
    """However early the file ends."""
    rows = [row(-60, "boot"), row(-58, "ignition_on"), *(row(t, ignition=1) for t in range(-30, 830, 60))]
    assert check(script_too_short, rows) is None
