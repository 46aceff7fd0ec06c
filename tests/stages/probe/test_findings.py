"""The findings on a unit's two slots: role, limits by key position, circuit, and what to do next."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.jobs import HEADER, ROWS, without

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import WireFacts
from backprobe.findings import Finding, Stage, Verdict
from backprobe.formats.readings_csv import read_readings
from backprobe.limits.lookup import meter
from backprobe.stages.probe.answer import answer_table
from backprobe.stages.probe.findings import (
    CARE,
    Demand,
    at_stake,
    measure,
    next_sentence,
    probe_findings,
    share,
    where,
    words,
)
from backprobe.stages.probe.next_reading import Next
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.wires import ProbeResult

SETUP = Setup(system_V=12, meter=meter("basic"))
ELECTRIC = replace(SETUP, has_crank=False)
NAMED = {
    "Red": WireFacts(circuits=("permanent supply, fuse F12",)),
    "Violet": WireFacts(circuits=("ignition feed, fuse F31",)),
}
NOBODY: dict[SlotName, str] = {}
# an accessory wire: live in accessory, dead in the crank
GREY = """\
Grey,off,0.02,,,
Grey,accessory,12.38,,,
Grey,on,12.27,,,
Grey,crank,0.03,min,,
Grey,running,13.90,,,
"""


def result_of(rows: str, setup: Setup = SETUP) -> ProbeResult:
    """What a table of such rows came to."""
    table = read_readings([HEADER, *rows.splitlines()], file="readings.csv", system_V=setup.system_V)
    return answer_table(table, setup).result


def findings_of(
    rows: str, *, setup: Setup = SETUP, facts: dict[str, WireFacts] = NAMED, meant: dict[SlotName, str] = NOBODY
) -> dict[str, Finding]:
    """The findings on a table by their id, each of which comes once."""
    found = probe_findings(result_of(rows, setup), facts, meant=meant, demand=Demand())
    assert len({each.id for each in found}) == len(found)
    return {each.id: each for each in found}


def test_a_good_pair_has_a_finding_for_each_requirement():
    """Role, live, dead, after, crank, circuit, drop: all of the probe stage, all hold, none asks for anything."""
    found = findings_of(ROWS)
    assert list(found) == [
        *("supply_wire", "supply_live", "supply_after", "supply_crank", "supply_circuit", "supply_loaded_drop"),
        *("ignition_wire", "ignition_dead", "ignition_live", "ignition_crank", "ignition_circuit"),
    ]
    assert {each.verdict for each in found.values()} == {Verdict.HOLDS}
    assert {each.stage for each in found.values()} == {Stage.PROBE}
    assert {each.next for each in found.values()} == {None}


def test_the_figure_with_the_least_room_stands_for_its_group():
    """Red is live at 12.55, 12.40, 12.29 and 14.02 V: 12.29 V is shown, 12.29 - 10.5 = 1.79 V inside."""
    live = findings_of(ROWS)["supply_live"]
    assert (live.value, live.margin, live.because) == (12.29, 1.79, "lowest at key on")
    # ±(0.5 % + 2 counts) of 12.29 V: 0.06145 + 0.02 = 0.08145 V
    assert (round(live.low or 0, 5), round(live.high or 0, 5)) == (12.20855, 12.37145)


def test_the_highest_stands_for_what_must_be_dead():
    """Violet shows 0.02 V at key off and 0.03 V in accessory: 1 - 0.03 = 0.97 V inside."""
    dead = findings_of(ROWS)["ignition_dead"]
    assert (dead.value, dead.margin, dead.what) == (0.03, 0.97, "Violet: dead at key off, in accessory")


def test_after_is_proven_for_as_long_as_was_waited():
    """12 minutes in the table: 12 minutes in the words, and no more than that."""
    assert findings_of(ROWS)["supply_after"].because == "proven for 12 minutes, not for a night"
    assert findings_of(ROWS.replace(",12,", ",,"))["supply_after"].because == "proven for 10 minutes, not for a night"


@pytest.mark.parametrize(
    ("row", "verdict", "because"),
    [
        ("Red,crank,10.81,min", "holds", "MIN hold of 100 ms: the starter's inrush may hide a deeper dip"),
        ("Red,crank,9.60,min", "thin", "MIN hold of 100 ms: the starter's inrush may hide a deeper dip"),
        ("Red,crank,8.60,min", "fails", "too low, by a MIN hold"),
        ("Red,crank,8.60,logged", "fails", "too low, by a fast recorder"),
        ("Red,crank,8.60,", "fails", "too low, by the display"),
        ("Red,crank,11.60,", "open", "by the display: it can have missed the dip"),
        ("Red,crank,9.60,logged", "holds", "lowest value of a fast recording"),
    ],
)
def test_the_crank_by_each_capture(row: str, verdict: str, because: str):
    """A hold allows less than it shows, a display proves nothing but disproves, a recording is taken as is."""
    crank = findings_of(without(ROWS, "Red,crank") + row + ",,\n", meant={SlotName.SUPPLY: "Red"})["supply_crank"]
    assert crank.verdict == verdict
    assert crank.because.startswith(because)


def test_an_accessory_wire_meant_for_the_ignition_fails_and_is_named():
    """Live in accessory, dead in the crank: role and both figures fail; what to do instead stands once."""
    found = findings_of(without(ROWS, "Violet") + GREY, meant={SlotName.IGNITION: "Grey"})
    role, dead, crank = (found[f"ignition_{name}"] for name in ("wire", "dead", "crank"))
    assert {role.verdict, dead.verdict, crank.verdict} == {Verdict.FAILS}
    assert "reads as accessory" in role.because
    assert "live in accessory" in role.because
    assert role.next is not None
    assert role.next.startswith("do not use Grey; measure ")
    assert dead.next == crank.next == "do not use Grey"
    assert "ignition_live" not in found


def test_a_wire_in_doubt_is_open_even_where_all_its_figures_hold():
    """1.24 V typed for 12.40 V at key on: set aside, and the wire is not to be used until it was read once more."""
    rows = ROWS.replace("Red,on,12.40", "Red,on,1.24")
    role = findings_of(rows, meant={SlotName.SUPPLY: "Red"})["supply_wire"]
    assert role.verdict is Verdict.OPEN
    assert role.because.endswith("1.24 V at key on contradicts the others")
    assert role.next == "measure Red at key on once more"


def test_a_wire_in_doubt_holds_once_it_was_read_again():
    """The figure read once more agrees with the rest: nothing is open."""
    rows = ROWS.replace("Red,on,12.40,,,\n", "Red,on,1.24,,,\nRed,on,12.40,,,\n")
    assert {each.verdict for each in findings_of(rows).values()} == {Verdict.HOLDS}


def test_a_converter_in_a_24_v_vehicle_fails():
    """12.3 V at every position of a 24 V vehicle: a converter or a centre tap, never the supply."""
    rows = "".join(f"Tap,{key},12.3,,,\n" for key in ("off", "accessory", "on", "running", "after"))
    role = findings_of(rows, setup=replace(SETUP, system_V=24), meant={SlotName.SUPPLY: "Tap"})["supply_wire"]
    assert role.verdict is Verdict.FAILS
    assert "near 12 V in a 24 V system" in role.because


def test_a_slot_without_any_wire_is_open():
    """Nothing measured, nobody means a wire: one finding a slot, with the first reading to take."""
    found = findings_of("")
    assert list(found) == ["supply_wire", "ignition_wire"]
    assert {each.because for each in found.values()} == {"no wire was found for it yet"}
    assert {each.verdict for each in found.values()} == {Verdict.OPEN}
    assert (found["supply_wire"].next or "").startswith("measure a wire not yet measured ")


def test_a_wire_that_was_named_and_not_measured():
    """Every requirement is open and asks for its own reading."""
    found = findings_of("Red,,,,,\n", meant={SlotName.SUPPLY: "Red"})
    assert found["supply_wire"].because == "not measured yet"
    assert found["supply_live"].next == "measure Red at key off"
    assert found["supply_after"].next == "measure Red 10 minutes after key-off, doors shut"
    assert (found["supply_crank"].next or "").startswith("measure Red while the engine cranks, with a MIN hold (out of")


def test_a_meter_without_a_hold_is_not_asked_for_one():
    """A display alone cannot prove the crank: another meter is asked for, not a capture that this one lacks."""
    setup = replace(SETUP, captures=frozenset({Capture.DISPLAY}))
    crank = findings_of("Red,,,,,\n", setup=setup, meant={SlotName.SUPPLY: "Red"})["supply_crank"]
    assert crank.next == "bring a meter with a MIN hold, or a fast recorder: a display cannot prove Red in the crank"


def test_a_recorder_is_asked_for_where_the_meter_has_no_hold():
    """What can only record is asked to record."""
    setup = replace(SETUP, captures=frozenset({Capture.DISPLAY, Capture.LOGGED}))
    crank = findings_of("Red,,,,,\n", setup=setup, meant={SlotName.SUPPLY: "Red"})["supply_crank"]
    assert "with a fast recorder" in (crank.next or "")


def test_what_is_thin_says_how_to_settle_it():
    """The crank wants a recorder; a figure near its limit wants a better meter: 10.55 V ± 0.07 V against 10.5 V."""
    thin = findings_of(without(ROWS, "Red,crank") + "Red,crank,9.60,min,,\n")["supply_crank"]
    assert thin.next == "record Red through a crank with a fast recorder, if one can be had"
    rows = ROWS.replace("Red,accessory,12.55", "Red,accessory,10.55")
    live = findings_of(rows, meant={SlotName.SUPPLY: "Red"})["supply_live"]
    assert live.verdict is Verdict.THIN
    assert live.next == "measure Red in accessory again, with a more exact meter if one can be had"


def test_a_wire_that_is_not_proven_says_what_it_looks_like():
    """All but the crank of a constant: likely one. Key on alone: it may be many things. Nothing: not measured."""
    red = {SlotName.SUPPLY: "Red"}
    likely = findings_of(without(ROWS, "Red,crank"), meant=red)["supply_wire"]
    assert likely.verdict is Verdict.OPEN
    assert likely.because.startswith("looks like constant (")
    assert likely.because.endswith("% by its volts), not proven yet")
    unsure = findings_of("Red,on,12.4,,,\n", meant=red)["supply_wire"]
    assert unsure.because == "what kind of wire it is, is not certain yet"
    assert findings_of("Red,,,,,\n", meant=red)["supply_wire"].because == "not measured yet"


@pytest.mark.parametrize(
    ("facts", "verdict", "because"),
    [
        ({}, Verdict.OPEN, "circuit not identified"),
        ({"Red": WireFacts(circuits=("  ",))}, Verdict.OPEN, "circuit not identified"),
        ({"Red": WireFacts(marks=("thick",))}, Verdict.OPEN, "circuit not identified"),
        ({"Red": WireFacts(circuits=("F12",))}, Verdict.HOLDS, "identified as F12"),
        ({"Red": WireFacts(circuits=("F12",), marks=("yellow",))}, Verdict.FAILS, "never tapped: mark 'yellow'"),
        ({"Red": WireFacts(circuits=("F12", "ABS"))}, Verdict.FAILS, "never tapped: circuit 'ABS': brake"),
    ],
)
def test_what_a_wire_feeds(facts: dict[str, WireFacts], verdict: Verdict, because: str):
    """Undeclared is open, a blank is undeclared, a harmless name holds, one banned word or mark fails."""
    circuit = findings_of(ROWS, facts=facts)["supply_circuit"]
    assert circuit.verdict is verdict
    assert circuit.because.startswith(because)


def test_no_load_is_asked_for_on_a_forbidden_circuit():
    """A lamp on a restraint circuit can set it off: there is no such finding at all."""
    found = findings_of(without(ROWS, "Red,on,12.29"), facts={"Red": WireFacts(circuits=("airbag",))})
    assert "supply_loaded_drop" not in found


def test_the_wire_at_stake_is_the_one_meant_then_the_chosen_then_the_likeliest():
    """Violet if somebody means it; Red by its volts; Red still while its crank is missing; none of an empty table."""
    result = result_of(ROWS)
    named = [at_stake(result, SlotName.SUPPLY, meant=meant) for meant in ("Violet", None, "Nobody's")]
    assert [wire.name if wire else None for wire in named] == ["Violet", "Red", "Red"]
    likely = at_stake(result_of(without(ROWS, "Red,crank")), SlotName.SUPPLY, meant=None)
    assert likely is not None
    assert likely.name == "Red"
    assert at_stake(result_of(""), SlotName.SUPPLY, meant=None) is None


def test_an_electric_vehicle_is_read_in_ready():
    """Its `running` is READY; engine and crank are not spoken of."""
    found = findings_of("Violet,,,,,\n", setup=ELECTRIC, meant={SlotName.IGNITION: "Violet"})
    assert found["ignition_live"].what.endswith("in READY")
    assert found["ignition_after"].what == "Violet: dead 10 minutes after key-off"
    assert found["ignition_after"].because == "not measured yet 10 minutes after key-off"
    assert "crank" not in "".join(found)
    assert where(Key.RUNNING, ELECTRIC) == "in READY"
    assert where(Key.RUNNING, SETUP) == "while running"


@pytest.mark.parametrize(
    ("key", "capture", "sentence"),
    [
        (Key.OFF, Capture.DISPLAY, "measure Red at key off"),
        (Key.ACCESSORY, Capture.DISPLAY, "measure Red in accessory"),
        (
            Key.CRANK,
            Capture.MAX,
            f"measure Red while the engine cranks, with a MAX hold ({CARE[Key.CRANK]})",
        ),
        (Key.CHARGING, Capture.DISPLAY, f"measure Red on the charger ({CARE[Key.CHARGING]})"),
    ],
)
def test_a_reading_is_asked_for_in_one_sentence(key: Key, capture: Capture, sentence: str):
    """Where, how it is held, and what to mind where it can hurt somebody."""
    assert measure("Red", key, capture=capture, setup=SETUP) == sentence


def test_the_next_reading_says_why():
    """A wire that is not in the table has no name yet; without a next reading there is no sentence."""
    upcoming = Next(None, Key.ON, Capture.DISPLAY, "shows whether the key switches it")
    assert next_sentence(upcoming, SETUP) == (
        "measure a wire not yet measured at key on: shows whether the key switches it"
    )
    assert next_sentence(None, SETUP) is None


def test_the_care_that_a_step_wants_is_said():
    """A crank: a vehicle that cannot move off, and nobody near it. A charger: nothing that is orange."""
    assert CARE == {
        Key.CRANK: "out of gear, parking brake on, nobody near the engine",
        Key.CHARGING: "low-voltage wires only; orange cables are for licensed people",
    }


def test_words_and_shares_are_plain():
    """Roles without underscores; never 100 %: 0.9949 is 99 %, 0.995 is over 99 %."""
    assert words(Role.IGNITION_NOT_IN_CRANK) == "ignition not in crank"
    assert [share(p) for p in (0.5, 0.9949, 0.995, 1.0)] == ["50%", "99%", "over 99%", "over 99%"]
