"""A wire that stays live with the battery switch open, on a dangerous-goods body."""

from __future__ import annotations

from backprobe.evidence.keys import Key
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading
from backprobe.findings import Verdict
from backprobe.stages.walkround.upstream import Tapped, upstream

METER = Meter(name="basic", percent=0.5, counts=2)
RED = Tapped("supply", "Red")


def read(*volts: float, wire: str = "Red", key: Key = Key.ISOLATED):
    """Readings of one wire."""
    return tuple(Reading(wire=wire, key=key, volts=v, typed=f"{v:.2f}", count_V=0.01) for v in volts)


def judged(*readings: Reading, consent: str | None = None):
    """The finding on Red as the supply."""
    return upstream(RED, readings, system_V=12, meter=METER, consent=consent)


def test_a_dead_wire_holds_with_its_figures():
    """0.02 V ± (0.0001 + 0.02): at most 0.05 V, far below the 1 V of a dead wire."""
    found = judged(*read(0.02))
    assert (found.id, found.verdict, found.value, found.next) == ("supply_isolated", Verdict.HOLDS, 0.02, None)
    assert found.limit is not None
    assert found.limit.value == 1.0


def test_a_live_wire_fails_without_consent():
    """12.4 V with the switch open: upstream of it."""
    found = judged(*read(12.40))
    assert found.verdict is Verdict.FAILS
    assert found.next == (
        "do not tap Red without consent: find a wire behind the battery switch, or write who consented"
    )


def test_a_live_wire_holds_by_consent():
    """Who consented is named, and it is held against no limit."""
    found = judged(*read(12.40), consent="the carrier's adviser")
    assert (found.verdict, found.limit) == (Verdict.HOLDS, None)
    assert found.because == "12.40 V with the switch open: upstream of it, by consent of the carrier's adviser"


def test_a_wire_that_was_not_measured_so_is_open():
    """Other wires and other key positions say nothing of it, nor does consent."""
    for readings in ((), read(0.02, wire="Blue"), read(0.02, key=Key.OFF)):
        found = judged(*readings, consent="the carrier's adviser")
        assert (found.verdict, found.next) == (
            Verdict.OPEN,
            "measure Red with the battery switch open, against the frame",
        )


def test_the_highest_of_several_readings_counts():
    """One dead and one live reading: live."""
    assert judged(*read(0.02, 12.4)).verdict is Verdict.FAILS


def test_just_below_the_limit_is_thin():
    """0.99 V ± (0.005 + 0.02) reaches above 1 V: measured again."""
    found = judged(*read(0.99))
    assert found.verdict is Verdict.THIN
    assert (found.next or "").endswith("again, with a more exact meter")
