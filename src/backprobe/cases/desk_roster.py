"""Rosters at the desk: looked at first, then taken whole or not at all, into the server's store."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from backprobe.cases.may import Caller, Deed
from backprobe.cases.roster import KnownRoster, preview_of, roster_in, take_roster
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.evidence.roster import Roster, RosterKind, RosterRow
from backprobe.formats.roster_columns import roster_names
from backprobe.job.roster_preview import RosterChange
from backprobe.store import entries, rosters

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
            return rosters.write(held, wanted, kind=str(kind), mark=mark)


def preview_roster_file(yard: Yard, caller: Caller, *, file: RosterFile) -> dict[str, object]:
    """What a roster would change; nothing is written. Raises UnreadableError, OptionError and RefusedError."""
    caller.must(Deed.MAKE_JOBS)
    return preview_of(_read(file), KeptRosters(yard, caller.organisation)).as_json()


def import_roster_file(
    yard: Yard, caller: Caller, *, file: RosterFile, doubts_are_right: bool = False
) -> dict[str, object]:
    """Take a roster, every row of it, or none. Raises InputError and RefusedError with nothing written."""
    caller.must(Deed.MAKE_JOBS)
    store = KeptRosters(yard, caller.organisation)
    return take_roster(_read(file), store, doubts_are_right=doubts_are_right).as_json()


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
