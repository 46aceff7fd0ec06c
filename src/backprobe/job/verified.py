"""What a verification comes to: intact and signed with a known key, or the first reason why not."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from backprobe.job.chain import Fault, Line
from backprobe.job.covered import Rows, covered_faults, without_echoes
from backprobe.job.entry import digest
from backprobe.job.kinds import ERASED, misfit, texts
from backprobe.job.signed import SignatureHolds, Signed, sign_offs, signature_faults, unread_faults, widest


class Result(StrEnum):
    """In the order in which they are looked for; the first that applies."""

    ALTERED = "altered"
    NEVER_SIGNED = "never signed"
    NOT_COVERED = "not wholly covered"
    KEY_UNKNOWN = "key unknown"
    INTACT = "intact"


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What there is beside the journal: `blob` gives the bytes of a digest, None where they are not there.

    `faults` are those of the blobs, `pending` says in words which files have not been taken into the journal.
    """

    blob: Callable[[str], bytes | None]
    faults: tuple[Fault, ...] = ()
    pending: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Verified:
    """A verification: what is wrong by line, the sign-offs, the one that counts, and what that one does not cover.

    `names` are those of known keys. The one that counts is the widest among those with a known key, where there is
    none the widest of all whose signature holds.
    """

    rows: Rows
    faults: tuple[Fault, ...]
    signed: tuple[Signed, ...]
    counts: Signed | None
    late: tuple[Line, ...]
    pending: tuple[str, ...]
    names: Mapping[str, str]

    @property
    def result(self) -> Result:
        """The one word."""
        if self.faults:
            return Result.ALTERED
        if self.counts is None:
            return Result.NEVER_SIGNED
        if self.late or self.pending:
            return Result.NOT_COVERED
        return Result.INTACT if self.known_as(self.counts) is not None else Result.KEY_UNKNOWN

    @property
    def not_understood(self) -> tuple[Line, ...]:
        """The entries that say nothing to this version: of a later one, or of a kind that is not known."""
        lines = self.rows.journal.lines
        return tuple(one for one in lines if not one.entry.version_known or misfit(one.entry.kind, one.entry.body))

    def known_as(self, signed: Signed) -> str | None:
        """The name under which a sign-off's key is known here."""
        return self.names.get(signed.sign_off.key)


def verified(rows: Rows, held: Held, *, signature_holds: SignatureHolds, names: Mapping[str, str]) -> Verified:
    """Verify a journal's `rows`; `names` are the known public keys (hex) with their names."""
    found = sign_offs(rows.journal.lines, signature_holds)
    holding = [one for one in found if one.holds]
    known = [one for one in holding if one.sign_off.key in names]
    best = widest(rows.journal.lines, known or holding)
    lists = [_listed(one, held) for one in holding]
    against = [
        fault
        for one, listed in zip(holding, lists, strict=True)
        for fault in covered_faults(rows, one.sign_off, listed=listed)
    ]
    exact = any(listed is not None for listed in lists)
    own = (*unread_faults(rows.journal.lines), *signature_faults(found))
    faults = without_echoes(rows, sorted({*own, *against}), exact=exact)
    return Verified(
        rows=rows,
        faults=tuple(sorted({*faults, *held.faults})),
        signed=found,
        counts=None if best is None else best[0],
        late=() if best is None else best[1],
        pending=held.pending,
        names=names,
    )


def _listed(signed: Signed, held: Held) -> list[str] | None:
    """The digests that a sign-off was made over, where the list is at hand and is the one that was signed."""
    text = held.blob(signed.sign_off.order_sha256)
    if text is None or digest(text) != signed.sign_off.order_sha256:
        return None
    return text.decode("ascii", "replace").split()


def erased_in(lines: Sequence[Line]) -> frozenset[str]:
    """The digests of files that were deleted on purpose."""
    erasing = (line.entry for line in lines if line.entry.kind == ERASED and line.entry.version_known)
    return frozenset(blob for entry in erasing for blob in texts(entry.body, "blobs"))


def missing_blobs(lines: Sequence[Line], fault_of: Callable[[str], str | None]) -> tuple[Fault, ...]:
    """The faults of the blobs that entries name, each on the first line that names it; erased ones have none."""
    gone: Collection[str] = erased_in(lines)
    named = {blob: line for line in reversed(lines) for blob in line.entry.blobs if blob not in gone}
    faults = ((line, fault_of(blob)) for blob, line in named.items())
    return tuple(sorted(Fault(line.number, line.entry.id, why) for line, why in faults if why is not None))
