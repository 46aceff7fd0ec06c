"""An index of corners as a text file."""

from __future__ import annotations

import base64
import json
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.corner import Corner, CornerIndex, CornerKind
from backprobe.formats.corner_index import read_corner_index, write_corner_index

INDEX = CornerIndex(
    corners=(
        Corner(-33.1, 151.2, ("Main Street", "Mill Lane")),
        Corner(0.0, -179.99999, ("Ç–Ω", "Mill Lane"), CornerKind.ROUNDABOUT),
        Corner(60.1, 24.9, ("A", "B", "C"), CornerKind.NAME_CHANGE),
    ),
    attribution="© somebody, some licence",
    source="some.osm.pbf",
    as_of="2026-03-01T00:00:00Z",
    language="sv",
)
TEXT = write_corner_index(INDEX)


def refusal(text):
    """What is said of a text."""
    with pytest.raises(UnreadableError) as refused:
        read_corner_index(text, file="yard.corners")
    return refused.value.message


def with_head(**changes):
    """The index with some of its second line changed."""
    title, head, *rest = TEXT.split("\n")
    return "\n".join([title, json.dumps({**json.loads(head), **changes}), *rest])


def test_what_is_written_is_read():
    """Corners, attribution, source, moment and language; also after a mail program changed the line ends."""
    assert read_corner_index(TEXT, file="f") == INDEX
    assert read_corner_index("\ufeff" + TEXT, file="f") == INDEX
    assert read_corner_index(TEXT.replace("\n", "\r\n"), file="f") == INDEX


def test_an_empty_index_is_one():
    """An area without corners."""
    empty = CornerIndex(corners=(), attribution="x", source="y")
    assert read_corner_index(write_corner_index(empty), file="f") == empty


def test_it_is_plain_text_with_the_attribution_in_it():
    """Lines of at most 100 letters behind the second one, which says whose the names are."""
    lines = TEXT.split("\n")
    assert lines[0] == "backprobe corners 1"
    assert "© somebody, some licence" in lines[1]
    assert all(len(line) <= 100 and line.isascii() for line in lines[2:])


def test_another_version_is_refused():
    """With what to do about it."""
    assert "build it again" in refusal(TEXT.replace("corners 1", "corners 2", 1))


@pytest.mark.parametrize("text", ["", "wire,key,volts\n", "backprobe corners\n", "{}", "backprobe corners one\n"])
def test_what_is_no_index_is_refused(text):
    """Nothing, a table, a title without a version."""
    assert "an index of corners" in refusal(text)


@pytest.mark.parametrize(
    "text",
    [
        with_head(attribution=None),
        with_head(attribution=""),
        with_head(source=3),
        with_head(corners="three"),
        with_head(corners=True),
        with_head(attribution="x" * 301),
        TEXT.split("\n")[0] + "\n[1]\n",
        TEXT.split("\n")[0] + "\n" + "[" * 100_000,
        TEXT.split("\n")[0],
    ],
)
def test_a_second_line_that_is_wrong_is_refused(text):
    """The attribution must be there, and the count."""
    assert "line 2" in refusal(text)


def test_a_wrong_count_is_refused():
    """Three corners, said to be four."""
    assert "3 corners" in refusal(with_head(corners=4))


def test_cut_off_at_any_length_is_refused():
    """Nothing short of the whole is taken."""
    whole = TEXT.rstrip("\n")
    for length in range(len(whole)):
        assert refusal(whole[:length])


@given(st.integers(0, len(TEXT.split("\n")[2]) - 1), st.sampled_from("ABCxyz019+/=!é"))
def test_a_changed_letter_is_noticed(at, letter):
    """In the packed part: refused, or (bits that base64 leaves unused) the same index."""
    title, head, body, *rest = TEXT.split("\n")
    text = "\n".join([title, head, body[:at] + letter + body[at + 1 :], *rest])
    try:
        found = read_corner_index(text, file="f")
    except UnreadableError as refused:
        found, said = None, refused.message
    assert found == INDEX if found else "build it again" in said


def test_a_bomb_is_refused():
    """300 kB that unpack to 300 MB are given up at 40 MB."""
    bomb = base64.b64encode(zlib.compress(bytes(300_000_000), 9)).decode()
    title, head, *_ = TEXT.split("\n")
    assert "cut off or changed" in refusal(f"{title}\n{head}\n{bomb}\n")
