"""The encoding told from the first bytes, and what is no text refused by name."""

from __future__ import annotations

import codecs

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.formats.text import encoding_of, is_wide, refuse_binary, refuse_known

TEXT = "wire,key,volts\nGrün,on,12,30\n"


@pytest.mark.parametrize("codec", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252"])
def test_round_trip(codec):
    """Whatever an export was saved in, the same text comes out and it is not taken for a binary file."""
    raw = TEXT.encode(codec)
    refuse_binary(raw, file="f")
    assert raw.decode(encoding_of(raw)) == TEXT


def test_big_endian_mark():
    """UTF-16 from a big-endian machine is told by its mark."""
    assert encoding_of(codecs.BOM_UTF16_BE + "a".encode("utf-16-be")) == "utf-16"


def test_a_character_cut_in_two_is_still_utf_8():
    """The head of a file may end within a character."""
    assert encoding_of("Grün".encode()[:3]) == "utf-8"


@pytest.mark.parametrize(
    ("head", "looks"),
    [
        (b"\xff\xd8\xff\xe0\x00\x10JFIF", "a photo"),
        (b"\x89PNG\r\n\x1a\n", "a picture"),
        (b"%PDF-1.7\n", "a PDF"),
        (b"PK\x03\x04\x14\x00", "save the sheet as CSV"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "save the sheet as CSV"),
        (b"\x1f\x8b\x08\x00", "a compressed file"),
        (b"\x00" * 100, "nothing but zeros"),
        (b"\x7fELF\x02\x01\x01\x00" + b"\x90" * 50, "a binary file"),
    ],
)
def test_refused_by_name(head, looks):
    """A photo, a workbook or a PDF is named, so that the right file can be looked for."""
    with pytest.raises(UnreadableError, match=looks):
        refuse_binary(head, file="f")


def test_zeros_far_behind_the_text_are_damage_not_binary():
    """A recorder that lost its supply leaves zeros at the end; what stands before them is still text."""
    head = TEXT.encode() * 100 + bytes(64)
    assert len(TEXT.encode() * 100) > 1024
    refuse_binary(head, file="f")
    assert encoding_of(head) == "utf-8"


@given(st.binary(max_size=3000))
def test_any_bytes(head):
    """Any bytes are named an encoding that Python has; refusal is the project's own or none."""
    assert codecs.lookup(encoding_of(head))
    try:
        refuse_binary(head, file="f")
    except UnreadableError as refusal:
        assert "text file" in str(refusal)  # noqa: PT017


def test_a_mixed_log_is_no_known_kind() -> None:
    """Bytes of a receiver's own protocol, zeros among them, pass where a log is expected; a photo does not."""
    refuse_known(b"\xb5\x62\x01\x07\x00\x00", file="a.nmea")
    with pytest.raises(UnreadableError, match="JPEG"):
        refuse_known(b"\xff\xd8\xff\xe0\x00\x10JFIF", file="a.nmea")


def test_wide_text_is_told() -> None:
    """UTF-16 with and without its mark."""
    assert is_wide("a,b\n".encode("utf-16"))
    assert is_wide("$GPGGA,1\n".encode("utf-16-le"))
    assert not is_wide(b"$GPGGA,1\n")
