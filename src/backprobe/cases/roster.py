"""A roster looked at, and taken whole or not at all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from backprobe.errors import InputError
from backprobe.evidence.roster import Roster, RosterKind, RosterRow
from backprobe.files.open import text_lines
from backprobe.files.roster_xlsx import is_workbook, read_workbook
from backprobe.formats.roster_csv import read_roster
from backprobe.job.roster_preview import RosterChange, RosterPreview, preview_roster

FAULTS_SHOWN = 3


@dataclass(frozen=True, slots=True)
class KnownRoster:
    """What is kept, and a mark that is another one as soon as anything of it has changed."""

    rows: Sequence[RosterRow]
    mark: str


class RosterStore(Protocol):
    """What keeps vehicles and units."""

    def known_roster(self, kind: RosterKind) -> KnownRoster:
        """Everything that is kept of vehicles, or of units."""

    def take_roster(self, kind: RosterKind, changes: Sequence[RosterChange], *, mark: str) -> bool:
        """Write all changes, or none; False, with nothing written, where what is kept no longer bears `mark`."""


def roster_in(path: Path, *, names: Mapping[str, str] | None = None) -> Roster:
    """The roster in a file, CSV or a workbook. Raises UnreadableError."""
    if path.is_file() and is_workbook(path):
        return read_workbook(path, names=names)
    return read_roster(text_lines(path)(), file=path.name, names=names)


def preview_of(roster: Roster, store: RosterStore) -> RosterPreview:
    """What a roster would change in a store; nothing is written."""
    return preview_roster(roster, store.known_roster(roster.kind).rows)


def take_roster(roster: Roster, store: RosterStore, *, doubts_are_right: bool = False) -> RosterPreview:
    """Write a roster into a store, every row of it, and say what was changed.

    Raises InputError, with nothing written, where a single cell is bad, where something is doubtful and nobody has said
    that it is right, and where what is kept changed meanwhile.
    """
    there = store.known_roster(roster.kind)
    preview = preview_roster(roster, there.rows)
    if preview.bad:
        raise InputError(f"{_count(preview.bad_rows, 'row')} cannot be taken, so nothing was: {_first(preview.bad)}")
    if preview.doubts and not doubts_are_right:
        raise InputError(f"{_count(len(preview.doubts), 'cell')} to be looked at first: {_first(preview.doubts)}")
    if not store.take_roster(roster.kind, preview.writes, mark=there.mark):
        raise InputError("what is kept was changed by somebody else meanwhile, so nothing was taken: look at it again")
    return preview


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"


def _first(faults: Sequence[object]) -> str:
    more = "; …" if len(faults) > FAULTS_SHOWN else ""
    return "; ".join(str(fault) for fault in faults[:FAULTS_SHOWN]) + more
