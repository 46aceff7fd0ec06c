"""What drives an input: one wire or several, a diode, a relay, a coil; by keys, never by wording."""

from __future__ import annotations

import pytest

from backprobe.evidence.join_sheet import SignalLevels
from backprobe.evidence.unit_sheet import Pull, UnitInput
from backprobe.findings import Finding, Verdict
from backprobe.stages.join.input_sources import active, bridged, circuit, follows_diode

TWO = ("Violet", "Green")
DOOR = UnitInput(name="door", low_most_V=1.0, high_least_V=4.0, pull=Pull.UP)


def judged(pull: Pull | None = Pull.UP, **level: object) -> tuple[list[Finding], list[str]]:
    """The findings on the door input with what was written of it, and what is missing."""
    entry = UnitInput(name="door", low_most_V=1.0, high_least_V=4.0, pull=pull)
    parts = list(circuit(entry, SignalLevels(lead="door", **level)))
    return [part for part in parts if isinstance(part, Finding)], [part for part in parts if isinstance(part, str)]


def faults(pull: Pull | None = Pull.UP, **level: object) -> str:
    """What speaks against it; empty where it holds."""
    findings, missing = judged(pull, **level)
    assert missing == []
    return findings[0].because if findings[0].verdict is Verdict.FAILS else ""


def test_two_wires_with_nothing_between_them_are_bridged():
    """One fuse then feeds the other's circuit; a diode or a relay keeps them apart."""
    assert "'door' joins Violet and Green with nothing between them" in faults(
        on_V=0.2, off_V=12.3, sources=TWO, isolation="none"
    )
    assert bridged(SignalLevels(lead="door", sources=TWO, isolation="none")) is not None
    assert bridged(SignalLevels(lead="door", sources=TWO, isolation="diode")) is None
    assert bridged(SignalLevels(lead="door", sources=("Violet",), isolation="none")) is None
    assert faults(on_V=0.2, off_V=12.3, sources=TWO, isolation="diode") == ""


def test_what_keeps_two_wires_apart_must_be_said():
    """Nothing is guessed from a name."""
    findings, missing = judged(on_V=0.2, off_V=12.3, sources=TWO)
    assert findings == []
    assert missing == ["isolation of 'door', which follows Violet and Green: diode, relay or none"]


def test_a_relay_needs_a_flyback_diode():
    """At the coil of the relay that keeps wires apart, and at one that hangs on the signal."""
    assert "no flyback diode at its coil" in faults(on_V=0.2, off_V=12.3, sources=TWO, isolation="relay", diode=False)
    assert faults(on_V=0.2, off_V=12.3, sources=TWO, isolation="relay", diode=True) == ""
    assert "a coil without a flyback diode" in faults(on_V=0.2, off_V=12.3, coil=True, diode=False)
    assert faults(on_V=0.2, off_V=12.3, coil=True, diode=False, isolated=True) == ""
    for level in ({"isolation": "relay"}, {"coil": True}):
        assert judged(on_V=0.2, off_V=12.3, **level)[1] == [
            "diode of 'door': whether the relay's coil has a flyback diode"
        ]


@pytest.mark.parametrize(
    ("on_V", "pull", "floats"),
    [
        *((0.2, Pull.UP, False), (0.2, Pull.DOWN, True), (0.2, Pull.NONE, True)),
        *((12.0, Pull.UP, True), (12.0, Pull.DOWN, False)),
    ],
)
def test_an_open_wire_must_be_pulled_away_from_the_signal(on_V: float, pull: Pull, floats: bool):
    """A switch to ground wants a pull-up, one to the supply a pull-down."""
    assert ("it floats" in faults(pull, on_V=on_V, floats_off=True)) is floats


def test_behind_diodes_an_input_is_open_whenever_no_wire_is_on():
    """An active-high input behind diodes wants a pull-down, however low the wires themselves go."""
    assert "not pulled down" in faults(Pull.UP, on_V=12.0, off_V=0.0, sources=TWO, isolation="diode")
    assert faults(Pull.DOWN, on_V=12.0, off_V=0.0, sources=TWO, isolation="diode") == ""
    assert follows_diode(SignalLevels(lead="door", isolation="diode"))


def test_a_resistor_that_was_put_in_counts():
    """Where the unit has no pull, or the wrong one; where nobody knows it is asked for."""
    assert faults(Pull.NONE, on_V=12.0, floats_off=True, pulled="down") == ""
    assert judged(None, on_V=12.0, floats_off=True)[1] == [
        "pull of 'door' in the unit's sheet, or pulled: the wire is open when off"
    ]
    findings, _ = judged(Pull.NONE, on_V=12.0, floats_off=True, pulled="down")
    assert "open when off, pulled down by a resistor that was put in" in findings[0].because


def test_the_unit_must_be_set_as_the_signal_is():
    """0.2 V on and 12.3 V off is active low."""
    level = SignalLevels(lead="door", on_V=0.2, off_V=12.3)
    assert active(DOOR, level) == "low"
    assert "set to active high, and the signal is active low" in faults(on_V=0.2, off_V=12.3, active="high")
    assert faults(on_V=0.2, off_V=12.3, active="low") == ""
    assert active(DOOR, SignalLevels(lead="door", on_V=12.0, floats_off=True)) == "high"
    assert active(DOOR, SignalLevels(lead="door", on_V=12.0)) is None
    assert "set to active low, and the signal is active high" in faults(
        Pull.DOWN, on_V=12.0, floats_off=True, active="low"
    )
