"""Files are kept under the digest of their bytes, or not at all."""

from __future__ import annotations

import hashlib
import os
import shutil
from pathlib import Path

import pytest
from tests.samples.stores import AT, ORGANISATION

from backprobe.errors import RefusedError, StoreError
from backprobe.store import blobs
from backprobe.store.blobs import BlobFolder
from backprobe.store.opened import Store

CONTENT = b"time,V\n0,12.6\n"
SHA256 = hashlib.sha256(CONTENT).hexdigest()


def test_pieces_become_a_file(tmp_path: Path) -> None:
    """5 bytes, then the other 9: whole under its digest; what was handed in stands there from the first piece on."""
    folder = BlobFolder(tmp_path)
    assert folder.begun("p1", SHA256) == 0
    assert folder.append("p1", SHA256, offset=0, piece=CONTENT[:5]) == 5
    assert BlobFolder(tmp_path).begun("p1", SHA256) == 5
    assert folder.begun("p2", SHA256) == 0
    assert folder.append("p1", SHA256, offset=5, piece=CONTENT[5:]) == 14
    assert folder.path(SHA256) is None
    assert folder.matches("p1", SHA256)
    folder.finish("p1", SHA256)
    path = folder.path(SHA256)
    assert path is not None
    assert path.read_bytes() == CONTENT
    assert folder.begun("p1", SHA256) == 0


def test_other_bytes_do_not_match(tmp_path: Path) -> None:
    """What has another digest is told, and dropped the next try begins at 0."""
    folder = BlobFolder(tmp_path)
    folder.append("p1", SHA256, offset=0, piece=b"other")
    assert not folder.matches("p1", SHA256)
    folder.drop("p1", SHA256)
    assert folder.path(SHA256) is None
    assert folder.begun("p1", SHA256) == 0


def test_a_piece_that_does_not_fit_on_is_refused(tmp_path: Path) -> None:
    """At 5 nothing is written to a file of 0 bytes."""
    folder = BlobFolder(tmp_path)
    with pytest.raises(RefusedError) as refusal:
        folder.append("p1", SHA256, offset=5, piece=b"x")
    assert refusal.value.code == "offset"
    assert folder.begun("p1", SHA256) == 0
    folder.append("p1", SHA256, offset=0, piece=b"x")
    folder.drop("p1", SHA256)
    assert folder.begun("p1", SHA256) == 0


def test_a_folder_that_cannot_be_used_is_said(tmp_path: Path) -> None:
    """In the system's words."""
    (tmp_path / "file").write_text("x", encoding="utf-8")
    with pytest.raises(StoreError, match="cannot be kept"):
        BlobFolder(tmp_path / "file").append("p1", SHA256, offset=0, piece=b"x")


def test_a_file_leaves_quarantine_and_does_not_go_back(store: Store) -> None:
    """Handed in by a withdrawn phone it is set aside; sent by a good one, or taken in, it is not."""
    row = {"organisation": ORGANISATION, "sha256": SHA256, "bytes": 14, "type": "text/plain", "kept_at": AT}
    other = {**row, "sha256": "cd" * 32}

    def aside(sha256: str) -> bool:
        found = blobs.noted(connection, ORGANISATION, sha256=sha256)
        assert found is not None
        return bool(found["quarantined"])

    with store.writing() as connection:
        assert blobs.noted(connection, ORGANISATION, sha256=SHA256) is None
        for each in (row, other):
            blobs.note(connection, {**each, "phone": "p1", "quarantined": True})
        assert aside(SHA256)
        blobs.note(connection, {**row, "phone": "p2", "quarantined": False})
        blobs.note(connection, {**row, "phone": "p1", "quarantined": True})
        assert not aside(SHA256)
        assert aside(other["sha256"])
        blobs.take_out_of_quarantine(connection, ORGANISATION, digests=(other["sha256"],))
        assert not aside(other["sha256"])


def test_what_was_begun_long_ago_is_dropped(tmp_path: Path) -> None:
    """Older than an hour, not younger."""
    folder = BlobFolder(tmp_path)
    assert folder.forget(older_than_s=0) == 0
    folder.append("p1", SHA256, offset=0, piece=b"x")
    assert folder.forget(older_than_s=3600) == 0
    os.utime(folder.incoming("p1", SHA256), (0, 0))
    assert folder.forget(older_than_s=3600) == 1
    assert folder.begun("p1", SHA256) == 0


def test_a_file_can_be_erased(store: Store, tmp_path: Path) -> None:
    """The file goes; the row says that it was on purpose, also of a file that was never kept."""
    folder = BlobFolder(tmp_path)
    folder.append("p1", SHA256, offset=0, piece=CONTENT)
    folder.finish("p1", SHA256)
    folder.erase(SHA256)
    folder.erase(SHA256)
    assert folder.path(SHA256) is None
    row = {"organisation": ORGANISATION, "sha256": SHA256, "bytes": 14, "type": "text/plain", "kept_at": AT}
    with store.writing() as connection:
        blobs.note(connection, {**row, "phone": "p1", "quarantined": False})
        blobs.note_erased(connection, ORGANISATION, digests=[SHA256, "ab" * 32], at=AT)
        assert sorted(blobs.erased(connection, ORGANISATION)) == sorted([SHA256, "ab" * 32])
        found = blobs.noted(connection, ORGANISATION, sha256=SHA256)
    assert found is not None
    assert (found["type"], found["bytes"]) == ("erased", 0)


def test_files_wait_while_the_disk_is_nearly_full(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What room there is stays for entries; nothing of the piece is written."""
    folder = BlobFolder(tmp_path)
    monkeypatch.setattr(blobs, "LEAST_FREE_BYTES", shutil.disk_usage(tmp_path).total)
    with pytest.raises(StoreError, match="nearly full"):
        folder.append("p1", SHA256, offset=0, piece=CONTENT)
    assert folder.begun("p1", SHA256) == 0
