"""What the unit gets while the starter turns, through joint, fuse, lead and ground, and whether it resets."""

from __future__ import annotations

import math
from collections.abc import Iterator

from backprobe.evidence.unit_sheet import Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.physics.holdup import dips_below, longest_s
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.lead_fuse import fuse_at
from backprobe.stages.join.path import to_unit_ohm
from backprobe.stages.join.wiring_case import Waveform, WiringCase

VOLTS_ID, RESET_ID, IGNITION_ID = "join_unit_volts", "join_unit_reset", "join_ignition_dip"
VOLT_DIGITS, TIME_DIGITS = 2, 3
SHEET = "the unit's sheet"
THICKER = "shorten the supply lead or take thicker wire, mend joint and ground, or tap nearer to the battery"
NO_CRANK = "volts of the supply wire in a crank: a recording of it, or crank_level"


def crank_volts(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on the unit's supply through the worst crank, or what is missing for them."""
    for lead, joint in case.joined(Purpose.SUPPLY):
        if case.unit.supply.peak_A is None:
            yield "the unit's peak current, in its sheet"
            continue
        ohm = to_unit_ohm(case, lead, joint=joint, fuse=fuse_at(joint))
        if ohm is None:
            yield f"length_m of '{lead.name}', and its size in the unit's sheet"
        elif case.supply_crank is None:
            if case.sheet.vehicle.has_crank and case.supply_low is None:
                yield NO_CRANK
        else:
            yield unit_in_crank(case, case.supply_crank, ohm=ohm, peak_A=case.unit.supply.peak_A)


def unit_in_crank(case: WiringCase, crank: Waveform, *, ohm: Span, peak_A: float) -> Finding:
    """Whether the unit rides through `crank` behind `ohm` [Ω] at `peak_A`: in volts, and where it dips, in seconds."""
    supply = case.unit.supply
    least_V, basis = least_needed(case)
    worst_V, likely_V, best_V = (_lowest_V(crank, ohm, peak_A=peak_A, end=end) for end in (-1, 0, 1))
    because = (
        f"{crank.source}; at {said(peak_A)} A {said(1000.0 * peak_A * ohm.likely)} mV are lost in joint, fuse, lead "
        f"and ground ({said(1000.0 * ohm.likely)} mΩ)"
    )
    if round(worst_V, VOLT_DIGITS) >= least_V:
        limit = Limit(VOLTS_ID, least_V, "V", Side.AT_LEAST, basis, Standing.PUBLISHED)
        seen = Span(worst_V, likely_V, best_V)
        return _judged(
            limit, seen, digits=VOLT_DIGITS, what="The unit's supply in a crank", because=because, crank=crank
        )
    held_s = (supply.holdup_ms or 0.0) / 1000.0
    limit = Limit(RESET_ID, held_s, "s", Side.AT_MOST, f"hold-up time: {basis}", Standing.PUBLISHED)
    below = f"{because}; down to {likely_V:.2f} V ({worst_V:.2f} to {best_V:.2f}), {least_V:g} V are needed"
    seen = _below_s(crank, ohm, peak_A=peak_A, least_V=least_V)
    return _judged(
        limit, seen, digits=TIME_DIGITS, what="Time below the unit's least volts", because=below, crank=crank
    )


def least_needed(case: WiringCase) -> tuple[float, str]:
    """The least volts that the unit needs, with the fleet's own margin [V], and who says so."""
    policy = case.policy
    margin_V = 0.0 if policy is None or policy.unit_margin_V is None else policy.unit_margin_V
    basis = SHEET if not margin_V or policy is None else f"{SHEET} and {margin_V:g} V more by {policy.file}"
    return case.unit.supply.least_V + margin_V, basis


def _lost_V(crank: Waveform, ohm: Span, *, peak_A: float, end: int) -> float:
    """How far the unit lies below a sample of the wire: at the worst end (-1), as likely (0), at the best (1) [V]."""
    loop_ohm = {-1: ohm.high, 0: ohm.likely, 1: ohm.low}[end]
    return peak_A * loop_ohm - end * crank.half_width_V


def _lowest_V(crank: Waveform, ohm: Span, *, peak_A: float, end: int) -> float:
    """The lowest that the unit gets [V]; a wire cannot give less than nothing."""
    lowest_V = min(volts for volts in crank.volts if not math.isnan(volts))
    return max(0.0, lowest_V - _lost_V(crank, ohm, peak_A=peak_A, end=end))


def _below_s(crank: Waveform, ohm: Span, *, peak_A: float, least_V: float) -> Span:
    """The longest time below, sample by sample: least by the best end, most by the worst [s].

    What is lost is the same at every sample, so that the wire's own volts are held against as much more.
    """
    worst_s, likely_s, best_s = (
        longest_s(dips_below(crank.time_s, crank.volts, least_V=least_V + _lost_V(crank, ohm, peak_A=peak_A, end=end)))
        for end in (-1, 0, 1)
    )
    return Span(best_s.low, likely_s.likely, worst_s.high)


def ignition_dip(case: WiringCase) -> Iterator[Finding | str]:
    """Whether the ignition input is ever unsure of being on for longer than its debounce, in a crank."""
    entry, crank = case.unit.ignition, case.ignition_crank
    if not list(case.joined(Purpose.IGNITION)) or entry is None:
        return
    if crank is None:
        if case.sheet.vehicle.has_crank and case.ignition_low is None:
            yield "volts of the ignition wire in a crank: a recording of it"
        return
    debounce_s = entry.debounce_s if entry.debounce_s is not None else case.unit.reporting.debounce_off_s
    seen = longest_s(
        dips_below(crank.time_s, [volts - crank.half_width_V for volts in crank.volts], least_V=entry.high_least_V)
    )
    if debounce_s is None and seen.high > 0.0:
        yield "the ignition input's debounce, in the unit's sheet"
        return
    limit = Limit(IGNITION_ID, debounce_s or 0.0, "s", Side.AT_MOST, f"debounce: {SHEET}", Standing.PUBLISHED)
    because = f"{crank.source}; below {entry.high_least_V:g} V the input is not sure to be on"
    what = "The ignition input's longest dip in a crank"
    yield _judged(limit, seen, digits=TIME_DIGITS, what=what, because=because, crank=crank)


def _judged(limit: Limit, seen: Span, *, digits: int, what: str, because: str, crank: Waveform) -> Finding:
    value, low = round(seen.likely, digits), round(seen.low, digits)
    high = round(seen.high, digits) if math.isfinite(seen.high) else None
    endless = high is None and limit.allows(value)
    verdict = Verdict.OPEN if endless else judge(limit, value, low=low, high=value if high is None else high)
    if not crank.verified:
        verdict = Verdict.OPEN
        because = f"{because}; the level's figures are from memory and decide nothing alone"
    then = THICKER if limit.id != IGNITION_ID else "find an ignition wire that stays live through the crank"
    if verdict is Verdict.OPEN:
        then = "record the tapped wires through a whole crank, from before it until the engine runs"
    return Finding(
        id=limit.id,
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
        value=value,
        low=low,
        high=high,
        unit=limit.unit,
        digits=digits,
        limit=limit,
    )
