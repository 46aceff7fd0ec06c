"""A file is what its content says."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from backprobe.cases.content import content_type
from backprobe.errors import RefusedError


@pytest.mark.parametrize(("form", "kind"), [("JPEG", "image/jpeg"), ("PNG", "image/png"), ("WEBP", "image/webp")])
def test_pictures_are_told_by_their_content(tmp_path: Path, form: str, kind: str) -> None:
    """Whatever their name says."""
    Image.new("RGB", (40, 30)).save(tmp_path / "a.csv", form)
    assert content_type(tmp_path / "a.csv") == kind


@pytest.mark.parametrize(
    "content", [b"time,V\n0,12.6\n", "Ω;12,6\n".encode(), "a,b\n".encode("utf-16"), b"$GPGGA,1\r\n", b"", b"<html>"]
)
def test_texts_are_text(tmp_path: Path, content: bytes) -> None:
    """Tables, logs and sheets in any encoding; a page, too, is no more than text."""
    (tmp_path / "a").write_bytes(content)
    assert content_type(tmp_path / "a") == "text/plain"


@pytest.mark.parametrize("content", [b"LOGG\x90\0\0\0", b"MDF     4.10    ", b"UnFinMF 4.10    "])
def test_bus_logs_are_bytes(tmp_path: Path, content: bytes) -> None:
    """BLF and MDF, by how they begin (as their readers python-can and asammdf look for it)."""
    (tmp_path / "a").write_bytes(content)
    assert content_type(tmp_path / "a") == "application/octet-stream"


@pytest.mark.parametrize("content", [b"%PDF-1.7", b"GIF89a", b"\x1f\x8b\x08", b"RIFF\0\0\0\0WAVE", b"\0\1\2\3"])
def test_all_else_is_refused(tmp_path: Path, content: bytes) -> None:
    """A PDF, an animation, something packed, a sound, a program."""
    (tmp_path / "a").write_bytes(content)
    with pytest.raises(RefusedError) as refusal:
        content_type(tmp_path / "a")
    assert refusal.value.code == "blob_type"
