"""An entry is its bytes: written in one form, read back exactly, kept even where it is not understood."""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.journals import Phone, uuid7

from backprobe.errors import BackprobeError, JournalError
from backprobe.job.entry import MOST_BYTES, digest, is_sha256, read_entry

FIRST = Phone().reads("Red", "on", "12.30")
LATER = (
    b'{"v":99, "seq":2,"prev":"' + b"a" * 64 + b'","kind":"hologram","id":"' + uuid7(5).encode() + b'",'
    b'"job":"job-7","device":"phone-z","body":12.5,"lens":{"mm":35.5}}'
)


def changed(**fields: object) -> bytes:
    """The first entry's JSON with other fields."""
    return json.dumps(FIRST.as_json() | fields, sort_keys=True, separators=(",", ":")).encode()


def read_or_none(raw: bytes) -> bytes | None:
    """The bytes of the entry that was read, None where it was refused."""
    try:
        return read_entry(raw).raw
    except BackprobeError:
        return None


def test_the_bytes_of_an_entry():
    """The twelve fields, sorted, figures as typed."""
    assert FIRST.raw == (
        b'{"at":"2026-05-04T09:30:00Z","blobs":[],'
        b'"body":{"capture":"display","key":"on","volts":"12.30","wire":"Red"},'
        b'"by":null,"device":"phone-a","engine":"0.1.0","id":"00000000-0000-7000-8000-000000000000",'
        b'"job":"job-7","kind":"reading","prev":null,"seq":1,"v":1}'
    )


def test_an_entry_reads_back_as_itself():
    """Reading the bytes gives the entry again, digest and all."""
    again = read_entry(FIRST.raw)
    assert again == FIRST
    assert again.digest == digest(FIRST.raw) == hashlib.sha256(FIRST.raw).hexdigest()


def test_a_later_version_is_kept_byte_for_byte():
    """Version 99 in a form of its own: the frame is read, the bytes stay, its unknown fields with them."""
    entry = read_entry(LATER)
    assert entry.raw == LATER
    assert (entry.v, entry.kind, entry.device, entry.seq, entry.prev) == (99, "hologram", "phone-z", 2, "a" * 64)
    assert not entry.version_known
    assert entry.body == {}


def test_a_later_version_keeps_what_it_shares():
    """Body, blobs and time are taken from a later version where they have the known form."""
    entry = read_entry(changed(v=2, body={"lens": "35"}, blobs=["b" * 64, 7], by=3))
    assert (entry.body, entry.blobs, entry.by, entry.at) == ({"lens": "35"}, ("b" * 64,), None, FIRST.at)


def test_an_unknown_kind_is_an_entry_like_any_other():
    """A kind nobody knows is read and its bytes kept."""
    raw = changed(kind="hologram", body={"of": "the dash"})
    assert read_entry(raw).raw == raw


def test_a_later_version_is_not_made_here():
    """Only reading gives entries of other versions."""
    with pytest.raises(JournalError, match="version 2 cannot be made here"):
        replace(FIRST, v=2, raw=b"")


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"v": 0}, "entry.v"),
        ({"v": True}, "entry.v"),
        ({"v": "1"}, "entry.v"),
        ({"id": FIRST.id.upper().replace("0", "A")}, "entry.id"),
        ({"id": "7"}, "entry.id"),
        ({"job": ""}, "entry.job"),
        ({"kind": "Reading"}, "entry.kind"),
        ({"device": None}, "entry.device"),
        ({"seq": 0}, "entry.seq"),
        ({"seq": 2}, "entry.prev"),
        ({"prev": "a" * 64}, "entry.prev"),
        ({"at": "4.5.2026"}, "entry.at"),
        ({"by": "Kim"}, "entry.by"),
        ({"engine": ""}, "entry.engine"),
        ({"body": []}, "entry.body"),
        ({"body": {"volts": 12.3}}, "is a float"),
        ({"blobs": ["short"]}, "entry.blobs"),
        ({"blobs": ["a" * 64, "a" * 64]}, "entry.blobs"),
        ({"blobs": "a" * 64}, "entry.blobs"),
        ({"lens": 1}, "surplus: lens"),
    ],
)
def test_a_field_that_does_not_fit_is_named(fields, said):
    """Each wrong field raises the project's error and names the field."""
    with pytest.raises(JournalError, match=said):
        read_entry(changed(**fields))


def test_a_missing_field_is_named():
    """Eleven fields are no entry."""
    values = FIRST.as_json()
    del values["engine"]
    with pytest.raises(JournalError, match="missing or surplus: engine"):
        read_entry(json.dumps(values).encode())


@pytest.mark.parametrize("raw", [FIRST.raw + b" ", FIRST.raw.replace(b",", b", ", 1), b"[]", b"null", b""])
def test_another_form_is_refused(raw):
    """A space more, or no table at all: not what was written."""
    with pytest.raises(JournalError):
        read_entry(raw)


def test_escapes_that_json_allows_are_still_another_form():
    """The same text written with an escape is not the same bytes."""
    with pytest.raises(JournalError, match="altered"):
        read_entry(FIRST.raw.replace(b"Red", b"\\u0052ed"))


def test_an_entry_holds_at_most_64_kB():
    """Exactly 64,000 bytes pass, one more does not, whether written or read."""
    room = MOST_BYTES - len(Phone().say("note", {"text": ""}).raw)
    entry = Phone().say("note", {"text": "a" * room})
    assert len(entry.raw) == 64_000
    assert read_entry(entry.raw) == entry
    with pytest.raises(JournalError, match="64001 bytes is too large"):
        Phone().say("note", {"text": "a" * (room + 1)})
    with pytest.raises(JournalError, match="too large"):
        read_entry(LATER + b" " * MOST_BYTES)


@given(st.binary(max_size=200) | st.text(max_size=200).map(lambda text: text.encode("utf-8", "replace")))
def test_reading_raises_nothing_but_our_own_errors(raw):
    """Whatever the line, it is an entry with these bytes or the project's error."""
    assert read_or_none(raw) in (None, raw)


@given(st.integers(0, len(FIRST.raw) - 1), st.integers(0, 255))
def test_an_altered_byte_never_passes_for_the_same_entry(at, byte):
    """One byte changed: refused, or an entry that is not the first one."""
    raw = FIRST.raw[:at] + bytes([byte]) + FIRST.raw[at + 1 :]
    assert (read_or_none(raw) == FIRST.raw) == (raw == FIRST.raw)


def test_sha256_in_lower_case_hex_only():
    """64 hex digits; capitals, other lengths and other types are no digests."""
    assert is_sha256("0" * 64)
    assert not any(is_sha256(value) for value in ("A" * 64, "0" * 63, "0" * 65, "0" * 64 + "\n", 0, None, b"0" * 64))
