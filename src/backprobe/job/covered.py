"""Whether the entries that a sign-off covers are still those that were signed, line by line.

The heads in a sign-off say that something was altered, removed or put in between; the list of digests that it was made
over (`digests_text`, kept as a blob) says on which line. Where the list is at hand it is believed only if its own
digest is the one that was signed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.job.chain import Fault, Line, against_heads, chain_faults
from backprobe.job.entry import Entry, digest
from backprobe.job.journal import Journal, read_journal
from backprobe.job.kinds import SIGN_OFF
from backprobe.job.sign_off import SignOff, by_device, digests_text

_ID = re.compile(rb'"id":"([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})"')


@dataclass(frozen=True, slots=True)
class Rows:
    """The lines of a journal's file: their `bytes`, what was read from them, and what is wrong with the file itself."""

    raw: tuple[bytes, ...]
    journal: Journal
    faults: tuple[Fault, ...]

    def id_on(self, number: int) -> str:
        """The id of the entry on a line (from 1), also where the line can no longer be read; '' where there is none."""
        found = _ID.search(self.raw[number - 1]) if number <= len(self.raw) else None
        return found[1].decode() if found else ""


def rows_of(content: bytes) -> Rows:
    """The lines in a journal's bytes. A lost last line end and a line that stands twice are faults here."""
    raw = tuple(content.removesuffix(b"\n").split(b"\n")) if content else ()
    journal = read_journal(raw)
    rows = Rows(raw, journal, ())
    return Rows(raw, journal, (*_named(rows, journal.faults), *_twice(rows), *_unended(rows, content)))


def _named(rows: Rows, faults: Sequence[Fault]) -> Iterator[Fault]:
    """The journal's faults, each with the id on its line where it had none."""
    yield from (Fault(one.line, one.entry or rows.id_on(one.line), one.what) for one in faults)


def _twice(rows: Rows) -> Iterator[Fault]:
    first: dict[bytes, int] = {}
    for number, line in enumerate(rows.raw, 1):
        before = first.setdefault(line, number)
        if before != number:
            yield Fault(number, rows.id_on(number), f"the same line stands before, on line {before}")


def _unended(rows: Rows, content: bytes) -> Iterator[Fault]:
    if content and not content.endswith(b"\n"):
        yield Fault(len(rows.raw), rows.id_on(len(rows.raw)), "the last line has lost its line end")


def covered_faults(rows: Rows, sign_off: SignOff, *, listed: Sequence[str] | None) -> tuple[Fault, ...]:
    """Every difference between the entries in `rows` and those that `sign_off` covers, by line.

    `listed` are the digests in the order in which the entries stood when they were signed, None where they are not
    known; they must be those that the sign-off names (`digests_text` of them has `order_sha256`).
    """
    known = against_heads(rows.journal.lines, sign_off.heads)
    if listed is not None:
        known = (*_against_list(rows, sign_off, listed=listed),) or known
    if known or chain_faults(rows.journal.lines):
        return tuple(sorted(known))
    return tuple(_other_sums(rows, sign_off))


def _against_list(rows: Rows, sign_off: SignOff, *, listed: Sequence[str]) -> Iterator[Fault]:
    """What is altered, gone, or came in between, by the digests of the lines."""
    stand = [digest(line) for line in rows.raw]
    there, were = set(stand), set(listed)
    strange = [number for number, one in enumerate(stand, 1) if one not in were]
    gone = [number for number, one in enumerate(listed, 1) if one not in there]
    entries = {line.number: line.entry for line in rows.journal.lines}
    signs = {number for number, entry in entries.items() if entry.kind == SIGN_OFF}
    inserted = {number for number in strange if number in entries and _is_between(entries[number], sign_off)}
    for number in gone:
        if number in strange and number not in signs:
            inserted.discard(number)
            yield Fault(number, rows.id_on(number), "altered: not the entry that stood here when it was signed")
        else:
            yield Fault(number, "", "missing: the entry that stood here when it was signed")
    for number in sorted(inserted):
        yield Fault(number, rows.id_on(number), f"not among the entries that were signed: {entries[number]}")


def _is_between(entry: Entry, sign_off: SignOff) -> bool:
    """Whether an entry takes a place among those that are covered."""
    return sign_off.covers(entry) and entry.id != sign_off.entry.id


def _other_sums(rows: Rows, sign_off: SignOff) -> Iterator[Fault]:
    """What only the sums over all entries show: their number, their digests, the order in which they stand."""
    covered = [line for line in rows.journal.lines if _is_between(line.entry, sign_off)]
    entries = [line.entry for line in covered]
    at = next(line.number for line in rows.journal.lines if line.entry.id == sign_off.entry.id)
    if len(entries) != sign_off.entries or digest(digests_text(by_device(entries))) != sign_off.entries_sha256:
        yield Fault(at, sign_off.entry.id, f"{sign_off.entries} entries were signed; these are not the same")
    elif not _as_it_stood(covered, at, sign_off=sign_off) and not _is_merged(rows.journal.lines):
        yield Fault(at, sign_off.entry.id, "the entries stand in another order than when they were signed")


def _as_it_stood(covered: Sequence[Line], at: int, *, sign_off: SignOff) -> bool:
    """Whether the covered entries stand in the order in which they were signed, and the sign-off after them."""
    after_all = not covered or covered[-1].number < at
    return after_all and digest(digests_text(line.entry for line in covered)) == sign_off.order_sha256


def _is_merged(lines: Sequence[Line]) -> bool:
    """Whether the entries stand in the order in which merged journals are written."""
    entries = [line.entry for line in lines]
    return entries == by_device(entries)


def without_echoes(rows: Rows, found: Sequence[Fault], *, exact: bool) -> tuple[Fault, ...]:
    """All faults of a journal by line, given those `found` against its sign-offs: no line is named twice.

    Where a list of digests was at hand (`exact`) and showed something, breaks in a chain are mere echoes of that.
    """
    echoes = {(one.line, one.what) for one in chain_faults(rows.journal.lines)} if found and exact else set()
    named = {one.line for one in found}
    others = (one for one in rows.faults if (one.line, one.what) not in echoes and one.line not in named)
    return tuple(sorted((*found, *others)))
