"""Files from phones and from the desk: in pieces, held against their digest, looked at, kept as they were sent."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

from backprobe.cases.content import content_type
from backprobe.cases.may import Caller, Deed
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError, UnreadableError
from backprobe.files.photos import paper_photo
from backprobe.store import blobs, entries, jobs

MOST_BYTES = 100_000_000
OWN = "server"  # under this name the server hands in to itself


@dataclass(frozen=True, slots=True)
class KeptFile:
    """A file that is kept whole: where, its size and type."""

    path: Path
    size_bytes: int
    type: str


def kept_file(yard: Yard, caller: Caller, *, sha256: str) -> KeptFile | None:
    """A file that is kept whole, also from quarantine; None where it is not."""
    with yard.store.reading() as connection:
        row = blobs.noted(connection, caller.organisation, sha256=sha256)
    path = yard.blobs.path(sha256)
    if row is None or path is None or row["type"] == blobs.ERASED:
        return None
    return KeptFile(path, row["bytes"], row["type"])


def readable_file(yard: Yard, caller: Caller, *, sha256: str) -> KeptFile:
    """A file for whoever may read a job that it belongs to. Raises RefusedError: `not_found` where they may not."""
    everything = caller.may(Deed.READ_ALL_JOBS)
    if not everything:
        caller.must(Deed.READ_OWN_JOBS)
    with yard.store.reading() as connection:
        row = blobs.noted(connection, caller.organisation, sha256=sha256)
        uses = entries.jobs_of_blob(connection, caller.organisation, sha256=sha256)
        mine = everything or jobs.works_on(connection, caller.organisation, person_id=caller.person or "", jobs=uses)
        own = row is not None and caller.phone is not None and row["phone"] == caller.phone.id
    path = None if row is None or row["type"] == blobs.ERASED else yard.blobs.path(sha256)
    if row is None or path is None or not (mine or own) or (row["quarantined"] and not everything):
        raise RefusedError("there is no such file among your jobs", code="not_found")
    return KeptFile(path, row["bytes"], row["type"])


def begun_bytes(yard: Yard, caller: Caller, *, sha256: str) -> int:
    """How many bytes the caller has handed in of a file that is not whole yet."""
    caller.must(Deed.HAND_IN)
    return yard.blobs.begun(_owner(caller), sha256)


def begin_file(yard: Yard, caller: Caller, *, sha256: str, offset: int | None, total_bytes: int | None) -> int:
    """Begin a file or go on with it; where the next piece goes. Raises RefusedError.

    `offset` is None where the file comes whole: then what was handed in before is dropped.
    """
    caller.must(Deed.HAND_IN)
    if total_bytes is not None and total_bytes > MOST_BYTES:
        raise RefusedError(f"{total_bytes} bytes; at most {MOST_BYTES // 1_000_000} MB", code="too_large")
    with yard.store.reading() as connection:
        row = blobs.noted(connection, caller.organisation, sha256=sha256)
    if row is not None and row["type"] == blobs.ERASED:
        raise RefusedError("this file was erased on purpose; it is not taken again", code="erased")
    owner = _owner(caller)
    if offset is None:
        yard.blobs.drop(owner, sha256)
        return 0
    stands = yard.blobs.begun(owner, sha256)
    if offset != stands:
        raise RefusedError(f"the file stands at byte {stands}, not at {offset}", code="offset")
    return stands


def hand_in_piece(yard: Yard, caller: Caller, *, sha256: str, offset: int, piece: bytes) -> int:
    """Write a piece; where the file stands then. Raises RefusedError and StoreError."""
    if offset + len(piece) > MOST_BYTES:
        yard.blobs.drop(_owner(caller), sha256)
        raise RefusedError(f"more than {MOST_BYTES // 1_000_000} MB", code="too_large")
    return yard.blobs.append(_owner(caller), sha256, offset=offset, piece=piece)


def finish_file(yard: Yard, caller: Caller, *, sha256: str, at: str) -> KeptFile:
    """Keep a file that has arrived whole. Raises RefusedError, and drops it, where it is not what it should be."""
    owner = _owner(caller)
    path = yard.blobs.incoming(owner, sha256)
    if not path.is_file():
        yard.blobs.append(owner, sha256, offset=0, piece=b"")
    size_bytes = path.stat().st_size
    try:
        if not yard.blobs.matches(owner, sha256):
            raise RefusedError("these bytes have another digest; send the file again", code="digest_differs")
        kind = content_type(path)
    except RefusedError:
        yard.blobs.drop(owner, sha256)
        raise
    yard.blobs.finish(owner, sha256)
    phone = None if caller.phone is None else caller.phone.id
    row = {"organisation": caller.organisation, "sha256": sha256, "bytes": size_bytes, "type": kind, "kept_at": at}
    aside = not caller.may(Deed.READ_DAY) and caller.phone is not None
    with yard.store.writing() as connection:
        blobs.note(connection, {**row, "phone": phone, "quarantined": aside})
        if not aside:
            uses = entries.jobs_of_blob(connection, caller.organisation, sha256=sha256)
            jobs.judge_again(connection, caller.organisation, jobs=uses)
    return KeptFile(yard.blobs.path(sha256) or path, size_bytes, kind)


def keep_bytes(yard: Yard, content: bytes, *, at: str) -> str:
    """Keep what the server itself has made, a text; its digest."""
    sha256 = hashlib.sha256(content).hexdigest()
    if yard.blobs.path(sha256) is None:
        yard.blobs.drop(OWN, sha256)
        yard.blobs.append(OWN, sha256, offset=0, piece=content)
        yard.blobs.finish(OWN, sha256)
    row = {"organisation": yard.organisation, "sha256": sha256, "bytes": len(content), "type": "text/plain"}
    with yard.store.writing() as connection:
        blobs.note(connection, {**row, "kept_at": at, "phone": None, "quarantined": False})
    return sha256


def small_picture(yard: Yard, file: KeptFile, *, sha256: str) -> Path:
    """A picture made small, without anything the camera wrote beside it; made once. Raises RefusedError."""
    made = yard.made / f"{sha256}.jpg"
    if made.is_file():
        return made
    if not file.type.startswith("image/"):
        raise RefusedError("this file is no picture", code="not_found")
    try:
        picture = paper_photo(file.path, sha256)
    except UnreadableError as refusal:
        raise RefusedError(f"this picture cannot be shown; expected: {refusal.expected}", code="unreadable") from None
    passing = made.with_name(f".{sha256}-{id(picture)}")
    passing.write_bytes(picture.jpeg)
    passing.replace(made)
    return made


def _owner(caller: Caller) -> str:
    return caller.phone.id if caller.phone is not None else f"desk {caller.person}"
