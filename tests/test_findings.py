"""How a value stands to its limit, and how a finding is written down."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge, rounded, worst

LEAST_10_V = Limit("crank", 10.0, "V", Side.AT_LEAST, "", Standing.COMMON_PRACTICE)
MOST_300_MV = Limit("drop", 0.3, "V", Side.AT_MOST, "a table", Standing.PUBLISHED)


@pytest.mark.parametrize(
    ("value", "low", "high", "verdict"),
    [
        (10.6, 10.1, 11.1, Verdict.HOLDS),
        (10.5, 10.0, 11.0, Verdict.HOLDS),  # the limit itself is allowed
        (10.4, 9.9, 10.9, Verdict.THIN),
        (9.9, 9.4, 10.4, Verdict.FAILS),
        (None, None, None, Verdict.OPEN),
        (10.6, None, None, Verdict.OPEN),
    ],
)
def test_a_least_is_judged_by_the_lowest_value_possible(
    value: float | None, low: float | None, high: float | None, verdict: Verdict
) -> None:
    """At least 10 V: the whole range inside holds, only the shown value is thin, outside fails, nothing is open."""
    assert judge(LEAST_10_V, value, low=low, high=high) is verdict


def test_a_most_is_judged_by_the_highest_value_possible() -> None:
    """At most 0.3 V: 0.28 ± 0.01 holds (0.29), 0.28 ± 0.03 is thin (0.31), 0.31 fails."""
    assert judge(MOST_300_MV, 0.28, low=0.27, high=0.29) is Verdict.HOLDS
    assert judge(MOST_300_MV, 0.28, low=0.25, high=0.31) is Verdict.THIN
    assert judge(MOST_300_MV, 0.31, low=0.30, high=0.32) is Verdict.FAILS


@given(st.floats(0, 30), st.floats(0, 5), st.floats(0, 5), st.floats(0, 5), st.floats(0, 5))
def test_more_doubt_never_makes_a_verdict_better(
    value: float, below: float, above: float, more_below: float, more_above: float
) -> None:
    """Widening the range of values never turns thin into holds, nor anything into or out of fails."""
    order = [Verdict.HOLDS, Verdict.THIN, Verdict.FAILS]
    narrow = judge(LEAST_10_V, value, low=value - below, high=value + above)
    wide = judge(LEAST_10_V, value, low=value - below - more_below, high=value + above + more_above)
    assert order.index(wide) >= order.index(narrow)
    assert (wide is Verdict.FAILS) == (narrow is Verdict.FAILS)


def test_margins_are_inside_positive() -> None:
    """10.35 V against at least 10 V: 0.35; 0.45 V against at most 0.3 V: -0.15."""
    assert round(LEAST_10_V.margin(10.35), 9) == 0.35
    assert round(MOST_300_MV.margin(0.45), 9) == -0.15


def test_a_limit_says_what_it_rests_on() -> None:
    """Basis and standing, or the standing alone where there is no basis."""
    assert LEAST_10_V.warrant == "common practice, no source"
    assert MOST_300_MV.warrant == "a table (published)"


def test_the_worst_of_several_counts() -> None:
    """Fails before open before thin before holds; nothing at all is open."""
    assert worst([Verdict.HOLDS, Verdict.THIN, Verdict.OPEN, Verdict.FAILS]) is Verdict.FAILS
    assert worst([Verdict.HOLDS, Verdict.THIN, Verdict.OPEN]) is Verdict.OPEN
    assert worst([Verdict.HOLDS, Verdict.THIN]) is Verdict.THIN
    assert worst([Verdict.HOLDS]) is Verdict.HOLDS
    assert worst([]) is Verdict.OPEN


def test_rounding_leaves_no_negative_zero() -> None:
    """-0.001 at two digits is 0.0, and nothing stays nothing."""
    assert str(rounded(-0.001, 2)) == "0.0"
    assert rounded(1.006, 2) == 1.01
    assert rounded(None, 2) is None


def test_a_finding_is_written_with_its_declared_digits() -> None:
    """10.349 V against 10 V at two digits: shown 10.35, margin 0.35; the words and the limit go along."""
    finding = Finding(
        id="probe.crank", stage=Stage.PROBE, what="grey in crank", verdict=Verdict.HOLDS, because="it stays up",
        value=10.349, low=10.301, high=10.397, unit="V", limit=LEAST_10_V,
    )  # fmt: skip
    said = finding.as_json()
    assert (said["value"], said["low"], said["high"], said["margin"]) == (10.35, 10.3, 10.4, 0.35)
    assert said["stage"] == "probe"
    assert said["limit"] == {
        "id": "crank",
        "value": 10.0,
        "side": "at least",
        "basis": "",
        "standing": "common practice, no source",
    }
    assert json.loads(json.dumps(said)) == said


def test_a_finding_without_a_value_has_no_margin() -> None:
    """Where nothing was measured, or there is no limit, there is no margin."""
    nothing = Finding(id="a", stage=Stage.JOIN, what="b", verdict=Verdict.OPEN, because="c")
    assert nothing.margin is None
    assert nothing.as_json()["limit"] is None
