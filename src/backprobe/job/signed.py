"""Which sign-offs a journal holds, whether their signatures hold, and which entries came after them."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from backprobe.errors import JournalError
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.chain import Fault, Line, against_heads
from backprobe.job.entry import Entry
from backprobe.job.kinds import SIGN_OFF, UNIT_CLAIMED, WITHDRAWN, misfit, texts
from backprobe.job.sign_off import SignOff, bytes_to_sign, fingerprint, grouped, read_sign_off


class SignatureHolds(Protocol):
    """Holds a signature against a message."""

    def __call__(self, key: str, signature: str, *, message: bytes) -> bool:
        """Whether `signature` (hex) is that of the public `key` (hex) over `message`."""
        ...


FINDING = "sign_off"
SHOWN = 5


@dataclass(frozen=True, slots=True)
class Signed:
    """A sign-off on its line, and whether its signature is that of the key it names."""

    line: int
    sign_off: SignOff
    holds: bool


def sign_offs(lines: Iterable[Line], signature_holds: SignatureHolds) -> tuple[Signed, ...]:
    """The sign-offs among `lines`, in the order in which they stand; what is not understood is none."""
    return tuple(
        Signed(line.number, read, _holds(read, signature_holds))
        for line in lines
        if (read := _read(line.entry)) is not None
    )


def _read(entry: Entry) -> SignOff | None:
    try:
        return read_sign_off(entry) if entry.kind == SIGN_OFF else None
    except JournalError:
        return None


def _holds(sign_off: SignOff, signature_holds: SignatureHolds) -> bool:
    message = bytes_to_sign(sign_off.entry)
    return _names_its_key(sign_off) and signature_holds(sign_off.key, sign_off.signature, message=message)


def _names_its_key(sign_off: SignOff) -> bool:
    return fingerprint(sign_off.key) == sign_off.fingerprint


def signature_faults(found: Iterable[Signed]) -> Iterator[Fault]:
    """The sign-offs whose signature does not hold."""
    for one in found:
        if not one.holds:
            what = f"altered: the signature in {one.sign_off.entry} is not that of the key it names over this entry"
            yield Fault(one.line, one.sign_off.entry.id, what)


def unread_faults(lines: Iterable[Line]) -> Iterator[Fault]:
    """The sign-offs of this version that say something no sign-off says: they were altered, or never were one."""
    for line in lines:
        entry = line.entry
        why = misfit(entry.kind, entry.body) if entry.kind == SIGN_OFF and entry.version_known else None
        if why is not None:
            yield Fault(line.number, entry.id, f"altered: no sign-off any more: {why}")


def not_covered(lines: Iterable[Line], by: Signed, *, others: Collection[Signed]) -> tuple[Line, ...]:
    """The entries that `by` does not cover.

    Of what the `others` wrote to sign off themselves (the sign-off, and the entry of the person) nothing is counted:
    it is no evidence. Nor is a server's note that the job has its unit, which may come after the phone has signed.
    Only sign-offs whose signatures hold may be given.
    """
    every = tuple(lines)
    notes = _notes(every)
    return tuple(
        line
        for line in every
        if not by.sign_off.covers(line.entry)
        and line.entry.id not in notes
        and not any(_belongs(line.entry, other.sign_off) for other in others)
    )


def _notes(lines: Iterable[Line]) -> frozenset[str]:
    """The ids of notes that the job has its unit, and of those that take such notes back: no finding rests on them."""
    known = [line.entry for line in lines if line.entry.version_known]
    claimed = {entry.id for entry in known if entry.kind == UNIT_CLAIMED}
    taken_back = {
        entry.id
        for entry in known
        if entry.kind == WITHDRAWN and (named := texts(entry.body, "entry")) and claimed.issuperset(named)
    }
    return frozenset(claimed | taken_back)


def _belongs(entry: Entry, sign_off: SignOff) -> bool:
    own = sign_off.entry
    before = entry.kind == "person" and entry.device == own.device and entry.seq < own.seq
    return entry.id == own.id or before


def widest(lines: Sequence[Line], among: Sequence[Signed]) -> tuple[Signed, tuple[Line, ...]] | None:
    """Of sign-offs whose signatures hold the one that leaves the fewest entries uncovered, and these entries.

    Of several the last one; None where there is none.
    """
    if not among:
        return None
    left = [(one, not_covered(lines, one, others=among)) for one in among]
    return min(reversed(left), key=lambda pair: len(pair[1]))


def sign_off_finding(
    lines: Sequence[Line], found: Sequence[Signed], *, wanted: bool, names: Mapping[str, str] | None = None
) -> Finding | None:
    """The finding on a job's sign-off; None where there is none and none is `wanted`.

    It holds where a signature holds over all the entries there are. `names` says whose the keys (hex) are that are
    known; None where no list of keys is at hand, and the key is then anybody's.
    """
    if not found:
        return _finding(Verdict.OPEN, "nobody has signed this job off yet", next_step=SIGN) if wanted else None
    best = widest(lines, [one for one in found if one.holds])
    broken = [str(fault) for fault in signature_faults(found)]
    if best is not None:
        broken += [str(fault) for fault in against_heads(lines, best[0].sign_off.heads)]
    if broken or best is None:
        return _finding(Verdict.FAILS, "; ".join(broken[:SHOWN]), next_step=RESTORE)
    signed, late = best
    if late:
        return _finding(Verdict.OPEN, f"signed off before {_named(late)}", next_step=SIGN_AGAIN)
    said = f"{signed.sign_off.judged.end}, over {signed.sign_off.entries} entries, {_with_key(signed.sign_off, names)}"
    return _finding(Verdict.HOLDS, said, next_step=None)


def _with_key(sign_off: SignOff, names: Mapping[str, str] | None) -> str:
    key = grouped(sign_off.fingerprint)
    if names is None:
        return f"with the key {key}"
    name = names.get(sign_off.key)
    return f"with the key {key}, which no phone here has" if name is None else f"with {name}'s key {key}"


def finding_as_told(lines: Sequence[Line], told: Mapping[str, bool], *, wanted: bool) -> Finding | None:
    """The same finding where no signature can be checked: `told` says by a sign-off's id whether its signature holds.

    While it is not told, the finding is open at best: who signs can be anybody.
    """
    found = _as_told(lines, told)
    finding = sign_off_finding(lines, found, wanted=wanted)
    if finding is None or finding.verdict is not Verdict.HOLDS or all(one.sign_off.entry.id in told for one in found):
        return finding
    return _finding(Verdict.OPEN, f"{finding.because}; its signature was not checked here", next_step=CHECK)


def signed_as_told(lines: Sequence[Line], told: Mapping[str, bool]) -> dict[str, object] | None:
    """The sign-off that counts, as plain JSON values: its entry's `id`, the `end` it signs, how many entries came
    `late`, and whether its signature `holds`, null where that is not told. None where no signature can hold.
    """
    best = widest(lines, [one for one in _as_told(lines, told) if one.holds])
    if best is None:
        return None
    sign_off, late = best[0].sign_off, best[1]
    return {
        "id": sign_off.entry.id,
        "end": sign_off.judged.end,
        "late": len(late),
        "holds": told.get(sign_off.entry.id),
    }


def _as_told(lines: Sequence[Line], told: Mapping[str, bool]) -> list[Signed]:
    """The sign-offs, each believed unless it is told not to hold."""
    return [
        Signed(line.number, read, _names_its_key(read) and told.get(read.entry.id, True))
        for line in lines
        if (read := _read(line.entry)) is not None
    ]


def is_due(finding: Finding) -> bool:
    """Whether a finding only says that nobody has signed yet: that is no evidence that is missing."""
    return finding.id == FINDING and finding.next == SIGN


SIGN = "sign the job off"
SIGN_AGAIN = "look at what came later and sign the job off again"
CHECK = "let the server check the signature: it does when it has the journal"
RESTORE = "put the journal back from a copy; backprobe verify JOBDIR names what was altered"


def _named(late: Sequence[Line]) -> str:
    shown = ", ".join(f"{line.entry.kind} on line {line.number}" for line in late[:SHOWN])
    more = len(late) - SHOWN
    counted = "1 entry came" if len(late) == 1 else f"{len(late)} entries came"
    return f"{counted}: {shown}" + (f" and {more} more" if more > 0 else "")


def _finding(verdict: Verdict, because: str, *, next_step: str | None) -> Finding:
    return Finding(id=FINDING, stage=Stage.HAND_OVER, what="Sign-off", verdict=verdict, because=because, next=next_step)
