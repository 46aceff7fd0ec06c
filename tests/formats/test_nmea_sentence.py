"""Sentences are found anywhere in a line and believed by their checksum alone."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.nmea import sentence

from backprobe.formats.nmea_sentence import Sentence, checksum, sentences_in

GOOD = "$GPGSA,M,3,14,16,26,27,29,31,,,,,,,2.7,1.5,2.3*34"


def kinds(line: str) -> list[str]:
    """The kinds of the sentences in a line, and its faults."""
    return [item.kind if isinstance(item, Sentence) else item.value for item in sentences_in(line)]


def test_a_sentence_comes_apart() -> None:
    """Talker, kind and fields."""
    assert sentences_in("$GPVTG,147.44,T,164.31,M,0.26,N,0.49,K,D*2C") == [
        Sentence("GP", "VTG", ["147.44", "T", "164.31", "M", "0.26", "N", "0.49", "K", "D"])
    ]


def test_a_makers_own_sentence_is_good() -> None:
    """Its checksum counts as any other; the talker is P."""
    assert sentences_in("$PGLOR,1,FIX,1.0,1.0*20") == [Sentence("P", "GLOR", ["1", "FIX", "1.0", "1.0"])]


@pytest.mark.parametrize(
    "line",
    [
        f"#{GOOD}",
        f"# {GOOD} of a comment",
        f"12:00:01.123 {GOOD}",
        f"\x02\xffjunk{GOOD}\r",
        GOOD.replace("*34", "*34 ,1"),
    ],
)
def test_what_stands_round_it_does_no_harm(line: str) -> None:
    """Comments, stamps of a logger, bytes of another protocol, a tail."""
    assert kinds(line) == ["GSA"]


@pytest.mark.parametrize(
    ("line", "found"),
    [
        (GOOD.replace("2.7", "2.8"), ["bad_checksum"]),
        (GOOD[:20], ["cut_off"]),
        (GOOD[:-1], ["cut_off"]),
        (GOOD[:20] + GOOD, ["bad_checksum", "GSA"]),
        (GOOD + GOOD, ["GSA", "GSA"]),
        (GOOD[:20] + GOOD[25:], ["bad_checksum"]),
        ("$GPRM3,16,00,094,*75", ["not_a_sentence"]),
        ("0,0$GVGNSVER,4,0,0", ["not_a_sentence"]),
        ("97,N,01324.65530,E,1,12,0.84*6E", ["not_a_sentence"]),
        ("$", ["not_a_sentence"]),
        ("# a comment", []),
        ("   ", []),
    ],
)
def test_faults_are_told_apart(line: str, found: list[str]) -> None:
    """Changed, cut off, run into another, and what never was a sentence; the good one behind a torn one is kept."""
    assert kinds(line) == found


def test_the_check_is_an_exclusive_or() -> None:
    """'AB': 0x41 xor 0x42 is 0x03; hexadecimal digits may be small."""
    assert checksum("AB") == 0x03
    assert kinds(GOOD.replace("*34", "*34").lower().replace("$gpgsa,m", "$GPGSA,M")) == ["GSA"]


@given(st.text(st.characters(codec="latin-1", exclude_characters="$*\n\r"), max_size=60), st.integers(0, 59))
def test_one_changed_letter_is_always_noticed(body: str, at: int) -> None:
    """An exclusive or sees any change of a single letter."""
    whole = sentence(f"GPXXX,{body}")
    index = 7 + at % max(len(body), 1)
    if body:
        changed = whole[:index] + chr(ord(whole[index]) ^ 1) + whole[index + 1 :]
        assert "XXX" not in kinds(changed)
    assert kinds(whole) == ["XXX"]
