"""How promising a wire is, and what a reading would tell."""

from __future__ import annotations

import math

import pytest
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.belief import believe
from backprobe.stages.probe.promise import GOOD_IN_CRANK, Candidate, Promise, outcome_chances
from backprobe.stages.probe.roles import Role, ways
from backprobe.stages.probe.slots import SlotName, fitness


def candidate(*readings, banned=False) -> Candidate:
    """A wire with these readings."""
    belief = believe("Red", readings, others=(), setup=SETUP)
    fits = {slot: fitness(belief, slot, setup=SETUP, rest_V=12.6) for slot in SlotName}
    return Candidate(belief, fits, banned)


PROMISE = Promise(SETUP)


def test_a_proven_wire_promises_what_its_role_is_sure_of():
    """In the crank it is good already."""
    wire = candidate(*rows("Red", SUPPLY))
    assert PROMISE.in_crank(wire, SlotName.SUPPLY) == 1.0
    assert PROMISE.of(wire, SlotName.SUPPLY) == pytest.approx(wire.belief.roles[Role.CONSTANT])


def test_before_the_crank_it_is_a_matter_of_chance():
    """Three in four hold; a better known battery says more."""
    wire = candidate(*rows("Red", SUPPLY, without="crank"))
    assert PROMISE.in_crank(wire, SlotName.SUPPLY) == GOOD_IN_CRANK
    assert Promise(SETUP, best_crank_V=11.0).in_crank(wire, SlotName.SUPPLY) > GOOD_IN_CRANK
    assert Promise(SETUP, best_crank_V=7.0).in_crank(wire, SlotName.SUPPLY) < GOOD_IN_CRANK


def test_a_wire_that_sagged_or_is_banned_promises_nothing():
    """8 V in the crank, or an airbag circuit."""
    sagged = candidate(*rows("Red", SUPPLY, without="crank"), reading("Red", "crank", 8.0, "min"))
    assert PROMISE.of(sagged, SlotName.SUPPLY) == 0.0
    assert PROMISE.of(candidate(*rows("Red", SUPPLY), banned=True), SlotName.SUPPLY) == 0.0


def test_the_reading_that_is_owed_tells_more_than_one_that_is_known():
    """With `after` missing on a supply, `after` is worth more than key-off once more."""
    wire = candidate(*rows("Red", SUPPLY, without="after"))
    worth = {
        key: PROMISE.information_bits(wire, SlotName.SUPPLY, key=key, capture=Capture.DISPLAY)
        for key in (Key.AFTER, Key.OFF)
    }
    assert worth[Key.AFTER] > worth[Key.OFF] >= 0.0


def test_an_ignition_says_nothing_of_the_supply():
    """A wire that is dead at key-off is hardly a constant."""
    assert PROMISE.of(candidate(*rows("Red", IGNITION)), SlotName.SUPPLY) < 0.01


@pytest.mark.parametrize("key", [Key.OFF, Key.ON, Key.CRANK, Key.AFTER])
def test_the_chances_of_each_way_are_whole(key):
    """Zero, battery level, or anything else: together certain."""
    for chances, (way, _) in zip(outcome_chances(12, key, capture=Capture.MIN), ways(12), strict=True):
        assert math.fsum(chances) == pytest.approx(1.0), way.role
