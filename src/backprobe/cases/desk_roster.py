"""Rosters at the desk: looked at first, then taken whole or not at all, into the server's store."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from backprobe.cases.may import Caller, Deed
from backprobe.cases.roster import KnownRoster, preview_of, roster_in, take_roster
from backprobe.cases.roster_jobs import JobPlan, Prepared, prepared, without_job, write_jobs
from backprobe.cases.yard import Yard
from backprobe.errors import InputError, RefusedError
from backprobe.evidence.roster import Roster, RosterKind, RosterRow
from backprobe.formats.roster_columns import roster_names
from backprobe.job.roster_preview import RosterChange, RosterPreview
from backprobe.store import entries, rosters
from backprobe.tongues.speaker import Say, plain

MOST_BYTES = 20_000_000
MOST_NAME = 100


@dataclass(frozen=True, slots=True)
class RosterFile:
    """A roster as it was sent: its bytes, what its file is called, and a map of its columns as typed."""

    content: bytes
    name: str
    columns: str | None = None


@dataclass(frozen=True, slots=True)
class KeptRosters:
    """The rosters in the store; a row's line is the number under which it is kept."""

    yard: Yard
    organisation: str
    jobs: Prepared | None = None  # to be made with it

    def known_roster(self, kind: RosterKind) -> KnownRoster:
        """Everything that is kept of vehicles, or of units."""
        with self.yard.store.reading() as connection:
            kept = rosters.rows(connection, self.organisation, kind=str(kind))
        return KnownRoster([RosterRow.of(number, values) for number, values in kept], rosters.mark_of(kept))

    def take_roster(self, kind: RosterKind, changes: Sequence[RosterChange], *, mark: str) -> bool:
        """Write all changes, or none; False where what is kept no longer bears `mark`."""
        wanted = [(None if each.known is None else each.known.line, each.after.values()) for each in changes]
        with self.yard.store.writing() as connection:
            held = entries.held(connection, self.organisation)
            if not rosters.write(held, wanted, kind=str(kind), mark=mark):
                return False
            if self.jobs is not None and not write_jobs(held, self.jobs):
                raise InputError("a vehicle was given a job meanwhile, so nothing was taken: look at it again")
            return True


def preview_roster_file(yard: Yard, caller: Caller, *, file: RosterFile, say: Say = plain) -> dict[str, object]:
    """What a roster would change; nothing is written. Raises UnreadableError, OptionError and RefusedError.

    What is expected of a cell, and the notes, are said as `say` has them.
    """
    caller.must(Deed.MAKE_JOBS)
    preview = preview_of(_read(file), KeptRosters(yard, caller.organisation))
    return {
        **preview.as_json(),
        "bad": [{**fault.as_json(), "expected": say(fault.expected)} for fault in preview.bad],
        "doubts": [{**fault.as_json(), "expected": say(fault.expected)} for fault in preview.doubts],
        "notes": [say(note) for note in preview.roster.notes],
        "without_job": len(_jobless(yard, caller, preview=preview)),
    }


def import_roster_file(
    yard: Yard, caller: Caller, *, file: RosterFile, doubts_are_right: bool = False
) -> dict[str, object]:
    """Take a roster, every row of it, or none. Raises InputError and RefusedError with nothing written."""
    caller.must(Deed.MAKE_JOBS)
    store = KeptRosters(yard, caller.organisation)
    return take_roster(_read(file), store, doubts_are_right=doubts_are_right).as_json()


def import_with_jobs(
    yard: Yard, caller: Caller, *, file: RosterFile, plan: JobPlan, doubts_are_right: bool = False
) -> dict[str, object]:
    """Take a roster of vehicles and make a job for each that has none: all of it, or nothing.

    Raises UnreadableError, InputError and RefusedError with nothing written.
    """
    caller.must(Deed.MAKE_JOBS)
    roster = _read(file)
    if roster.kind is not RosterKind.VEHICLES:
        raise RefusedError("jobs are made of a list of vehicles; this one is of units", code="request")
    rows = _jobless(yard, caller, preview=preview_of(roster, KeptRosters(yard, caller.organisation)))
    store = KeptRosters(yard, caller.organisation, prepared(yard, rows=rows, plan=plan))
    taken = take_roster(roster, store, doubts_are_right=doubts_are_right)
    return {**taken.as_json(), "jobs": len(rows)}


def _jobless(yard: Yard, caller: Caller, *, preview: RosterPreview) -> tuple[RosterRow, ...]:
    """The vehicles of a list that have no job, with all that is known of them."""
    if preview.roster.kind is not RosterKind.VEHICLES:
        return ()
    changes = sorted((*preview.writes, *preview.unchanged), key=lambda change: change.row.line)
    with yard.store.reading() as connection:
        return without_job(connection, caller.organisation, rows=[change.after for change in changes])


def kept_roster(yard: Yard, caller: Caller, *, kind: RosterKind) -> list[dict[str, str | float]]:
    """The vehicles or units that were taken in. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    return [row.values() for row in KeptRosters(yard, caller.organisation).known_roster(kind).rows]


def _read(file: RosterFile) -> Roster:
    if len(file.content) > MOST_BYTES:
        raise RefusedError(f"at most {MOST_BYTES // 1_000_000} MB are taken as a roster", code="too_large")
    names = None if file.columns is None else roster_names(file.columns)
    with TemporaryDirectory(prefix="backprobe-roster-") as folder:
        path = Path(folder) / _plain(file.name)
        path.write_bytes(file.content)
        return roster_in(path, names=names)


def _plain(name: str) -> str:
    """A file's name as it may stand in a folder of ours: its last part, without what could lead elsewhere."""
    last = name.replace("\\", "/").rpartition("/")[2]
    kept = "".join(letter for letter in last if letter.isprintable()).strip(". ")
    return kept[:MOST_NAME].encode("utf-8", "ignore").decode()[:60] or "roster"
