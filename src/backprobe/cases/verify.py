"""Verify a record or a job folder: is it what was signed, with a key that is known here, and was all of it signed?

Nothing is written, and no folder is held. Looked at are the journal and the files that belong to it; what is printed on
a record's pages is not.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from backprobe.errors import JobError, JournalError, Place, UnreadableError
from backprobe.files.blobs import blob_fault, is_kept, read_blob
from backprobe.files.folder import MOUNT, PHOTOS, READINGS, RECORDINGS, WALKROUND
from backprobe.files.journal_file import JOURNAL, journal_content
from backprobe.files.pdf_journal import attachments
from backprobe.job.chain import Fault
from backprobe.job.covered import Rows, rows_of
from backprobe.job.fold import fold
from backprobe.job.kinds import text
from backprobe.job.rows import plain
from backprobe.job.sign_off import ATTACHED
from backprobe.job.signed import Signed
from backprobe.job.verified import Held, Verified, erased_in, missing_blobs, verified
from backprobe.keys.ed25519 import signature_holds

FILE_KINDS = ("job", "unit_sheet", "meter_sheet", "walkround", "mount", "policy", "readings_file", "recording", "photo")


@dataclass(frozen=True, slots=True, kw_only=True)
class Verification:
    """What was verified, and what it came to.

    `findings` and `hand_over` are what was signed by the sign-off that counts, as JSON values, None where they are not
    at hand; `beside` are attachments that belong to no sign-off; `only_named` counts the files that are known by
    digest alone.
    """

    path: Path
    is_pdf: bool
    sha256: str
    verified: Verified
    findings: Mapping[str, object] | None
    hand_over: Mapping[str, object] | None
    beside: tuple[str, ...] = ()
    only_named: int = 0


def verify(path: Path, names: Mapping[str, str]) -> Verification:
    """Verify the record (a PDF) or the job folder at `path`; `names` are the known public keys with their names.

    Raises UnreadableError or JobError where there is nothing to verify: no journal, or none that can be read.
    """
    return _folder(path, names) if _is_folder(path) else _pdf(path, names)


def _is_folder(path: Path) -> bool:
    """Whether there is a folder; a name that the system cannot take is none."""
    try:
        return path.is_dir()
    except OSError:
        return False


def _pdf(path: Path, names: Mapping[str, str]) -> Verification:
    attached = attachments(path)
    content = attached.pop(JOURNAL, None)
    if content is None:
        raise UnreadableError(Place(path.name), f"a record made by backprobe; no {JOURNAL} is attached to this PDF")
    by_digest = {hashlib.sha256(each).hexdigest(): each for each in attached.values()}
    rows = _rows(content, where=f"{path.name}: {JOURNAL}")
    held = Held(blob=by_digest.get)
    done = verified(rows, held, signature_holds=signature_holds, names=names)
    done = replace(done, faults=tuple(sorted({*done.faults, *_not_attached(done, attached)})))
    findings, hand_over = _signed(done.counts, held)
    named = {blob for line in rows.journal.lines for blob in line.entry.blobs}
    return Verification(
        path=path,
        is_pdf=True,
        sha256=hashlib.sha256(content).hexdigest(),
        verified=done,
        findings=findings,
        hand_over=hand_over,
        beside=tuple(sorted(name for name in attached if name not in ATTACHED)),
        only_named=len(named - set(by_digest) - erased_in(rows.journal.lines)),
    )


def _not_attached(done: Verified, attached: Mapping[str, bytes]) -> Iterator[Fault]:
    """Attachments that are not what the last sign-off was made over; those that were erased may be missing."""
    if not done.signed:
        yield from (Fault(0, "", f"{name} is attached, but nobody has signed") for name in ATTACHED if name in attached)
        return
    last = done.signed[-1]
    gone = erased_in(done.rows.journal.lines)
    for name, sha256 in last.sign_off.blobs.items():
        there = attached.get(name)
        if there is None and sha256 not in gone:
            yield Fault(last.line, last.sign_off.entry.id, f"{name}, which was signed, is not attached any more")
        elif there is not None and hashlib.sha256(there).hexdigest() != sha256:
            yield Fault(last.line, last.sign_off.entry.id, f"altered: the attached {name} is not what was signed")


def _folder(path: Path, names: Mapping[str, str]) -> Verification:
    content = journal_content(path)
    if not content:
        raise UnreadableError(Place(str(path)), f"a job folder with its {JOURNAL}; there is none, or it is empty")
    rows = _rows(content, where=str(path / JOURNAL))
    lines = rows.journal.lines

    def blob(sha256: str) -> bytes | None:
        try:
            return read_blob(path, sha256) if is_kept(path, sha256) else None
        except JournalError:
            return None

    faults = missing_blobs(lines, lambda sha256: blob_fault(path, sha256))
    pending = () if rows.faults else tuple(_not_taken_in(path, rows))
    held = Held(blob=blob, faults=faults, pending=pending)
    done = verified(rows, held, signature_holds=signature_holds, names=names)
    findings, hand_over = _signed(done.counts, held)
    return Verification(
        path=path,
        is_pdf=False,
        sha256=hashlib.sha256(content).hexdigest(),
        verified=done,
        findings=findings,
        hand_over=hand_over,
    )


def _rows(content: bytes, *, where: str) -> Rows:
    rows = rows_of(content)
    if not rows.journal.lines:
        raise JobError(f"{where}: not one line is an entry of a journal\nexpected: a journal made by backprobe")
    return rows


def _not_taken_in(folder: Path, rows: Rows) -> Iterator[str]:
    """The folder's files that are not, or are no longer, what the journal says of them."""
    try:
        state = fold(rows.journal.entries)
    except JournalError:
        return  # entries of several jobs: the journal's own faults say so
    stands = [one.body for kind in FILE_KINDS for one in state.of_kind(kind)]
    digests: dict[str, set[str | None]] = {}
    for body in stands:
        digests.setdefault(text(body, "file") or "", set()).add(text(body, "sha256"))
    for name in sorted({*digests, *_input_files(folder)}):
        found = _sha256(folder / name)
        if found is not None and found not in digests.get(plain(name), set()):
            yield f"{plain(name)} was changed, or added, after the journal was last brought up to it"


def _input_files(folder: Path) -> Iterator[str]:
    """The names of the readings, the walkround, the mount sheet, the recordings and the photos in the folder."""
    yield from (READINGS, WALKROUND, MOUNT)
    for within in (RECORDINGS, PHOTOS):
        place = folder / within
        names = (path.name for path in place.iterdir()) if place.is_dir() else ()
        yield from (f"{within}/{name}" for name in names if not name.startswith("."))


def _sha256(path: Path) -> str | None:
    """The digest of a plain file; None where there is none that can be read."""
    try:
        if not path.is_file():
            return None
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except (OSError, ValueError):
        return None


def _signed(counts: Signed | None, held: Held) -> tuple[Mapping[str, object] | None, Mapping[str, object] | None]:
    """The findings and the hand-over that were signed, read back."""
    if counts is None:
        return None, None
    judged = counts.sign_off.judged
    return _read(held.blob(judged.findings)), _read(held.blob(judged.hand_over))


def _read(content: bytes | None) -> Mapping[str, object] | None:
    """The table that was signed; None where it is not at hand, or is no table: a stranger may sign anything."""
    try:
        value = None if content is None else json.loads(content)
    except (ValueError, RecursionError):
        return None
    return value if isinstance(value, dict) else None
