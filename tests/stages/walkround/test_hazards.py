"""The hazard screen, and the caution of each hazard."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.jobs import NAMED, UNIT

from backprobe.evidence.walkround import Hazards, SwitchSide
from backprobe.findings import Verdict
from backprobe.formats.job_toml import read_job
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.stages.walkround import cautions
from backprobe.stages.walkround.hazards import hazards

NONE_THERE = Hazards(
    high_voltage=False,
    restraint_near_work=False,
    dual_batteries=False,
    battery_switch=False,
    dangerous_goods=False,
    trailer=False,
    system_48V=False,
)
SHEET = read_job(f'[vehicle]\nsystem_V = 12\n[unit]\nsheet = "u.toml"\n{NAMED}', "job.toml")
ELECTRIC = read_job('[vehicle]\nsystem_V = 12\nhas_crank = false\n[unit]\nsheet = "u.toml"\n', "job.toml")
TWENTY_FOUR = read_job('[vehicle]\nsystem_V = 24\n[unit]\nsheet = "u.toml"\n', "job.toml")
LANTERN = read_unit_sheet(UNIT, "u.toml")


def found(seen: Hazards, sheet=SHEET, *, unit=LANTERN):
    """The findings by their ids."""
    return {each.id: each for each in hazards(seen, sheet, unit=unit)}


def test_all_looked_for_and_none_there_is_one_finding():
    """One, and it holds."""
    screen = found(NONE_THERE)
    assert {name: each.verdict for name, each in screen.items()} == {"hazards": Verdict.HOLDS}
    assert screen["hazards"].because == "no hazard found"


def test_what_was_not_answered_is_open_in_one_finding():
    """Seven questions, one finding that names them all; a switch that the sheet knows of is not asked for."""
    (screen,) = found(Hazards()).values()
    assert screen.verdict is Verdict.OPEN
    assert screen.because == (
        "not said whether there is: high voltage, restraint wiring near the work, two batteries, battery switch, "
        "dangerous-goods body, trailer or 48 V"
    )
    known = replace(SHEET, vehicle=replace(SHEET.vehicle, battery_switch=False))
    assert "switch" not in found(Hazards(), known)["hazards"].because


@pytest.mark.parametrize(
    ("hazard", "name", "caution"),
    [
        ({"dual_batteries": True}, "hazard_dual_batteries", cautions.DUAL_BATTERIES),
        ({"trailer": True}, "hazard_trailer", cautions.TRAILER),
        ({"system_48V": True}, "hazard_48V", cautions.SYSTEM_48V),
    ],
)
def test_a_hazard_that_only_has_to_be_minded_holds_with_its_caution(hazard, name: str, caution: str):
    """Once, under its own id; the screen names it."""
    screen = found(replace(NONE_THERE, **hazard))
    assert set(screen) == {"hazards", name}
    assert (screen[name].verdict, screen[name].because) == (Verdict.HOLDS, caution)
    assert screen["hazards"].because.startswith("hazards looked for: ")


def test_high_voltage_is_open_until_a_licensed_person_is_named():
    """Then it holds, and the caution stays."""
    bare = found(replace(NONE_THERE, high_voltage=True))["hazard_high_voltage"]
    assert (bare.verdict, bare.because) == (Verdict.OPEN, cautions.HIGH_VOLTAGE)
    assert "licensed person" in (bare.next or "")
    named = found(replace(NONE_THERE, high_voltage=True, high_voltage_by="Petra Lund"))["hazard_high_voltage"]
    assert (named.verdict, named.because) == (Verdict.HOLDS, f"by Petra Lund; {cautions.HIGH_VOLTAGE}")


def test_a_vehicle_without_a_crank_and_without_high_voltage_is_questioned():
    """The job sheet says electric or hybrid: one of the two is wrong."""
    odd = found(NONE_THERE, ELECTRIC)["hazard_high_voltage"]
    assert odd.verdict is Verdict.OPEN
    assert "hazard_high_voltage" not in found(replace(NONE_THERE, high_voltage=None), ELECTRIC)


def test_restraint_wiring_is_open_until_the_maker_s_procedure_is_named():
    """Or the work is moved elsewhere."""
    bare = found(replace(NONE_THERE, restraint_near_work=True))["hazard_restraint"]
    assert (bare.verdict, bare.because) == (Verdict.OPEN, cautions.RESTRAINT)
    done = replace(NONE_THERE, restraint_near_work=True, restraint_procedure="body manual, section 12")
    followed = found(done)["hazard_restraint"]
    assert followed.verdict is Verdict.HOLDS
    assert followed.because.endswith("procedure: body manual, section 12")


def test_24_volts_come_from_the_job_sheet_and_are_held_against_the_unit_s():
    """A unit of 8 to 32 V may go in; one of 8 to 16 V keeps the dash shut."""
    assert found(NONE_THERE, TWENTY_FOUR)["hazard_24V"].because == cautions.SYSTEM_24V
    low = read_unit_sheet(UNIT.replace("most_V = 32.0", "most_V = 16.0"), "u.toml")
    wrong = found(NONE_THERE, TWENTY_FOUR, unit=low)["hazard_24V"]
    assert (wrong.verdict, wrong.because) == (
        Verdict.FAILS,
        "the unit takes at most 16 V by its sheet, and the vehicle has 24 V",
    )
    assert (wrong.next or "").startswith("the dash stays shut: ")
    assert "hazard_24V" not in found(NONE_THERE)


def test_dangerous_goods_ask_for_a_switch():
    """A body without one is looked at again; with one, the caution and the consent stand there."""
    bare = found(replace(NONE_THERE, dangerous_goods=True))["hazard_dangerous_goods"]
    assert (bare.verdict, bare.because) == (Verdict.OPEN, "a dangerous-goods body, and no battery switch was found")
    switch = replace(
        NONE_THERE,
        dangerous_goods=True,
        battery_switch=True,
        battery_switch_side=SwitchSide.POSITIVE,
        after_run_min=3.0,
    )
    minded = found(switch)["hazard_dangerous_goods"]
    assert (minded.verdict, minded.because) == (Verdict.HOLDS, cautions.DANGEROUS_GOODS)
    consented = found(replace(switch, dangerous_goods_consent="the carrier's adviser"))["hazard_dangerous_goods"]
    assert consented.because.startswith("consent to tap upstream of the switch: the carrier's adviser; ")


def test_the_ground_of_the_job_is_held_against_the_switch():
    """The unit's ground lead, joined at the battery's post, with the switch in the negative side."""
    joined = read_job(
        '[vehicle]\nsystem_V = 12\n[unit]\nsheet = "u.toml"\n'
        '[[joint]]\nlead = "ground"\nplace = "battery negative post"\n'
        '[[joint]]\nlead = "power"\nplace = "battery post"\n',
        "job.toml",
    )
    seen = replace(NONE_THERE, battery_switch=True, battery_switch_side=SwitchSide.NEGATIVE, after_run_min=3.0)
    assert found(seen, joined)["hazard_negative_switch"].because == (
        "lead 'ground' is grounded at 'battery negative post': that bypasses the switch"
    )
