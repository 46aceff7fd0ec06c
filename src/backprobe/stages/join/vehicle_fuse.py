"""The vehicle's own fuse above the unit's: does it carry both loads, and does the unit's open first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Limit, Side
from backprobe.limits.fuses import LOAD_PART, LOAD_PART_BASIS, RERATING_BASIS, SELECTIVE_BASIS, SELECTIVE_TIMES
from backprobe.physics.loop import short_circuit_A
from backprobe.physics.span import exactly
from backprobe.stages.given import said
from backprobe.stages.join.fuse_findings import in_amperes
from backprobe.stages.join.fuse_opening import Fuse, fuse_of, hot_rating_A
from backprobe.stages.join.lead_fuse import LEAST_LOOP_OHM, blade, fuse_at
from backprobe.stages.join.measured import together
from backprobe.stages.join.path import to_unit_ohm
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.wiring_case import WiringCase, tap_ohm

CIRCUIT_ID, SELECTIVE_ID = "join_vehicle_fuse", "join_selectivity"
MORE_ROOM = "take a circuit with more to spare; never put a larger fuse into the vehicle's own holder"
SMALLER = "fit a smaller fuse at the tap, else a short at the unit takes the vehicle's own circuit with it"


def vehicle_fuse(case: WiringCase) -> Iterator[Finding | str]:
    """Whether the tapped circuit's own fuse carries its load with the unit, and opens later than the unit's.

    A fuse tap that sits the right way round feeds the unit past that fuse: of it nothing is asked here.
    """
    supplies = [(lead, joint) for lead, joint in case.joined(Purpose.SUPPLY) if not _past_it(joint)]
    rating_A, load_A, peak_A = case.told.vehicle_fuse_A, case.told.vehicle_load_A, case.unit.supply.peak_A
    if not supplies:
        return
    if rating_A is None or load_A is None:
        lacking = [key for key, value in (("vehicle_fuse_A", rating_A), ("vehicle_load_A", load_A)) if value is None]
        yield f"{' and '.join(lacking)}: the tapped circuit's own fuse and load"
    if rating_A is not None and load_A is not None and peak_A is not None:
        yield _carries(case, rating_A, load_A=load_A, peak_A=peak_A)
    for lead, joint in supplies:
        if joint.fuse_A is not None and rating_A is not None:
            yield _selective(case, lead, joint=joint, unit_A=joint.fuse_A, vehicle_A=rating_A)


def _past_it(joint: Joint) -> bool:
    return joint.method is Method.FUSE_TAP and bool(joint.right_way)


def _carries(case: WiringCase, rating_A: float, *, load_A: float, peak_A: float) -> Finding:
    """The circuit's load and the unit's peak against what is left of its fuse when hot [A]."""
    basis = f"{LOAD_PART_BASIS.text}; {RERATING_BASIS.text}"
    hot_A = hot_rating_A(replace(fuse_of(10.0), rating_A=rating_A), ambient_C=case.ambient_C)
    limit = Limit(CIRCUIT_ID, round(LOAD_PART * hot_A, 2), "A", Side.AT_MOST, basis, LOAD_PART_BASIS.standing)
    because = f"{said(load_A)} A and the unit's {said(peak_A)} A on {rating_A:g} A, at {case.ambient_C:g} °C"
    what = "The tapped circuit's own fuse"
    found = in_amperes(limit, exactly(load_A + peak_A), what=what, because=because, then=MORE_ROOM)
    part = None if case.policy is None else case.policy.fuse_load_part
    return tightened(found, None if part is None else round(part * hot_A, 2), policy=case.policy)


def _selective(case: WiringCase, lead: Lead, *, joint: Joint, unit_A: float, vehicle_A: float) -> Finding:
    basis = SELECTIVE_BASIS
    most_A = round(vehicle_A / SELECTIVE_TIMES, 2)
    limit = Limit(SELECTIVE_ID, most_A, "A", Side.AT_MOST, basis.text, basis.standing)
    by_gates = _by_gates(case, lead, joint=joint, upper=blade(vehicle_A, case.told.vehicle_fuse_type))
    because = f"{unit_A:g} A at the tap below the vehicle's {vehicle_A:g} A{by_gates}"
    what = "Which of the two fuses opens first"
    found = in_amperes(limit, exactly(unit_A), what=what, because=because, then=SMALLER)
    times = None if case.policy is None else case.policy.selective_times
    return tightened(found, None if times is None else round(vehicle_A / times, 2), policy=case.policy)


def _by_gates(case: WiringCase, lead: Lead, *, joint: Joint, upper: Fuse | None) -> str:
    """What the gates of both say at a dead short at the unit's end, in words; empty where that cannot be reckoned."""
    lower, through = fuse_at(joint), to_unit_ohm(case, lead, joint=joint, fuse=fuse_at(joint))
    if lower is None or upper is None or through is None:
        return ""
    loop_ohm = max(LEAST_LOOP_OHM, together(tap_ohm(case), through).likely)
    short_A = short_circuit_A(case.sheet.vehicle.system_V, loop_ohm=loop_ohm)
    latest_s, earliest_s = lower.opening(short_A).most_s, upper.opening(short_A).least_s
    at = f"; at a dead short of {said(short_A)} A"
    if latest_s is None:
        return f"{at} the unit's is not sure to open"
    if earliest_s is None:
        return f"{at} the unit's opens within {said(latest_s)} s, the vehicle's nobody says when"
    beyond = ", beyond its last gate by our own model" if short_A > max(upper.gate_currents_A) else ""
    opens = f"{at} the unit's opens within {said(latest_s)} s, the vehicle's not before {said(earliest_s)} s{beyond}"
    return opens if latest_s <= earliest_s else f"{opens}: their gates alone do not say which is first"
