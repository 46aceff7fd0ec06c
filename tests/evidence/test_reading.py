"""A reading keeps what was typed; a table keeps what could not be read."""

from __future__ import annotations

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts


def test_a_reading_keeps_its_figure_as_typed() -> None:
    """'12.30' and '12.3' are the same voltage and two different statements: a count of 0.01 V, and one of 0.1 V."""
    fine = Reading(wire="red", key=Key.ON, volts=12.3, typed="12.30", count_V=0.01)
    coarse = Reading(wire="red", key=Key.ON, volts=12.3, typed="12.3", count_V=0.1)
    assert fine != coarse
    assert fine.capture is Capture.DISPLAY


def test_tables_do_not_share_what_they_hold() -> None:
    """Facts noted for one table do not appear in the next."""
    first, second = ReadingsTable(), ReadingsTable()
    first.facts["red"] = WireFacts(circuits=("fuse 12",))
    assert second.facts == {}
