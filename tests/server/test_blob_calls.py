"""Files go in whole or in pieces, are held against their digest, and come back to whoever may see them."""

from __future__ import annotations

import hashlib
import io
import struct
import zlib

import httpx
import pytest
from PIL import Image
from tests.samples.journals import Phone
from tests.samples.served import Server

from backprobe.cases.enrol import withdraw
from backprobe.store.people import phones

LOG = b"time,V\n" + b"0.001,12.61\n" * 300_000  # 3.6 MB


def sha256_of(content: bytes) -> str:
    """The digest of a content."""
    return hashlib.sha256(content).hexdigest()


def jpeg(width: int = 1600, height: int = 900) -> bytes:
    """A photo with a note of where it was taken."""
    image = Image.new("RGB", (width, height), (90, 120, 60))
    exif = Image.Exif()
    exif[0x010E] = "taken at home"
    held = io.BytesIO()
    image.save(held, "JPEG", exif=exif)
    return held.getvalue()


def png_bomb(side: int = 30_000) -> bytes:
    """A PNG of some hundred bytes that claims side × side pixels."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    head = struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 999)) + chunk(b"IEND", b"")
    )


def put(client: httpx.Client, content: bytes, **headers: str) -> httpx.Response:
    """Hand a content in under its digest."""
    return client.put(f"/api/blobs/{sha256_of(content)}", content=content, headers=headers)


def test_a_file_is_kept_as_it_was_sent(phone: httpx.Client) -> None:
    """3.6 MB whole: 201, then 200; HEAD tells its size; the same bytes come back."""
    path = f"/api/blobs/{sha256_of(LOG)}"
    missing = phone.head(path)
    assert (missing.status_code, missing.headers["upload-offset"]) == (404, "0")
    first = put(phone, LOG)
    assert (first.status_code, first.json()) == (
        201,
        {"sha256": sha256_of(LOG), "state": "kept", "bytes": len(LOG), "type": "text/plain"},
    )
    assert put(phone, LOG).status_code == 200
    assert phone.head(path).headers["content-length"] == str(len(LOG))
    back = phone.get(path)
    assert back.content == LOG
    assert back.headers["content-type"].startswith("text/plain")
    assert back.headers["x-content-type-options"] == "nosniff"
    assert "immutable" in back.headers["cache-control"]


def test_pieces_go_on_where_the_server_stands(phone: httpx.Client) -> None:
    """Three pieces; one sent out of place is told where to go on."""
    path, size, step = f"/api/blobs/{sha256_of(LOG)}", len(LOG), 1_500_000
    for start in (0, step, 2 * step):
        piece = LOG[start : start + step]
        wrong = phone.put(path, content=b"x", headers={"Content-Range": f"bytes {start + 7}-{start + 7}/{size}"})
        assert (wrong.status_code, wrong.json()["code"]) == (409, "offset")
        assert wrong.headers["upload-offset"] == str(start)
        headers = {"Content-Range": f"bytes {start}-{start + len(piece) - 1}/{size}"}
        answer = phone.put(path, content=piece, headers=headers)
        assert answer.status_code == (202 if start < 2 * step else 201)
        if start < 2 * step:
            assert answer.json()["offset"] == start + step
            assert phone.head(path).headers["upload-offset"] == str(start + step)
    assert phone.get(path).content == LOG


def test_other_bytes_than_the_digest_says_are_not_kept(phone: httpx.Client) -> None:
    """And the next try begins at 0."""
    path = f"/api/blobs/{'ab' * 32}"
    answer = phone.put(path, content=LOG)
    assert (answer.status_code, answer.json()["code"]) == (422, "digest_differs")
    assert phone.head(path).headers["upload-offset"] == "0"


@pytest.mark.parametrize(
    ("content", "status", "code"),
    [
        (b"%PDF-1.7 ...", 415, "blob_type"),
        (b"PK\x03\x04....", 415, "blob_type"),
        (b"\x7fELF\0\0\0\0", 415, "blob_type"),
        (b"\xff\xd8\xff\xe0 torn", 415, "blob_type"),
        (png_bomb(), 413, "too_large"),
        (png_bomb(6_000), 413, "too_large"),
    ],
)
def test_what_is_neither_picture_nor_text_is_refused(
    phone: httpx.Client, content: bytes, status: int, code: str
) -> None:
    """By its content, whatever it is called; 6000 × 6000 is 36 million pixels, more than 24."""
    answer = put(phone, content)
    assert (answer.status_code, answer.json()["code"]) == (status, code)
    assert phone.get(f"/api/blobs/{sha256_of(content)}").status_code == 404


@pytest.mark.parametrize("headers", [{"Content-Range": "bytes 0-5/3"}, {"Content-Range": "all"}])
def test_a_range_that_makes_no_sense_is_refused(phone: httpx.Client, headers: dict[str, str]) -> None:
    """Said as it is expected."""
    answer = put(phone, b"abc", **headers)
    assert (answer.status_code, answer.json()["code"]) == (422, "request")


def test_too_large_a_file_is_refused_before_it_is_read(phone: httpx.Client) -> None:
    """101 MB announced: 413 at once."""
    headers = {"Content-Range": "bytes 0-2/101000000"}
    assert put(phone, b"abc", **headers).json()["code"] == "too_large"


def test_a_small_picture_has_nothing_but_the_picture(phone: httpx.Client) -> None:
    """720 pixels on the long side; what the camera wrote beside it stays in the bytes as sent, not in the small one."""
    photo = jpeg()
    assert put(phone, photo).json()["type"] == "image/jpeg"
    assert phone.get(f"/api/blobs/{sha256_of(photo)}").content == photo
    small = phone.get(f"/api/blobs/{sha256_of(photo)}", params={"size": "thumb"})
    image = Image.open(io.BytesIO(small.content))
    assert (small.headers["content-type"], image.size) == ("image/jpeg", (720, 405))
    assert b"taken at home" in photo
    assert b"taken at home" not in small.content
    assert phone.get(f"/api/blobs/{sha256_of(photo)}", params={"size": "huge"}).status_code == 422


def test_only_who_was_given_the_job_sees_its_files(server: Server, phone: httpx.Client) -> None:
    """Another phone is told that there is no such file; whoever sent it sees it before any entry names it."""
    put(phone, LOG)
    body = {"file": "recordings/a.csv", "sha256": sha256_of(LOG), "bytes": len(LOG), "stored": True}
    entry = Phone().say("recording", body, blobs=(sha256_of(LOG),)).raw.decode()
    phone.post("/api/entries", json={"entries": [entry]})
    with server.phone("Marta", device="phone-b") as other:
        assert other.get(f"/api/blobs/{sha256_of(LOG)}").json()["code"] == "not_found"
    assert phone.get(f"/api/blobs/{sha256_of(LOG)}").status_code == 200


def test_a_withdrawn_phone_s_files_are_kept_and_shown_to_nobody(server: Server, phone: httpx.Client) -> None:
    """Not even to a colleague on the job, until the lead takes them in."""
    with server.yard.store.reading() as connection:
        [row] = phones(connection, server.yard.organisation)
    withdraw(server.yard, server.lead, phone_id=row["id"])
    assert put(phone, LOG).status_code == 201
    assert phone.head(f"/api/blobs/{sha256_of(LOG)}").status_code == 200
    assert phone.get(f"/api/blobs/{sha256_of(LOG)}").json()["code"] == "phone_withdrawn"


def test_an_empty_file_is_a_file(phone: httpx.Client) -> None:
    """Nothing has a digest, too."""
    assert put(phone, b"").json()["bytes"] == 0
