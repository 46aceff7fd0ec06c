"""Files are begun, gone on with, finished or dropped; the server keeps its own in the same way."""

from __future__ import annotations

import hashlib
from dataclasses import replace

import pytest
from tests.samples.stores import AT

from backprobe.cases import hand_in_file as files
from backprobe.cases.may import Caller, Role
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError

CONTENT = b"time,V\n0,12.6\n"
SHA256 = hashlib.sha256(CONTENT).hexdigest()


def code_of(call: object, *args: object, **named: object) -> str:
    """The code with which a call is refused."""
    assert callable(call)
    with pytest.raises(RefusedError) as refusal:
        call(*args, **named)
    return refusal.value.code


def hand_in(yard: Yard, caller: Caller, content: bytes, sha256: str = SHA256) -> files.KeptFile:
    """A file, whole."""
    offset = files.begin_file(yard, caller, sha256=sha256, offset=None, total_bytes=len(content))
    files.hand_in_piece(yard, caller, sha256=sha256, offset=offset, piece=content)
    return files.finish_file(yard, caller, sha256=sha256, at=AT)


def test_a_file_is_kept_when_it_matches(sqlite_yard: Yard, ines: Caller) -> None:
    """Its size and type are known then, and its bytes are those that came."""
    kept = hand_in(sqlite_yard, ines, CONTENT)
    assert (kept.size_bytes, kept.type, kept.path.read_bytes()) == (14, "text/plain", CONTENT)
    assert files.kept_file(sqlite_yard, ines, sha256=SHA256) == kept
    assert files.readable_file(sqlite_yard, ines, sha256=SHA256) == kept


def test_what_does_not_match_is_dropped(sqlite_yard: Yard, ines: Caller) -> None:
    """The next try begins at 0."""
    assert code_of(hand_in, sqlite_yard, ines, b"other") == "digest_differs"
    assert files.begun_bytes(sqlite_yard, ines, sha256=SHA256) == 0
    assert files.kept_file(sqlite_yard, ines, sha256=SHA256) is None


def test_two_phones_do_not_write_into_each_other_s_file(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Each has begun its own."""
    files.hand_in_piece(sqlite_yard, ines, sha256=SHA256, offset=0, piece=CONTENT[:5])
    assert files.begun_bytes(sqlite_yard, marta, sha256=SHA256) == 0
    assert files.begin_file(sqlite_yard, ines, sha256=SHA256, offset=5, total_bytes=14) == 5
    assert code_of(files.begin_file, sqlite_yard, marta, sha256=SHA256, offset=5, total_bytes=14) == "offset"
    hand_in(sqlite_yard, marta, CONTENT)
    assert files.kept_file(sqlite_yard, ines, sha256=SHA256) is not None


def test_more_than_is_taken_is_dropped(sqlite_yard: Yard, ines: Caller, monkeypatch: pytest.MonkeyPatch) -> None:
    """With a limit of 10 bytes, the piece that passes it ends the file."""
    monkeypatch.setattr(files, "MOST_BYTES", 10)
    assert code_of(files.begin_file, sqlite_yard, ines, sha256=SHA256, offset=0, total_bytes=11) == "too_large"
    files.hand_in_piece(sqlite_yard, ines, sha256=SHA256, offset=0, piece=CONTENT[:8])
    assert code_of(files.hand_in_piece, sqlite_yard, ines, sha256=SHA256, offset=8, piece=b"abc") == "too_large"
    assert files.begun_bytes(sqlite_yard, ines, sha256=SHA256) == 0


def test_quarantine_is_for_the_lead_to_see(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """A withdrawn phone's file: the phone cannot read it, nor a colleague; the lead can."""
    gone = replace(ines, role=Role.WITHDRAWN_PHONE)
    hand_in(sqlite_yard, gone, CONTENT)
    assert code_of(files.readable_file, sqlite_yard, gone, sha256=SHA256) == "phone_withdrawn"
    assert code_of(files.readable_file, sqlite_yard, marta, sha256=SHA256) == "not_found"
    lead = Caller(role=Role.LEAD, organisation=ines.organisation)
    assert files.readable_file(sqlite_yard, lead, sha256=SHA256).size_bytes == 14


def test_the_server_keeps_its_own_texts(sqlite_yard: Yard) -> None:
    """Kept twice they are there once."""
    assert files.keep_bytes(sqlite_yard, CONTENT, at=AT) == files.keep_bytes(sqlite_yard, CONTENT, at=AT) == SHA256
    path = sqlite_yard.blobs.path(SHA256)
    assert path is not None
    assert path.read_bytes() == CONTENT


def test_text_has_no_small_picture(sqlite_yard: Yard, ines: Caller) -> None:
    """There is none to be found."""
    kept = hand_in(sqlite_yard, ines, CONTENT)
    assert code_of(files.small_picture, sqlite_yard, kept, sha256=SHA256) == "not_found"
