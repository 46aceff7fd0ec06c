"""Readings in, safe answers out."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows, table

from backprobe.evidence.keys import Capture
from backprobe.evidence.reading import WireFacts
from backprobe.findings import Verdict
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.wires import judge_wires

PAIR = (*rows("Red", SUPPLY), *rows("Violet", IGNITION))


def test_a_proven_pair_is_chosen_and_the_search_stops():
    """Both slots are filled; nothing is asked any more."""
    result = judge_wires(table(*PAIR), SETUP)
    assert (result.supply, result.ignition, result.next) == ("Red", "Violet", None)
    assert [wire.role for wire in result.wires] == [Role.CONSTANT, Role.IGNITION]


def test_a_24_V_pair_is_judged_by_twice_the_limits():
    """The same readings doubled, in a 24 V vehicle."""
    doubled = (*rows("Red", SUPPLY, scale=2), *rows("Violet", IGNITION, scale=2))
    result = judge_wires(table(*doubled), replace(SETUP, system_V=24))
    assert (result.supply, result.ignition) == ("Red", "Violet")


@pytest.mark.parametrize("missing", ["accessory", "on", "crank", "running", "after"])
def test_a_constant_without_one_of_its_positions_is_not_chosen(missing):
    """Live in every position means measured in every position."""
    result = judge_wires(table(*rows("Red", SUPPLY, without=missing), *rows("Violet", IGNITION)), SETUP)
    assert result.supply is None
    assert result.next is not None


@pytest.mark.parametrize("missing", ["off", "accessory", "on", "crank"])
def test_an_ignition_without_one_of_its_positions_is_not_chosen(missing):
    """Its look-alikes differ from it at just those."""
    result = judge_wires(table(*rows("Red", SUPPLY), *rows("Violet", IGNITION, without=missing)), SETUP)
    assert result.ignition is None
    assert result.wire("Violet").role is not Role.IGNITION


def test_a_display_in_the_crank_proves_nothing():
    """12.1 V on a display may be a dip that was missed."""
    shown = (*rows("Red", SUPPLY, without="crank"), reading("Red", "crank", 12.10))
    result = judge_wires(table(*shown, *rows("Violet", IGNITION)), SETUP)
    assert result.supply is None
    assert result.wire("Red").verdict is Verdict.OPEN


def test_a_constant_that_sags_fails():
    """8.5 V by MIN is below 9 V, whatever else is right."""
    shown = (*rows("Red", SUPPLY, without="crank"), reading("Red", "crank", 8.50, "min"))
    red = judge_wires(table(*shown), SETUP).wire("Red")
    assert (red.role, red.verdict, red.tap) == (Role.CONSTANT, Verdict.FAILS, "no")


def test_a_thin_ignition_waits_for_the_recorder_where_there_is_one():
    """MIN 10.9 V allows a true minimum below 10 V: chosen only when nothing better can be had."""
    shown = (*rows("Violet", IGNITION, without="crank"), reading("Violet", "crank", 10.90, "min"))
    alone = judge_wires(table(*rows("Red", SUPPLY), *shown), SETUP)
    assert (alone.ignition, alone.wire("Violet").verdict) == ("Violet", Verdict.THIN)
    better = replace(SETUP, captures=SETUP.captures | {Capture.LOGGED})
    asked = judge_wires(table(*rows("Red", SUPPLY), *shown), better)
    assert asked.ignition is None
    assert (asked.next.wire, asked.next.key, asked.next.capture) == ("Violet", "crank", Capture.LOGGED)


def test_a_min_that_comes_back_for_logged_is_taken():
    """The recorder could not be had after all: the second MIN ends the waiting."""
    better = replace(SETUP, captures=SETUP.captures | {Capture.LOGGED})
    twice = [reading("Violet", "crank", 10.90, "min"), reading("Violet", "crank", 10.92, "min")]
    shown = (*rows("Violet", IGNITION, without="crank"), *twice)
    assert judge_wires(table(*rows("Red", SUPPLY), *shown), better).ignition == "Violet"


def test_an_accessory_wire_is_no_ignition():
    """Live in accessory, dead in the crank: named, failed, not tapped."""
    grey = [reading("Grey", key, volts) for key, volts in (("off", 0.01), ("accessory", 12.5), ("on", 12.4))]
    wire = judge_wires(table(*grey, reading("Grey", "crank", 0.02, "min"), *rows("Red", SUPPLY)), SETUP).wire("Grey")
    assert (wire.role, wire.verdict, wire.tap) == (Role.ACCESSORY, Verdict.FAILS, "no")


def test_a_retained_wire_is_no_constant():
    """Live at key-off, dead after ten minutes."""
    shown = (*rows("Red", SUPPLY, without="after"), reading("Red", "after", 0.03))
    red = judge_wires(table(*shown), SETUP).wire("Red")
    assert (red.role, red.tap) == (Role.RETAINED, "no")


def test_after_five_minutes_is_not_after_ten():
    """A wire held for some minutes may still be live then."""
    shown = (*rows("Red", SUPPLY, without="after"), reading("Red", "after", 12.58, after_min=5.0))
    assert judge_wires(table(*shown), SETUP).supply is None


def test_half_the_battery_in_a_24_V_vehicle_is_never_tapped():
    """A converter or a centre tap: it reads like a perfect 12 V constant."""
    result = judge_wires(table(*rows("Blue", SUPPLY), *rows("Red", SUPPLY, scale=2)), replace(SETUP, system_V=24))
    blue = result.wire("Blue")
    assert (blue.verdict, blue.tap) == (Verdict.FAILS, "no")


def test_a_banned_circuit_is_never_tapped_whatever_its_volts():
    """The label goes before the meter."""
    facts = {"Red": WireFacts(circuits=("SRS feed",))}
    result = judge_wires(table(*PAIR, facts=facts), SETUP)
    assert (result.supply, result.wire("Red").tap) == (None, "never")


def test_a_slip_of_the_pen_is_asked_for_again_and_then_forgotten():
    """1.24 for 12.4 at key on: the next reading repeats it, and the repeat is believed."""
    slipped = (*rows("Red", SUPPLY, without="on"), reading("Red", "on", 1.24), *rows("Violet", IGNITION))
    first = judge_wires(table(*slipped), SETUP)
    assert first.supply is None
    assert (first.next.wire, first.next.key) == ("Red", "on")
    assert judge_wires(table(*slipped, reading("Red", "on", 12.40)), SETUP).supply == "Red"


def test_an_electric_vehicle_proves_its_ignition_without_a_crank():
    """READY is `running`: live there, dead on the charger and after."""
    ev = replace(SETUP, has_crank=False)
    figures = (("off", 0.01), ("accessory", 0.02), ("on", 12.5), ("running", 14.0), ("charging", 0.02), ("after", 0.02))
    violet = [reading("Violet", key, volts) for key, volts in figures]
    red = [*rows("Red", SUPPLY, without="crank"), reading("Red", "charging", 14.0)]
    result = judge_wires(table(*red, *violet), ev)
    assert (result.supply, result.ignition) == ("Red", "Violet")
    unplugged = judge_wires(table(*red, *(each for each in violet if each.key != "charging")), ev)
    assert unplugged.ignition is None


def test_no_wire_is_both():
    """One good constant fills one slot only."""
    result = judge_wires(table(*rows("Red", SUPPLY)), SETUP)
    assert (result.supply, result.ignition) == ("Red", None)
