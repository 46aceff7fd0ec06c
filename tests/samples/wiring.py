"""A job whose wiring holds in every matter, and ways to make it worse."""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.job_sheet import JobSheet, Vehicle
from backprobe.evidence.join_sheet import Drop, JoinSheet, Mount, Route
from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Pull, Purpose, Supply, UnitInput, UnitSheet
from backprobe.findings import Finding, Verdict
from backprobe.limits.meters import METERS
from backprobe.stages.join.join import join_findings
from backprobe.stages.join.level_waveform import level_waveform
from backprobe.stages.join.wiring_case import WiringCase

POWER = Lead(name="power", purpose=Purpose.SUPPLY, mm2=0.75)
GROUND = Lead(name="ground", purpose=Purpose.GROUND, mm2=0.75)
DOOR = Lead(name="door", purpose=Purpose.INPUT, mm2=0.35)
UNIT = UnitSheet(
    name="Lantern 2",
    maker=None,
    supply=Supply(least_V=7.5, most_V=32, holdup_ms=20, peak_A=1.2),
    leads=(POWER, GROUND, DOOR),
    inputs=(UnitInput(name="door", low_most_V=1.0, high_least_V=4.0, pull=Pull.UP),),
)
MADE = {"strip_mm": 7.0, "strain_relief": True, "damp": False, "pull_N": 120.0, "tugged": True}
ON_RED = Joint(
    lead="power",
    wire="Red",
    method=Method.CRIMPED_BUTT,
    fuse_A=3.0,
    length_m=2.0,
    undo="cut",
    near_module=True,
    **MADE,
)
AT_STUD = Joint(
    lead="ground", method=Method.RING_TERMINAL, place="stud G104", length_m=1.0, **{**MADE, "strip_mm": 6.0}
)
CAPPED = Joint(lead="door", cut_mm=60.0, capped=True, tied_back=True)
SEAT = Mount(
    place="behind the dash", solid=True, reachable=True, dry=True, cool=True, quiet=True, tied=True, clear=True
)
WAY = Route(
    grommets=True,
    sheathed=True,
    held=True,
    drip_loop=True,
    clear_of_heat=True,
    clear_of_fuel=True,
    clear_of_moving=True,
)
TOLD = JoinSheet(
    tap=Drop(74, 2),
    vehicle_fuse_A=15,
    vehicle_load_A=4,
    ground=Drop(14, 2),
    why_spliced="no free way",
    mount=SEAT,
    route=WAY,
)
GOOD = WiringCase(
    sheet=JobSheet(vehicle=Vehicle(system_V=12), unit_sheet="u", joints=(ON_RED, AT_STUD, CAPPED), join=TOLD),
    unit=UNIT,
    meter=METERS["basic"],
    supply_crank=level_waveform("I", system_V=12),
)


def found(case: WiringCase) -> dict[str, Finding]:
    """The findings by id, each once."""
    findings = join_findings(case)
    assert len({each.id for each in findings}) == len(findings)
    return {each.id: each for each in findings}


def told(**changes: object) -> WiringCase:
    """The good case with other things written beside the joints."""
    return replace(GOOD, sheet=replace(GOOD.sheet, join=replace(TOLD, **changes)))


def built(joint: Joint) -> WiringCase:
    """The good case with another joint for its lead."""
    joints = tuple(joint if each.lead == joint.lead else each for each in GOOD.sheet.joints)
    return replace(GOOD, sheet=replace(GOOD.sheet, joints=joints))


def verdicts(case: WiringCase) -> dict[str, Verdict]:
    """The verdicts by id."""
    return {name: each.verdict for name, each in found(case).items()}
