"""The hazard screen: what makes this vehicle dangerous to work on, each with the caution that belongs to it."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.unit_sheet import Purpose, UnitSheet
from backprobe.evidence.walkround import Hazards
from backprobe.findings import Finding
from backprobe.stages.walkround import cautions
from backprobe.stages.walkround.battery_switch import battery_switch, has_switch
from backprobe.stages.walkround.doubts import Doubt, Matter, listed, not_said, wrong

SCREEN = Matter("hazards", "Hazards")
HIGH_VOLTAGE = Matter("hazard_high_voltage", "High voltage")
RESTRAINT = Matter("hazard_restraint", "Restraint wiring near the work")
DUAL_BATTERIES = Matter("hazard_dual_batteries", "Two batteries")
DANGEROUS_GOODS = Matter("hazard_dangerous_goods", "Dangerous-goods body")
TRAILER = Matter("hazard_trailer", "Trailer")
SYSTEM_48V = Matter("hazard_48V", "48 V system")
SYSTEM_24V = Matter("hazard_24V", "24 V system")


def hazards(seen: Hazards, sheet: JobSheet, *, unit: UnitSheet) -> tuple[Finding, ...]:
    """The findings on hazards: one on the screen as a whole, and one with its caution for each hazard that is there."""
    switch = has_switch(seen, sheet.vehicle.battery_switch)
    grounds = {lead.name for lead in unit.leads_for(Purpose.GROUND)}
    return (
        _screen(seen, switch),
        *_high_voltage(seen, sheet.vehicle.has_crank),
        *_restraint(seen),
        *_system_24V(sheet.vehicle.system_V, unit),
        *_caution(SYSTEM_48V, seen.system_48V, said=cautions.SYSTEM_48V),
        *_caution(DUAL_BATTERIES, seen.dual_batteries, said=cautions.DUAL_BATTERIES),
        *battery_switch(
            seen,
            sheet.vehicle.battery_switch,
            grounds=[joint for joint in sheet.joints if joint.lead in grounds],
        ),
        *_dangerous_goods(seen, switch),
        *_caution(TRAILER, seen.trailer, said=cautions.TRAILER),
    )


def _screen(seen: Hazards, switch: bool | None) -> Finding:
    """Whether each hazard was looked for; what is there has a finding of its own."""
    looked_for = {
        "high voltage": seen.high_voltage,
        "restraint wiring near the work": seen.restraint_near_work,
        "two batteries": seen.dual_batteries,
        "battery switch": switch,
        "dangerous-goods body": seen.dangerous_goods,
        "trailer": seen.trailer,
        "48 V": seen.system_48V,
    }
    unknown = [name for name, found in looked_for.items() if found is None]
    then = "look, and answer each with true or false under [hazards]"
    doubts = [not_said(f"not said whether there is: {listed(unknown, 'or')}", then)] if unknown else []
    there = [name for name, found in looked_for.items() if found]
    well = f"hazards looked for: {listed(there)}" if there else "no hazard found"
    return SCREEN.finding(doubts, well=well)


def _caution(matter: Matter, is_there: bool | None, *, said: str) -> Iterator[Finding]:
    """A hazard that needs nothing but to be minded."""
    if is_there:
        yield matter.finding([], well=said)


def _high_voltage(seen: Hazards, has_crank: bool) -> Iterator[Finding]:
    if seen.high_voltage is False and not has_crank:
        said = "the job sheet says there is no crank (electric or hybrid), the walkround that there is no high voltage"
        yield HIGH_VOLTAGE.finding([not_said(said, "look again, and put sheet or walkround right")], well="")
    elif seen.high_voltage:
        then = "ask a licensed person where low-voltage work may be done, and write who (high_voltage_by)"
        doubts = [] if seen.high_voltage_by else [not_said(cautions.HIGH_VOLTAGE, then)]
        yield HIGH_VOLTAGE.finding(doubts, well=f"by {seen.high_voltage_by}; {cautions.HIGH_VOLTAGE}")


def _restraint(seen: Hazards) -> Iterator[Finding]:
    if seen.restraint_near_work:
        then = "work elsewhere, or follow the maker's procedure and write which it was (restraint_procedure)"
        doubts = [] if seen.restraint_procedure else [not_said(cautions.RESTRAINT, then)]
        yield RESTRAINT.finding(doubts, well=f"{cautions.RESTRAINT}; procedure: {seen.restraint_procedure}")


def _system_24V(system_V: int, unit: UnitSheet) -> Iterator[Finding]:
    if system_V == 24:
        yield SYSTEM_24V.finding(list(_too_high(unit, system_V)), well=cautions.SYSTEM_24V)


def _too_high(unit: UnitSheet, system_V: int) -> Iterator[Doubt]:
    most_V = unit.supply.most_V
    if most_V <= system_V:
        said = f"the unit takes at most {most_V:g} V by its sheet, and the vehicle has {system_V} V"
        yield wrong(said, "the dash stays shut: take a unit that is made for 24 V")


def _dangerous_goods(seen: Hazards, switch: bool | None) -> Iterator[Finding]:
    if not seen.dangerous_goods:
        return
    consent = seen.dangerous_goods_consent
    known = f"consent to tap upstream of the switch: {consent}; " if consent else ""
    doubts = []
    if switch is False:
        then = "look for the battery switch again, and ask the carrier how the body is cut off"
        doubts.append(not_said("a dangerous-goods body, and no battery switch was found", then))
    yield DANGEROUS_GOODS.finding(doubts, well=known + cautions.DANGEROUS_GOODS)
