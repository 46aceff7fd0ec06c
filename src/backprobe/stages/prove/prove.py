"""The whole way from a script and a table of reports to a proof."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from backprobe.errors import OptionError, Place, Skipped, UnreadableError
from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.report import Report, ReportsTable
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.findings import Limit, Verdict
from backprobe.stages.prove.alignment import Alignment, align
from backprobe.stages.prove.checks import patterns_of
from backprobe.stages.prove.delays import clock_offset, delay, reported_turns
from backprobe.stages.prove.lights import lights_of
from backprobe.stages.prove.next_step import next_step
from backprobe.stages.prove.notes import beside_findings, notes_of
from backprobe.stages.prove.parked import Parked, parked_of
from backprobe.stages.prove.patterns import Pattern, PatternId, ranked
from backprobe.stages.prove.position import Position, first_fix_s, fixes_of, position_of
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.script import Script, script_of
from backprobe.stages.prove.setup import ProveSetup, Timing, timing_of
from backprobe.stages.prove.supply import supply_of
from backprobe.stages.prove.swapped import swapped_serial
from backprobe.stages.prove.turns import Outcome, TurnState, false_edges, outcomes

UNITS_SHOWN = 8
MOST_REPEATS = 3
AROUND_S = 3600.0  # the interval is that of the reports sent around the script


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What the technician saw beside the reports: the unit's lights, and its supply idle and transmitting."""

    lights: tuple[LightSeen, ...] = ()
    skipped: tuple[Skipped, ...] = ()
    supply: SupplyPair | None = None
    supply_limit: Limit | None = None


@dataclass(frozen=True, slots=True)
class Answer:
    """A proof with its notes and the one next step; `beside` are those notes that no finding says as well."""

    proof: Proof
    notes: tuple[str, ...]
    next: str | None
    beside: tuple[str, ...] = ()

    def as_json(self) -> dict[str, object]:
        """The whole answer as plain JSON values."""
        return {**self.proof.as_json(), "notes": list(self.notes), "next": self.next}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Case:
    """One job's unit under the script."""

    unit_id: str
    script: Script
    setup: ProveSetup
    timing: Timing
    seen: Seen
    left_out: Mapping[str, int]


def prove(script: KeyScript, table: ReportsTable, *, setup: ProveSetup, seen: Seen | None = None) -> Answer:
    """What the reports prove of this script.

    Raises UnreadableError where the job's unit has no reports and no other unit's fit (a file's only unit under another
    name is taken for the job's if it tells the script), OptionError where the file holds several units and nobody said
    which is the job's.
    """
    unit_id = _unit_id(table, setup)
    rows = script_of(script)
    named = "unit_id" in table.columns
    others = _by_unit(table) if named else {}
    own = others.pop(unit_id.casefold(), ()) if named else table.reports
    reports = undoubled(own)
    timing = timing_of(setup.sheet, _gaps_s(reports))
    alignment = align(reports, rows, timing=timing) if reports else None
    if alignment is not None and _is_guess(table, setup, unit_id=unit_id) and not reported_turns(alignment.best, rows):
        raise _absent(table, setup.unit_serial or unit_id)
    swapped = swapped_serial(
        {each[0].unit_id: undoubled(each) for each in others.values()},
        rows,
        timing=timing,
        place=setup.place,
        own=None if alignment is None else alignment.best,
    )
    if swapped is None and alignment is None:
        raise _absent(table, unit_id)
    counts = {
        "other_unit": len(table.reports) - len(own),
        "doubled": len(own) - len(reports),
        "unreadable": table.skipped_rows,
    }
    case = _Case(
        unit_id=unit_id,
        script=rows,
        setup=setup,
        timing=timing,
        seen=seen or Seen(),
        left_out=_left_out(counts, alignment),
    )
    proof = _proof(case, alignment, swapped=swapped)
    skipped = tuple(f"Passed over: {each}" for each in case.seen.skipped)
    notes = notes_of(proof, script=script, table=table, setup=setup)
    beside = beside_findings(proof, script=script, table=table, setup=setup)
    return Answer(proof, (*notes, *skipped), next_step(proof), (*beside, *skipped))


def _proof(case: _Case, alignment: Alignment | None, *, swapped: Pattern | None) -> Proof:
    if alignment is None:
        return _without_reports(case, swapped)
    belief, script = alignment.best, case.script
    fixes = fixes_of(belief.kept, last_s=script.last_s)
    position = position_of(fixes, case.setup.place, corners=case.setup.corners)
    found = patterns_of(alignment, script, timing=case.timing, position=position)
    patterns = ranked(found if swapped is None else [swapped])
    unknown = frozenset(script.turns[:1] if any(each.id is PatternId.LATE_ATTACH for each in patterns) else ())
    measured = swapped is None
    sheet = case.setup.sheet
    return Proof(
        unit_id=case.unit_id,
        script=script,
        timing=case.timing,
        alignment=alignment,
        turns=outcomes(belief, script, timing=case.timing, unknown=unknown),
        false_events=false_edges(belief, script),
        patterns=patterns,
        on_delay=delay(alignment, script, on=True) if measured else None,
        off_delay=delay(alignment, script, on=False) if measured else None,
        clock_offset=clock_offset(alignment) if measured else None,
        position=position,
        first_fix_s=first_fix_s(belief.kept, belief.power_up),
        supply=supply_of(belief.kept, pair=case.seen.supply, sheet=sheet, limit=case.seen.supply_limit),
        lights=lights_of(() if sheet is None else sheet.lights, case.seen.lights),
        parked=parked_of(belief, script),
        left_out=case.left_out,
    )


def _without_reports(case: _Case, swapped: Pattern | None) -> Proof:
    """The proof of a unit that is not in the file, while another one of the yard fits."""
    sheet = case.setup.sheet
    return Proof(
        unit_id=case.unit_id,
        script=case.script,
        timing=case.timing,
        alignment=None,
        turns=tuple(
            Outcome(row, None, TurnState.MATCHED if row.on is None else TurnState.OPEN) for row in case.script.rows
        ),
        false_events=(),
        patterns=ranked([] if swapped is None else [swapped]),
        on_delay=None,
        off_delay=None,
        clock_offset=None,
        position=Position(Verdict.OPEN),
        first_fix_s=None,
        supply=supply_of((), pair=case.seen.supply, sheet=sheet, limit=case.seen.supply_limit),
        lights=lights_of(() if sheet is None else sheet.lights, case.seen.lights),
        parked=Parked(0.0, 0.0),
        left_out=case.left_out,
    )


def _unit_id(table: ReportsTable, setup: ProveSetup) -> str:
    """The job's unit as the reports name it: as it was said, else its serial, else the file's only unit."""
    if "unit_id" not in table.columns:
        return setup.unit_id or setup.unit_serial or ""
    if setup.unit_id is not None:
        return _as_written(table, setup.unit_id) or setup.unit_id.strip()
    by_serial = _as_written(table, setup.unit_serial or "")
    if by_serial:
        return by_serial
    if len(table.units) == 1:
        return next(iter(table.units))
    where = "say which with --unit-id, or as id under [unit] in job.toml"
    raise OptionError(f"{table.file} holds {len(table.units)} units ({_names(table)}): {where}")


def _is_guess(table: ReportsTable, setup: ProveSetup, *, unit_id: str) -> bool:
    """Whether the file's only unit was taken though the job's serial is another; it counts only if it fits."""
    named = setup.unit_id is not None or "unit_id" not in table.columns
    return not named and setup.unit_serial is not None and _as_written(table, setup.unit_serial) != unit_id


def _as_written(table: ReportsTable, unit_id: str) -> str | None:
    """A unit's id as the file writes it; None where it has no such unit."""
    return next((name for name in table.units if name.casefold() == unit_id.strip().casefold()), None)


def _by_unit(table: ReportsTable) -> dict[str, tuple[Report, ...]]:
    grouped: defaultdict[str, list[Report]] = defaultdict(list)
    for report in table.reports:
        grouped[report.unit_id].append(report)
    together: defaultdict[str, list[Report]] = defaultdict(list)
    for name, reports in grouped.items():
        together[name.casefold()] += reports
    return {name: tuple(reports) for name, reports in together.items()}


def undoubled(reports: Iterable[Report]) -> tuple[Report, ...]:
    """Each report once, as it first arrived: a network may deliver it again.

    Where the server puts the stamps on, reports of one second look alike without being the same: these are kept, and
    so are those that stand there more often than any network repeats them.
    """
    alike: dict[tuple[object, ...], list[Report]] = {}
    for report in reports:
        key = (report.time_s, report.event, report.ignition, report.fix, report.supply_V, report.speed_kmh)
        alike.setdefault(key, []).append(report)
    kept: list[Report] = []
    for group in alike.values():
        if len(group) > MOST_REPEATS or all(report.received_s == report.time_s for report in group):
            kept += group
        else:
            kept.append(min(group, key=lambda report: report.received_s or 0.0))
    return tuple(kept)


def _gaps_s(reports: tuple[Report, ...]) -> tuple[float, ...]:
    """The times between reports of an ordinary day [s]."""
    times = sorted(report.time_s for report in reports)
    return tuple(gap for before, after in pairwise(times) if 1.0 < (gap := after - before) < AROUND_S)


def _left_out(counts: dict[str, int], alignment: Alignment | None) -> dict[str, int]:
    """How many rows were left out, by reason; reasons without any are not named."""
    if alignment is not None:
        counts = {**counts, "before_power_up": alignment.best.power_up.first, "clock_never_set": alignment.unplaced}
    return {reason: count for reason, count in counts.items() if count}


def _absent(table: ReportsTable, unit_id: str) -> UnreadableError:
    expected = f"reports of unit {unit_id}, whose turns of the key these are; the file holds: {_names(table)}"
    return UnreadableError(Place(table.file), expected)


def _names(table: ReportsTable) -> str:
    names = sorted(table.units, key=lambda name: -table.units[name])
    return ", ".join(name or "(no id)" for name in names[:UNITS_SHOWN]) + (", …" if len(names) > UNITS_SHOWN else "")
