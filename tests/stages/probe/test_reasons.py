"""Why a wire was judged so, in sentences."""

from __future__ import annotations

from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows, table

from backprobe.evidence.reading import WireFacts
from backprobe.stages.probe.reasons import reasons
from backprobe.stages.probe.wires import judge_wires


def said(wire: str, *readings, facts: WireFacts | None = None) -> list[str]:
    """The reasons for one wire of a table."""
    named = {} if facts is None else {wire: facts}
    judged = judge_wires(table(*readings, facts=named), SETUP).wire(wire)
    return list(reasons(judged, facts, setup=SETUP))


def test_a_wire_that_was_only_declared_says_so():
    """Nothing is claimed of it."""
    declared = judge_wires(table(reading("Red", "on", 12.4)), SETUP)
    assert declared.wire("Red") is not None
    bare = judge_wires(table().__class__(wires=("Blue",)), SETUP).wire("Blue")
    assert "not measured yet" in reasons(bare, None, setup=SETUP)


def test_a_constant_is_proven_for_its_minutes_and_its_circuit_is_unknown():
    """Both sentences must stand."""
    lines = said("Red", *rows("Red", SUPPLY))
    assert any("proven for 10 minutes" in line for line in lines)
    assert any("circuit not identified" in line for line in lines)


def test_a_named_circuit_is_not_called_unknown():
    """Once it is named, the sentence goes."""
    lines = said("Red", *rows("Red", SUPPLY), facts=WireFacts(circuits=("fuse F12",)))
    assert not any("circuit not identified" in line for line in lines)


def test_a_limit_never_stands_without_what_it_rests_on():
    """Every sentence with a limit says that it is common practice."""
    lines = said("Violet", *rows("Violet", IGNITION))
    limited = [line for line in lines if "at least" in line or "at most" in line]
    assert limited
    assert all("common practice" in line for line in limited)


def test_the_crank_shows_its_range_and_whose_model_that_is():
    """A MIN hold is not believed to the volt."""
    (line,) = [line for line in said("Violet", *rows("Violet", IGNITION)) if line.startswith("crank")]
    assert "11.60 V" in line
    assert "our own model" in line


def test_a_ban_comes_first():
    """What forbids the wire is read before anything else."""
    lines = said("Red", *rows("Red", SUPPLY), facts=WireFacts(marks=("twisted",)))
    assert "twisted" in lines[0]


def test_a_battery_switch_is_spoken_of():
    """Dead or live with the switch open are two different warnings."""
    dead = said("Red", *rows("Red", SUPPLY), reading("Red", "isolated", 0.01))
    live = said("Red", *rows("Red", SUPPLY), reading("Red", "isolated", 12.5))
    assert any("isolated: 0.01 V, dead" in line for line in dead)
    assert any("isolated: 12.50 V, live" in line for line in live)
