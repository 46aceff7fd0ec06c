"""A slot's requirements, one by one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows

from backprobe.evidence.keys import Capture, Key
from backprobe.findings import Verdict
from backprobe.stages.probe.belief import believe
from backprobe.stages.probe.slots import SlotName, better_capture_to_be_had, choosable, fitness, required, worst_of


def fit(slot: SlotName, *readings, setup=SETUP):
    """A wire's fitness, and what is believed of it."""
    belief = believe("Red", readings, others=(), setup=setup)
    return fitness(belief, slot, setup=setup, rest_V=12.6), belief


def test_what_is_required_outside_the_crank():
    """A supply lives everywhere; an ignition is dead in off and accessory."""
    supply = dict(required(SlotName.SUPPLY, SETUP))
    ignition = dict(required(SlotName.IGNITION, SETUP))
    assert dict.fromkeys((Key.ACCESSORY, Key.ON, Key.RUNNING, Key.AFTER), "live").items() <= supply.items()
    assert set(supply.values()) == {"live"}
    assert {key: ignition[key] for key in (Key.OFF, Key.ACCESSORY, Key.ON)} == {
        Key.OFF: "dead",
        Key.ACCESSORY: "dead",
        Key.ON: "live",
    }


def test_a_vehicle_without_an_accessory_position_is_not_asked_for_it():
    """Push-button vehicles have none."""
    setup = replace(SETUP, has_accessory=False)
    assert all(key is not Key.ACCESSORY for slot in SlotName for key, _ in required(slot, setup))


def test_an_electric_ignition_is_dead_on_the_charger_and_after():
    """'on' alone proves nothing."""
    found = dict(required(SlotName.IGNITION, replace(SETUP, has_crank=False)))
    assert (found[Key.CHARGING], found[Key.AFTER], found[Key.RUNNING]) == ("dead", "dead", "live")


@pytest.mark.parametrize(("slot", "shown"), [(SlotName.SUPPLY, SUPPLY), (SlotName.IGNITION, IGNITION)])
def test_a_wire_that_meets_all_holds(slot, shown):
    """Nothing is missing, nothing is thin."""
    found, belief = fit(slot, *rows("Red", shown))
    assert (found.verdict, found.missing()) == (Verdict.HOLDS, ())
    assert choosable(found, belief, setup=SETUP)


def test_what_was_not_measured_is_open_and_named():
    """Without `after` the supply is open at just that position."""
    found, belief = fit(SlotName.SUPPLY, *rows("Red", SUPPLY, without="after"))
    assert (found.verdict, found.missing()) == (Verdict.OPEN, (Key.AFTER,))
    assert not choosable(found, belief, setup=SETUP)


def test_a_thin_crank_is_chosen_only_within_a_volt():
    """MIN 10.9 V for an ignition ends within 1 V below 10 V; MIN 10.1 V does not."""
    for volts, taken in ((10.90, True), (10.10, False)):
        found, belief = fit(
            SlotName.IGNITION, *rows("Red", IGNITION, without="crank"), reading("Red", "crank", volts, "min")
        )
        assert found.verdict is Verdict.THIN
        assert (found.crank.low_V >= 9.0) is taken
        assert choosable(found, belief, setup=SETUP) is taken


def test_the_worst_crank_counts_and_a_recorder_settles_a_thin_one():
    """Two MIN readings: the lower one counts. A recorder's value takes the place of both."""
    standing = rows("Red", IGNITION, without="crank")
    cranks = [reading("Red", "crank", 11.6, "min"), reading("Red", "crank", 10.9, "min")]
    assert fit(SlotName.IGNITION, *standing, *cranks)[0].crank.value_V == 10.9
    logged, _ = fit(SlotName.IGNITION, *standing, *cranks, reading("Red", "crank", 10.4, "logged"))
    assert (logged.crank.capture, logged.crank.verdict) == (Capture.LOGGED, Verdict.HOLDS)


def test_a_recorder_is_waited_for_until_it_was_tried_in_vain():
    """One MIN: yes. Two: no. No recorder at hand: no."""
    setup = replace(SETUP, captures=SETUP.captures | {Capture.LOGGED})
    once = believe("Red", (reading("Red", "crank", 10.9, "min"),), others=(), setup=setup)
    twice = believe("Red", (reading("Red", "crank", 10.9, "min"),) * 2, others=(), setup=setup)
    assert better_capture_to_be_had(once, setup)
    assert not better_capture_to_be_had(twice, setup)
    assert not better_capture_to_be_had(once, SETUP)


def test_the_worst_of_several_checks_is_the_one_that_fails():
    """A failing position is never hidden behind one that holds."""
    found, _ = fit(SlotName.IGNITION, *rows("Red", IGNITION, without="accessory"), reading("Red", "accessory", 12.4))
    assert worst_of(found.checks).key is Key.ACCESSORY
