"""All limits as one text."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

import pytest

from backprobe.errors import JournalError
from backprobe.findings import Limit, Side, Standing
from backprobe.job.limits_text import limits_text

LEAST = Limit("crank", 9.0, "V", Side.AT_LEAST, "practice", Standing.COMMON_PRACTICE)


class Colour(StrEnum):
    """Two colours."""

    RED = "RD"
    BLUE = "BU"


@dataclass(frozen=True)
class Odd:
    """Something that holds what is no plain value."""

    what: object


def test_every_value_is_a_line():
    """Rows, tables, lists, sets, words and numbers, each with the path to it; sorted, whatever came first."""
    tables = {
        "b.SET": frozenset({Colour.RED, Colour.BLUE}),
        "a.LIMITS": {"crank": {12: LEAST}},
        "b.PAIRS": {("F", 5.0): (1, None, True)},
    }
    assert limits_text(tables).decode().splitlines() == [
        'a.LIMITS.crank.12.basis = "practice"',
        'a.LIMITS.crank.12.id = "crank"',
        'a.LIMITS.crank.12.side = "at least"',
        'a.LIMITS.crank.12.standing = "common practice, no source"',
        'a.LIMITS.crank.12.unit = "V"',
        "a.LIMITS.crank.12.value = 9.0",
        "b.PAIRS.F/5.0.0 = 1",
        "b.PAIRS.F/5.0.1 = None",
        "b.PAIRS.F/5.0.2 = True",
        'b.SET.has = "BU"',
        'b.SET.has = "RD"',
    ]


def test_a_changed_limit_changes_the_text():
    """In its last digit, in its basis, in its side."""
    same = limits_text({"a": {"crank": LEAST}})
    changed = [
        replace(LEAST, value=9.000000000000002),
        replace(LEAST, basis="practise"),
        replace(LEAST, side=Side.AT_MOST),
    ]
    assert all(limits_text({"a": {"crank": limit}}) != same for limit in changed)


def test_a_line_feed_in_a_text_makes_no_second_line():
    """Two values cannot be written as one."""
    assert limits_text({"a": "x\ny = 1"}).count(b"\n") == 1


@pytest.mark.parametrize("odd", [object(), print, b"bytes", Odd(object()), Odd])
def test_what_is_no_plain_value_is_refused(odd: object):
    """A change to it would not show."""
    with pytest.raises(JournalError, match="no plain limit"):
        limits_text({"a": {"b": odd}})
