"""A journal: entries in the order they stand, and what is wrong with them.

Reading never drops anything and never raises: a line that is no entry, an id used twice, a break in a chain become
faults that name the line. Writing to a journal, or merging it, asks for one without faults.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backprobe.errors import JournalError
from backprobe.job.canonical import Body
from backprobe.job.chain import Fault, Head, Line, chain_faults, heads
from backprobe.job.entry import Entry, read_entry

MOST_SHOWN = 5


@dataclass(frozen=True, slots=True)
class Journal:
    """Lines of a journal, each entry once, and the faults found in them."""

    lines: tuple[Line, ...] = ()
    faults: tuple[Fault, ...] = ()

    @property
    def entries(self) -> tuple[Entry, ...]:
        """The entries in the order they stand."""
        return tuple(line.entry for line in self.lines)

    @property
    def heads(self) -> dict[str, Head]:
        """The last number and digest of each device's chain: what a sign-off keeps."""
        return heads(self.entries)

    def sound(self) -> Journal:
        """The journal itself; raises JournalError naming the faults where it has any."""
        if self.faults:
            shown = [str(fault) for fault in self.faults[:MOST_SHOWN]]
            more = len(self.faults) - MOST_SHOWN
            raise JournalError("\n".join([*shown, *([f"and {more} more"] if more > 0 else [])]))
        return self


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """What an entry is to say, before it has its place in a chain."""

    id: str
    kind: str
    body: Body
    blobs: tuple[str, ...] = ()
    at: str | None = None
    by: str | None = None


def read_journal(lines: Iterable[bytes]) -> Journal:
    """The journal in `lines` (with or without their line feed), with all its faults.

    A repeated line is read once. Of two different entries with one id the first is kept and the second is a fault.
    """
    kept: dict[str, Line] = {}
    faults: list[Fault] = []
    for number, text in enumerate(lines, 1):
        try:
            line = Line(number, read_entry(text.removesuffix(b"\n")))
        except JournalError as damage:
            faults.append(Fault(number, "", damage.message))
            continue
        other = kept.setdefault(line.entry.id, line)
        if other.entry.raw != line.entry.raw:
            faults.append(Fault(number, line.entry.id, f"{line.entry} bears the id of line {other.number}"))
    whole = tuple(kept.values())
    return Journal(whole, tuple(sorted([*faults, *_other_jobs(whole), *chain_faults(whole)])))


def journal_of(entries: Iterable[Entry]) -> Journal:
    """The journal that consists of `entries`, one a line."""
    return read_journal(entry.raw for entry in entries)


def merge(one: Journal, other: Journal) -> Journal:
    """Both journals together: each entry once, by device and number, the same whichever comes first.

    What one device has not yet sent is missing and shows in the faults of the result. Raises JournalError where
    either has a line that is no entry, or where two different entries bear one id: then neither journal is touched.
    """
    for journal in (one, other):
        if any(not fault.entry for fault in journal.faults):
            journal.sound()
    by_id: dict[str, Entry] = {}
    for entry in (*one.entries, *other.entries):
        known = by_id.setdefault(entry.id, entry)
        if known.raw != entry.raw:
            raise JournalError(f"two different entries bear one id: {known} and {entry}; nothing was merged")
    return journal_of(sorted(by_id.values(), key=lambda entry: (entry.device, entry.seq, entry.id)))


def continued(journal: Journal, drafts: Sequence[Draft], *, job: str, device: str, engine: str) -> tuple[Entry, ...]:
    """The entries that say `drafts`, following on `device`'s last entry in `journal`.

    Raises JournalError where the journal has faults, belongs to another job, or has one of the ids already.
    """
    taken = {entry.id for entry in journal.sound().entries}
    if any(entry.job != job for entry in journal.entries[:1]):
        raise JournalError(f"the journal is that of job {journal.entries[0].job!r}, not of {job!r}")
    head = journal.heads.get(device)
    seq, prev = (head.seq, head.digest) if head else (0, None)
    entries = []
    for draft in drafts:
        if draft.id in taken:
            raise JournalError(f"the journal has an entry with the id {draft.id} already")
        taken.add(draft.id)
        seq += 1
        entry = Entry(
            id=draft.id, job=job, kind=draft.kind, at=draft.at, device=device, seq=seq, prev=prev, by=draft.by,
            engine=engine, body=draft.body, blobs=draft.blobs,
        )  # fmt: skip
        entries.append(entry)
        prev = entry.digest
    return tuple(entries)


def _other_jobs(lines: Sequence[Line]) -> list[Fault]:
    first = lines[0].entry.job if lines else ""
    return [
        Fault(line.number, line.entry.id, f"{line.entry} belongs to job {line.entry.job!r}, not to {first!r}")
        for line in lines
        if line.entry.job != first
    ]
