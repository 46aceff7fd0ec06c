"""The supply wire's drop under load, and the range that the unit's sheet states."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.jobs import HEADER, ROWS, without

from backprobe.findings import Finding, Side, Standing, Verdict
from backprobe.formats.readings_csv import read_readings
from backprobe.limits.lookup import limit, meter
from backprobe.stages.probe.answer import answer_table
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.supply_findings import (
    ANOTHER,
    LOAD_IT,
    MEND_IT,
    NAME_FIRST,
    Range,
    against,
    loaded_drop,
    shown,
    unit_limit,
    unit_range,
)
from backprobe.stages.probe.wires import Wire

SETUP = Setup(system_V=12, meter=meter("basic"))  # ±(0.5 % + 2 counts)
BARE = without(ROWS, "Red,on,12.29")


def red(rows: str) -> Wire:
    """The wire Red of a table of such rows."""
    table = read_readings([HEADER, *rows.splitlines()], file="readings.csv", system_V=12)
    wire = answer_table(table, SETUP).result.wire("Red")
    assert wire is not None
    return wire


def drop(rows: str, *, named: bool = True) -> Finding:
    """The finding on Red's drop."""
    return loaded_drop(red(rows), SETUP, named=named)


def unit_findings(rows: str, *, least_V: float | None = 8.0, most_V: float | None = 32.0) -> list[Finding]:
    """The findings on Red against the unit's range."""
    return list(unit_range(red(rows), SETUP, least_V=least_V, most_V=most_V))


def test_the_meter_is_the_one_that_is_reckoned_with():
    """0.5 % and 2 counts, on which the figures below rest."""
    assert (SETUP.meter.percent, SETUP.meter.counts) == (0.5, 2.0)


def test_a_small_drop_holds():
    """12.40 - 12.29 = 0.11 V; 2 counts of each reading and 0.5 % of the drop: 0.04 + 0.00055 V."""
    found = drop(ROWS)
    assert (found.id, found.verdict, found.next) == ("supply_loaded_drop", Verdict.HOLDS, None)
    assert (found.value, found.low, found.high) == (0.11, 0.06945, 0.15055)
    assert found.because == "12.40 V without load, 12.29 V at 1.5 A, key on"


@pytest.mark.parametrize(
    ("loaded", "value", "verdict"),
    [
        ("12.15", 0.25, Verdict.HOLDS),  # up to 0.25 + 0.04 + 0.00125 = 0.29125 V
        ("12.14", 0.26, Verdict.THIN),  # up to 0.26 + 0.04 + 0.0013 = 0.3013 V
        ("12.10", 0.30, Verdict.THIN),  # the limit itself is allowed, whatever floats make of 12.40 - 12.10
        ("12.09", 0.31, Verdict.FAILS),
        ("9.80", 2.60, Verdict.FAILS),
    ],
)
def test_the_drop_against_its_limit_of_0_3_V(loaded: str, value: float, verdict: Verdict):
    """At most 0.3 V, common practice: with its uncertainty inside it holds, outside it fails."""
    found = drop(BARE + f"Red,on,{loaded},,,1.5\n")
    assert (found.value, found.verdict) == (value, verdict)
    assert found.limit is not None
    assert (found.limit.value, found.limit.standing) == (0.3, Standing.COMMON_PRACTICE)
    assert found.next == (None if verdict is Verdict.HOLDS else MEND_IT)


@pytest.mark.parametrize(
    ("rows", "because"),
    [
        ("", "no reading under load yet"),
        ("Red,on,12.29,,,0.1\n", "read under 0.1 A; about 1 to 2 A are wanted, with the engine not cranking"),
        ("Red,on,12.29,,,5\n", "read under 5 A; about 1 to 2 A are wanted, with the engine not cranking"),
        ("Red,crank,10.9,min,,1.5\n", "read under 1.5 A; about 1 to 2 A are wanted, with the engine not cranking"),
        ("Red,isolated,12.29,,,1.5\n", "no reading without load at the key position of the loaded one"),
        ("Red,on,12.29,max,,1.5\n", "no reading without load at the key position of the loaded one"),
    ],
)
def test_without_a_telling_pair_the_drop_is_open(rows: str, because: str):
    """No load, too little, too much, in the crank, or nothing to compare with: open, and the load is asked for."""
    found = drop(BARE + rows)
    assert (found.verdict, found.because, found.next) == (Verdict.OPEN, because, LOAD_IT)
    assert found.value is None


def test_the_circuit_comes_before_the_load():
    """Where nobody has named the circuit, that comes first."""
    assert drop(BARE, named=False).next == NAME_FIRST


@pytest.mark.parametrize("load", ["0.8", "1", "2", "3"])
def test_about_1_to_2_A_takes_in_what_a_lamp_draws(load: str):
    """From 0.8 to 3 A."""
    assert drop(BARE + f"Red,on,12.29,,,{load}\n").verdict is Verdict.HOLDS


def test_a_level_that_rises_under_load_is_no_pair():
    """12.40 V bare and 12.60 V loaded: two counts of each make 0.04 V, so one of them is wrong."""
    found = drop(BARE + "Red,on,12.60,,,1.5\n")
    assert found.verdict is Verdict.OPEN
    assert found.because.endswith("higher under load, so they are no pair")


def test_a_rise_within_the_meter_s_error_is_no_drop():
    """12.42 V loaded against 12.40 V: -0.02 V, from -0.0601 to 0.0201 V."""
    found = drop(BARE + "Red,on,12.42,,,1.5\n")
    assert (found.verdict, found.value, found.high) == (Verdict.HOLDS, -0.02, 0.0201)


def test_the_worst_pair_counts():
    """0.11 V at key on, 0.35 V while running: the feed fails."""
    found = drop(ROWS + "Red,running,13.67,,,2\n")
    assert (found.value, found.verdict) == (0.35, Verdict.FAILS)


def test_a_loaded_reading_is_compared_with_the_last_bare_one_before_it():
    """Read twice at key on as the battery sank: 12.40, 12.33 V, then 12.29 V loaded: 0.04 V."""
    rows = BARE + "Red,on,12.33,,,\nRed,on,12.29,,,1.5\n"
    assert drop(rows).value == 0.04


def test_a_mistyped_bare_reading_is_not_compared_with():
    """1.24 V fits nothing; read once more behind it as 12.40 V: 0.11 V."""
    rows = ROWS.replace("Red,on,12.40", "Red,on,1.24") + "Red,on,12.40,,,\n"
    assert drop(rows).value == 0.11


def test_the_unit_s_lowest_supply_is_judged_in_the_crank():
    """11.40 V against 8 V: 3.40 V inside, and relatively less room than 14.02 V has below 32 V."""
    (found,) = unit_findings(ROWS)
    assert (found.id, found.value, found.margin, found.verdict) == ("supply_unit_least", 11.4, 3.4, Verdict.HOLDS)
    assert found.limit is not None
    assert found.limit.basis == "the unit's sheet"


def test_the_end_with_less_room_for_its_size_counts():
    """(11.32 - 8) / 8 = 0.42 against (16 - 14.11) / 16 = 0.12: the upper end is shown."""
    (found,) = unit_findings(ROWS, most_V=16.0)
    assert (found.id, found.value, found.because) == ("supply_unit_most", 14.02, "highest with key running")


@pytest.mark.parametrize(
    ("least_V", "most_V", "name"), [(18.0, 32.0, "supply_unit_least"), (8.0, 13.0, "supply_unit_most")]
)
def test_a_unit_made_for_another_system_fails(least_V: float, most_V: float, name: str):
    """18 to 32 V or 8 to 13 V in a 12 V vehicle."""
    (found,) = unit_findings(ROWS, least_V=least_V, most_V=most_V)
    assert (found.id, found.verdict, found.next) == (name, Verdict.FAILS, ANOTHER)


def test_a_unit_made_for_24_V_fails_before_anybody_cranks():
    """12.29 V at key on is below 18 V already."""
    (found,) = unit_findings(without(ROWS, "Red,crank"), least_V=18.0)
    assert (found.verdict, found.because) == (Verdict.FAILS, "lowest with key on")


@pytest.mark.parametrize("crank", ["", "Red,crank,11.8,,,\n"])
def test_the_lowest_supply_is_not_proven_before_the_crank(crank: str):
    """Without a crank by a hold or a recorder only the upper end can be told."""
    assert [found.id for found in unit_findings(without(ROWS, "Red,crank") + crank)] == ["supply_unit_most"]


def test_an_electric_vehicle_has_its_lowest_supply_at_rest():
    """No crank to wait for: 12.29 V at key on against 12 V."""
    setup = replace(SETUP, has_crank=False)
    table = read_readings([HEADER, *without(ROWS, "Red,crank").splitlines()], file="readings.csv", system_V=12)
    wire = answer_table(table, setup).result.wire("Red")
    assert wire is not None
    (found,) = unit_range(wire, setup, least_V=12.0, most_V=32.0)
    assert (found.id, found.value, found.because) == ("supply_unit_least", 12.29, "lowest with key on")
    assert found.verdict is Verdict.HOLDS


def test_a_thin_crank_is_recorded_and_no_other_unit_fitted():
    """9.90 V by MIN may hide 7.72 V, below 8 V: a recorder settles it."""
    (found,) = unit_findings(without(ROWS, "Red,crank") + "Red,crank,9.90,min,,\n")
    assert found.verdict is Verdict.THIN
    assert found.next == "record Red through a crank with a fast recorder, if one can be had"


def test_a_sheet_that_states_no_range_asks_nothing():
    """Neither end known, or nothing measured: no finding."""
    assert unit_findings(ROWS, least_V=None, most_V=None) == []
    assert unit_findings("Red,,,,,\n") == []


def test_a_reading_s_range_is_the_meter_s_accuracy():
    """12.40 V: 0.5 % is 0.062 V, 2 counts of 0.01 V are 0.02 V."""
    reading = red(BARE).belief.readings[2]
    found = shown(reading, SETUP)
    assert reading.typed == "12.40"
    assert (found.value, round(found.low or 0, 6), round(found.high or 0, 6)) == (12.4, 12.318, 12.482)


def test_a_range_against_a_limit():
    """What floats add behind the sixth digit decides nothing: 0.1 + 0.2 is at most 0.3."""
    rule = limit("supply_loaded_drop", system_V=12)
    found = against(rule, Range(0.1 + 0.2, 0.1, 0.1 + 0.2), what="w", because="b", then="t")
    assert (found.verdict, found.next, found.unit) == (Verdict.HOLDS, None, "V")


def test_a_limit_of_the_unit_names_its_sheet():
    """Published by the unit's maker."""
    rule = unit_limit("supply_unit_most", 32.0, side=Side.AT_MOST)
    assert (rule.value, rule.unit, rule.warrant) == (32.0, "V", "the unit's sheet (published)")
