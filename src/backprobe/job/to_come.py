"""What the unit's own reports will show of a wire, so that nobody has to wait for it with a meter.

A unit that is joined to a wire and reports its supply reads that wire at each position of the key script and all night.
So the supply's level in accessory, at key on and 10 minutes after key-off is taken from its reports where they are
there, and is not asked of a hand where they will come: the wire is meant for the supply and its circuit is identified,
so that nobody joins a guess, and the unit's sheet says that it reports while the vehicle stands. Key off, the crank and
the running engine are read before anything is cut.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.keys import Key
from backprobe.evidence.reading import Reading, ReadingsTable
from backprobe.evidence.report import ReportsTable
from backprobe.evidence.unit_sheet import Purpose, UnitSheet
from backprobe.findings import Finding, Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.probe.findings import REPORTS_CLOSE
from backprobe.stages.probe.permission import bans, identified
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.wires import Wire
from backprobe.stages.prove.prove import Answer
from backprobe.stages.prove.supply_levels import supply_levels

SOURCE = "the unit's reports"
SUPPLY_V = "supply_V"
DIGITS = 2
BY_REPORTS = frozenset({Key.ACCESSORY, Key.ON, Key.AFTER})  # what the script leads through, but for crank and running


def reported_readings(proof: Answer | None, sheet: JobSheet, *, unit: UnitSheet) -> tuple[Reading, ...]:
    """The readings that the unit's reports are, on the wire of its supply lead; none where they say nothing.

    Joined to another wire than the one that is meant for the supply, the unit says nothing of either.
    """
    wire, meant = joined_supply(sheet, unit), meant_for(sheet, SlotName.SUPPLY)
    if proof is None or wire is None or meant not in (None, wire):
        return ()
    found = supply_levels(proof.proof, from_min=limit("after_minutes", system_V=sheet.vehicle.system_V).value)
    return tuple(
        Reading(
            wire=wire,
            key=level.key,
            volts=level.lowest_V,
            typed=f"{level.lowest_V:.{DIGITS}f}",
            count_V=10.0**-DIGITS,
            after_min=level.minutes,
            source=SOURCE,
            spread_V=level.spread_V,
        )
        for level in found
    )


def joined_supply(sheet: JobSheet, unit: UnitSheet) -> str | None:
    """The vehicle's wire that the unit's supply lead is joined to; None where there is none, or more than one."""
    leads = {lead.name for lead in unit.leads_for(Purpose.SUPPLY)}
    wires = {joint.wire for joint in sheet.joints if joint.lead in leads and joint.wire}
    return wires.pop() if len(wires) == 1 else None


def meant_for(sheet: JobSheet, slot: SlotName) -> str | None:
    """The wire that the sheet means for a slot; None where it means none, or more than one."""
    names = {wire.name for wire in sheet.wires if wire.lead == slot}
    return names.pop() if len(names) == 1 else None


def planned(
    setup: Setup, table: ReadingsTable, *, sheet: JobSheet, to_come: frozenset[Key], has_lamp: bool = True
) -> Setup:
    """The setup with what is known of the job's wires: which are meant, which may be loaded, and what is `to_come`."""
    loads = frozenset(
        name for name in table.wires if identified(table.facts.get(name)) and not bans(table.facts.get(name))
    )
    meant = tuple((str(slot), name) for slot in SlotName if (name := meant_for(sheet, slot)) is not None)
    known = setup.has_crank and meant_for(sheet, SlotName.SUPPLY) in loads
    return replace(
        setup, to_come=to_come if known else frozenset(), loads=loads if has_lamp else frozenset(), meant=meant
    )


def positions_to_come(unit: UnitSheet, reports: ReportsTable | None, *, proof: Answer | None) -> frozenset[Key]:
    """The positions at which the unit will tell its supply: its sheet says that it reports at rest, and it tells volts.

    Once there is a proof the script is past: what was not reported in it does not come any more.
    """
    told = reports is None or not reports.reports or SUPPLY_V in reports.columns
    if unit.reporting.stopped_interval_s is None or not told:
        return frozenset()
    return frozenset({Key.AFTER}) if proof is not None else BY_REPORTS


def without_asking(findings: Iterable[Finding], supply: Wire | None, *, joined_to: str | None) -> tuple[Finding, ...]:
    """The findings on the joints; of a supply that waits for the reports alone nothing is to be settled by hand."""
    waiting = f"joined to {joined_to}; what is still to be shown of it comes with the unit's reports"
    if supply is None or supply.name != joined_to or not waits(supply):
        return tuple(findings)
    return tuple(
        replace(each, because=waiting, next=REPORTS_CLOSE)
        if each.id == f"join_{Purpose.SUPPLY}_wire" and each.verdict is Verdict.OPEN
        else each
        for each in findings
    )


def waits(supply: Wire) -> bool:
    """Whether the wire lacks nothing for the supply but what a unit that is joined to it reports."""
    owed = supply.fits[SlotName.SUPPLY].missing()
    return not supply.bans and bool(owed) and BY_REPORTS.issuperset(owed)
