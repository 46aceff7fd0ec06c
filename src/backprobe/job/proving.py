"""The proof of a job's unit: what was done with the key, what it reported, what its lights showed, judged together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from backprobe.errors import OptionError, Skipped, UnreadableError
from backprobe.evidence.corner import CornerIndex
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.report import ReportsTable
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.findings import Finding
from backprobe.formats.key_script_csv import lacks
from backprobe.job.fold import JobState
from backprobe.job.kinds import REPORTS, SCRIPT
from backprobe.limits.lookup import limit
from backprobe.stages.prove.findings import prove_findings, unproven
from backprobe.stages.prove.lights import lights_of
from backprobe.stages.prove.prove import Answer, Seen, prove
from backprobe.stages.prove.setup import setup_from
from backprobe.stages.prove.unit_findings import lights

SUPPLY_LIMIT = "supply_loaded_drop"
FETCH = "fetch the unit's reports from its server once it has had coverage, and put them into the job folder"


@dataclass(frozen=True, slots=True, kw_only=True)
class Proving:
    """What a job holds for the proof; None where nobody has given it. `disputed` rows of the script await a decision.

    Nothing of it need be complete: a script may still lack its off, an export may hold no report. `corners` only put a
    position into words.
    """

    script: KeyScript | None = None
    reports: ReportsTable | None = None
    lights: tuple[LightSeen, ...] = ()
    lights_skipped: tuple[Skipped, ...] = ()
    disputed: bool = False
    corners: CornerIndex | None = None


def proving_of(state: JobState, reports: ReportsTable | None, *, script: KeyScript | None = None) -> Proving:
    """What a job's journal holds for the proof, with the reports that it knows as a file.

    `script` is what the file of it has; it stands in where there is a file without a row that could be read.
    """
    return Proving(
        script=state.script or script,
        reports=reports,
        lights=state.lights,
        lights_skipped=state.lights_skipped,
        disputed=state.script_disputed,
    )


def together(tables: Sequence[ReportsTable]) -> ReportsTable | None:
    """Several tables of reports as one: what a folder had and what a collector pushed; None where there is none.

    A report that stands in two of them is told from two reports by the proof itself.
    """
    if len(tables) < 2:
        return tables[0] if tables else None
    skipped_rows: int = sum(table.skipped_rows for table in tables)
    bad_cells: int = sum(table.bad_cells for table in tables)
    return ReportsTable(
        file=" and ".join(dict.fromkeys(table.file for table in tables)),
        reports=tuple(report for table in tables for report in table.reports),
        columns=frozenset().union(*(table.columns for table in tables)),
        zoneless=any(table.zoneless for table in tables),
        skipped=tuple(each for table in tables for each in table.skipped),
        skipped_rows=skipped_rows,
        bad_cells=bad_cells,
        units=Counter(report.unit_id for table in tables for report in table.reports),
    )


@dataclass(frozen=True, slots=True)
class Proved:
    """The findings, and the whole answer where there is one."""

    findings: tuple[Finding, ...]
    answer: Answer | None = None


def proved(proving: Proving, sheet: JobSheet, *, unit: UnitSheet) -> Proved:
    """What the proof came to; open, saying what is missing, where there is not enough for one."""
    lacking = _lacking(proving)
    if lacking is not None or proving.script is None or proving.reports is None:
        seen = lights(lights_of(unit.lights, proving.lights))
        return Proved((lacking or unproven("nothing was given for it"), *seen))
    seen_at_unit = Seen(
        lights=proving.lights,
        skipped=proving.lights_skipped,
        supply=sheet.supply_pair,
        supply_limit=limit(SUPPLY_LIMIT, system_V=sheet.vehicle.system_V),
    )
    try:
        setup = replace(setup_from(sheet, unit), corners=proving.corners)
        answer = prove(proving.script, proving.reports, setup=setup, seen=seen_at_unit)
    except UnreadableError as fault:
        return Proved((unproven(f"{REPORTS}: expected {fault.expected}", FETCH, heard=False),))
    except OptionError as fault:
        return Proved((unproven(fault.message, "write the unit's id into the job sheet: [unit] id", heard=False),))
    return Proved(prove_findings(answer, has_crank=sheet.vehicle.has_crank), answer)


def _lacking(proving: Proving) -> Finding | None:
    """What keeps a proof from being begun."""
    script, reports = proving.script, proving.reports
    missing = [name for name, part in ((SCRIPT, script), (REPORTS, reports)) if part is None]
    if script is None or reports is None:
        then = FETCH if script is not None else None
        said = f"there is no {' and no '.join(missing)}"
        return unproven(said) if then is None else unproven(said, then, heard=False)
    lack = lacks(script)
    if proving.disputed:
        return unproven(f"a turn of the key in {SCRIPT} is disputed", "decide what was done, and write it down")
    if lack is not None:
        return unproven(f"{SCRIPT}: expected {lack}")
    if not reports.reports:
        return unproven(f"{REPORTS} holds no report: the unit was not heard", FETCH, heard=False)
    return None
