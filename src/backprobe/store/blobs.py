"""Files by the sha256 of their bytes, in a folder behind one small interface, and what the database knows of them."""

from __future__ import annotations

import hashlib
import os
import shutil
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from sqlalchemy import Connection, RowMapping, insert, select, update

from backprobe.errors import RefusedError, StoreError
from backprobe.store.tables import blob
from backprobe.store.upsert import Row

CHUNK_BYTES = 1_048_576
LEAST_FREE_BYTES = 500_000_000  # on the disk: the journals go before photos
ERASED = "erased"  # the type of a file that was deleted on purpose, and is not taken again


class Blobs(Protocol):
    """Where the bytes of files are: written in pieces, and when they are whole and match put under their digest."""

    def begun(self, owner: str, sha256: str) -> int:
        """How many bytes `owner` has handed in of a file that is not whole yet [bytes]."""
        ...

    def append(self, owner: str, sha256: str, *, offset: int, piece: bytes) -> int:
        """Write a piece at `offset`, which is where the file stands; where it stands then, on the disk [bytes]."""
        ...

    def matches(self, owner: str, sha256: str) -> bool:
        """Whether what was handed in has this digest; every byte is looked at."""
        ...

    def finish(self, owner: str, sha256: str) -> None:
        """Put a file that matches under its digest; on the disk when this returns."""
        ...

    def drop(self, owner: str, sha256: str) -> None:
        """Drop what was handed in of a file."""
        ...

    def path(self, sha256: str) -> Path | None:
        """Where a whole file is; None where it is not."""
        ...

    def incoming(self, owner: str, sha256: str) -> Path:
        """Where a file is that is not whole yet, for a look at its content."""
        ...

    def erase(self, sha256: str) -> None:
        """Delete a whole file, on purpose."""
        ...

    def forget(self, *, older_than_s: float) -> int:
        """Drop what was begun and not gone on with for so long [s]; how many files."""
        ...


@dataclass(frozen=True, slots=True)
class BlobFolder:
    """Files in a folder: `ab/abcdef…` when whole, `incoming/` before."""

    folder: Path

    def begun(self, owner: str, sha256: str) -> int:
        """How many bytes there are of a file that is not whole yet."""
        path = self.incoming(owner, sha256)
        return path.stat().st_size if path.is_file() else 0

    def append(self, owner: str, sha256: str, *, offset: int, piece: bytes) -> int:
        """Write a piece and wait until it is on the disk. Raises RefusedError, StoreError."""
        path = self.incoming(owner, sha256)
        with _plain_words():
            path.parent.mkdir(parents=True, exist_ok=True)
            if shutil.disk_usage(path.parent).free < LEAST_FREE_BYTES + len(piece):
                raise StoreError("the disk is nearly full: what is left is kept for entries; files have to wait")
            with path.open("ab", buffering=0) as file:
                if file.tell() != offset:
                    raise RefusedError(f"the file stands at byte {file.tell()}, not at {offset}", code="offset")
                left = memoryview(piece)
                while left:
                    left = left[file.write(left) :]
                os.fsync(file.fileno())
                return file.tell()

    def matches(self, owner: str, sha256: str) -> bool:
        """Look at every byte."""
        found = hashlib.sha256()
        with _plain_words(), self.incoming(owner, sha256).open("rb") as file:
            while chunk := file.read(CHUNK_BYTES):
                found.update(chunk)
        return found.hexdigest() == sha256

    def finish(self, owner: str, sha256: str) -> None:
        """Give the file its digest as its name."""
        path = self.incoming(owner, sha256)
        with _plain_words():
            place = self._place(sha256)
            place.parent.mkdir(parents=True, exist_ok=True)
            path.replace(place)
            for folder in (place.parent, path.parent, self.folder):
                _sync(folder)

    def drop(self, owner: str, sha256: str) -> None:
        """Drop what there is."""
        self.incoming(owner, sha256).unlink(missing_ok=True)

    def path(self, sha256: str) -> Path | None:
        """Where a whole file is."""
        place = self._place(sha256)
        return place if place.is_file() else None

    def incoming(self, owner: str, sha256: str) -> Path:
        """Each owner has files of their own: nobody writes into what another has begun."""
        return self.folder / "incoming" / f"{hashlib.sha256(owner.encode()).hexdigest()[:32]}-{sha256}"

    def erase(self, sha256: str) -> None:
        """Delete a whole file; on the disk when this returns."""
        place = self._place(sha256)
        with _plain_words():
            if place.is_file():
                place.unlink()
                _sync(place.parent)

    def forget(self, *, older_than_s: float) -> int:
        """Drop what nobody has gone on with."""
        before, dropped = time.time() - older_than_s, 0
        folder = self.folder / "incoming"
        with _plain_words():
            for path in folder.iterdir() if folder.is_dir() else ():
                if path.stat().st_mtime < before:
                    path.unlink()
                    dropped += 1
        return dropped

    def _place(self, sha256: str) -> Path:
        return self.folder / sha256[:2] / sha256


def _sync(folder: Path) -> None:
    """Wait until the names in a folder are on the disk."""
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


@contextmanager
def _plain_words() -> Iterator[None]:
    try:
        yield
    except OSError as fault:
        raise StoreError(f"the file cannot be kept just now; the system says: {fault.strerror or fault}") from fault


def note(connection: Connection, row: Row) -> None:
    """Write that a file is kept: organisation, sha256, bytes, type, kept_at, phone, quarantined."""
    here = (blob.c.organisation == row["organisation"], blob.c.sha256 == row["sha256"])
    before = connection.execute(select(blob.c.quarantined).where(*here)).scalar()
    if before is None:
        connection.execute(insert(blob).values(**row))
    elif before and not row["quarantined"]:
        connection.execute(update(blob).where(*here).values(quarantined=False))


def noted(connection: Connection, organisation_id: str, *, sha256: str) -> RowMapping | None:
    """What is known of a file that is kept."""
    found = select(blob).where(blob.c.organisation == organisation_id, blob.c.sha256 == sha256)
    return connection.execute(found).mappings().first()


def take_out_of_quarantine(connection: Connection, organisation_id: str, *, digests: tuple[str, ...]) -> None:
    """Files that entries name which were taken in after all."""
    connection.execute(
        update(blob).where(blob.c.organisation == organisation_id, blob.c.sha256.in_(digests)).values(quarantined=False)
    )


def note_erased(connection: Connection, organisation_id: str, *, digests: Sequence[str], at: str) -> None:
    """Write that files were deleted on purpose, whether they had been kept or not."""
    for sha256 in digests:
        gone = {"bytes": 0, "type": ERASED, "quarantined": False}
        if noted(connection, organisation_id, sha256=sha256) is None:
            row = {"organisation": organisation_id, "sha256": sha256, "kept_at": at, "phone": None}
            connection.execute(insert(blob).values(**row, **gone))
        else:
            here = (blob.c.organisation == organisation_id, blob.c.sha256 == sha256)
            connection.execute(update(blob).where(*here).values(**gone))


def erased(connection: Connection, organisation_id: str) -> tuple[str, ...]:
    """The digests of all files that were deleted on purpose."""
    found = select(blob.c.sha256).where(blob.c.organisation == organisation_id, blob.c.type == ERASED)
    return tuple(connection.execute(found).scalars())
