"""Whether each device's chain of entries is whole.

Every entry keeps the digest of its device's entry before. So any change, removal or insertion in front of a device's
last entry shows. What the chain alone cannot show: a change to a device's last entry that leaves it well formed, the
removal of a device's last entries, and a journal rewritten from some entry to its end. Those show against the `heads`
that a sign-off, or a second copy, has kept.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from backprobe.job.entry import Entry


@dataclass(frozen=True, slots=True)
class Line:
    """An entry and the line of the journal it stands on, from 1."""

    number: int
    entry: Entry

    def __str__(self) -> str:
        return f"line {self.number} ({self.entry})"


@dataclass(frozen=True, slots=True, order=True)
class Fault:
    """Something wrong with the journal: the line it shows on, the id of the entry there where known, and what."""

    line: int
    entry: str
    what: str

    def __str__(self) -> str:
        return f"journal line {self.line}: {self.what}"


@dataclass(frozen=True, slots=True)
class Head:
    """The last entry of a device's chain: its number and its digest."""

    seq: int
    digest: str


def chain_faults(lines: Iterable[Line]) -> tuple[Fault, ...]:
    """Every break in the devices' chains, by line: entries altered, missing, out of order, numbered twice."""
    by_device: dict[str, list[Line]] = defaultdict(list)
    for line in lines:
        by_device[line.entry.device].append(line)
    faults: list[Fault] = []
    for chain in by_device.values():
        faults += _out_of_order(chain)
        faults += _broken(sorted(chain, key=lambda line: line.entry.seq))
    return tuple(sorted(faults))


def heads(entries: Iterable[Entry]) -> dict[str, Head]:
    """The head of each device's chain."""
    last: dict[str, Entry] = {}
    for entry in entries:
        if entry.device not in last or last[entry.device].seq < entry.seq:
            last[entry.device] = entry
    return {device: Head(entry.seq, entry.digest) for device, entry in sorted(last.items())}


def against_heads(lines: Sequence[Line], kept: Mapping[str, Head]) -> tuple[Fault, ...]:
    """What is missing or altered up to the heads that were `kept` elsewhere; entries added since are no fault.

    Together with `chain_faults` this shows every change to any entry up to those heads.
    """
    found = {(line.entry.device, line.entry.seq): line for line in lines}
    faults = []
    for device, head in sorted(kept.items()):
        line = found.get((device, head.seq))
        if line is None:
            faults.append(Fault(len(lines) + 1, "", f"entry number {head.seq} of {device!r}, once there, is missing"))
        elif line.entry.digest != head.digest:
            faults.append(_fault(line, f"{line.entry} is not the entry that was there before"))
    return tuple(faults)


def _fault(line: Line, what: str) -> Fault:
    return Fault(line.number, line.entry.id, what)


def _out_of_order(chain: Sequence[Line]) -> Iterator[Fault]:
    for before, after in pairwise(chain):
        if after.entry.seq < before.entry.seq:
            yield _fault(after, f"out of order: {after.entry} stands after line {before.number}, {before.entry}")


def _broken(chain: Sequence[Line]) -> Iterator[Fault]:
    """Faults of one device's lines, sorted by number."""
    first = chain[0]
    if first.entry.seq > 1:
        yield _fault(first, f"{_missing(1, first.entry.seq - 1)} of {first.entry.device!r}, before {first.entry}")
    elif first.entry.prev is not None:
        yield _fault(first, f"{first.entry} names an entry before it, as the first of its device")
    unbroken = _unbroken_from(chain)
    for at, (before, after) in enumerate(pairwise(chain)):
        step = after.entry.seq - before.entry.seq
        if step == 0:
            yield _fault(after, f"two different entries bear one number: {before} and {after}")
        elif step > 1:
            gap = _missing(before.entry.seq + 1, after.entry.seq - 1)
            yield _fault(after, f"{gap} of {after.entry.device!r}, between line {before.number} and {after.entry}")
        elif after.entry.prev != before.entry.digest:
            sure = at + 1 >= unbroken and at + 2 < len(chain)
            which = f"{before.entry}" if sure else f"{before.entry} or {after.entry}"
            yield _fault(before, f"altered after writing: {which}; line {after.number} keeps another digest")


def _missing(first: int, last: int) -> str:
    return f"missing: entry number {first}" if first == last else f"missing: entries number {first} to {last}"


def _unbroken_from(chain: Sequence[Line]) -> int:
    """The place in `chain` from which on every entry is confirmed by the one after it."""
    start = len(chain) - 1
    while start > 0 and chain[start].entry.prev == chain[start - 1].entry.digest:
        start -= 1
    return start
