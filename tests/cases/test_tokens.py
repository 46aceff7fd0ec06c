"""Times, ids and secrets."""

from __future__ import annotations

import re

from backprobe.cases.tokens import CODE_LENGTH, CODE_LETTERS, code, fresh_id, hashed, now, secret


def test_times_sort_as_text() -> None:
    """A minute later is later also as text."""
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z", now())
    assert now() < now(60)
    assert now(-60) < now()


def test_nothing_comes_twice() -> None:
    """1000 of each are 1000 different ones; ids sort by the time they were made."""
    for make in (fresh_id, secret, code):
        assert len({make() for _ in range(1000)}) == 1000
    assert fresh_id()[:8] <= fresh_id()[:8]


def test_codes_can_be_typed() -> None:
    """20 of 32 letters: 100 bits. Neither 0 nor O, neither 1 nor I."""
    assert len(CODE_LETTERS) == 32
    assert set(code()) <= set(CODE_LETTERS)
    assert not set("01OI") & set(CODE_LETTERS)
    assert len(code()) == CODE_LENGTH


def test_hashes_are_one_way_and_steady() -> None:
    """The same text has the same hash, also where it is half a character."""
    assert hashed("a") == hashed("a") != hashed("b")
    assert len(hashed("\ud800")) == 64
