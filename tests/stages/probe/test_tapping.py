"""What stands against tapping a wire, the first thing first."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows

from backprobe.evidence.keys import Capture
from backprobe.stages.probe.belief import believe
from backprobe.stages.probe.slots import SlotName, fitness
from backprobe.stages.probe.tapping import CHARGING_V, Obstacle, obstacle


def against(slot: SlotName, *readings, setup=SETUP, others=()) -> Obstacle | None:
    """What stands against tapping Red for a slot."""
    belief = believe("Red", readings, others=others, setup=setup)
    return obstacle(belief, fitness(belief, slot, setup=setup, rest_V=12.6), setup=setup)


def test_nothing_stands_against_a_proven_wire():
    """All measured, all inside, sure of its role."""
    assert against(SlotName.SUPPLY, *rows("Red", SUPPLY)) is None
    assert against(SlotName.IGNITION, *rows("Red", IGNITION)) is None


def test_what_was_not_measured_stands_against_it():
    """One requirement open is enough."""
    assert against(SlotName.SUPPLY, *rows("Red", SUPPLY, without="after")) is Obstacle.NOT_MEASURED


def test_a_limit_that_is_not_met_comes_first():
    """8.5 V in the crank: no further reading would help."""
    shown = (*rows("Red", SUPPLY, without="crank"), reading("Red", "crank", 8.5, "min"))
    assert against(SlotName.SUPPLY, *shown) is Obstacle.UNFIT


def test_a_contradiction_must_be_answered():
    """1.24 V among figures of 12 V is repeated before anything is tapped."""
    shown = (*rows("Red", SUPPLY, without="on"), reading("Red", "on", 1.24))
    assert against(SlotName.SUPPLY, *shown) is Obstacle.CONTRADICTED
    assert against(SlotName.SUPPLY, *shown, reading("Red", "on", 12.4)) is None


def test_a_thin_crank_waits_for_the_recorder_at_hand():
    """MIN 10.9 V with a recorder in the bag."""
    setup = replace(SETUP, captures=SETUP.captures | {Capture.LOGGED})
    shown = (*rows("Red", IGNITION, without="crank"), reading("Red", "crank", 10.9, "min"))
    assert against(SlotName.IGNITION, *shown, setup=setup) is Obstacle.TOO_THIN


def test_a_low_level_while_running_needs_another_wire_beside_it():
    """Below a charged battery's level a pulled-up line cannot be told from a feed by itself."""
    shown = (*rows("Red", SUPPLY, without="running"), reading("Red", "running", CHARGING_V - 0.4))
    assert against(SlotName.SUPPLY, *shown) in (Obstacle.NOT_COMPARED, Obstacle.UNSURE)
