"""Condition before against condition after."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.walkround import Condition
from backprobe.findings import Stage, Verdict
from backprobe.stages.walkround.condition import (
    EXPLAIN,
    FIND_OUT,
    LOOK,
    LOOK_AGAIN,
    READ_AGAIN,
    condition_after,
    condition_before,
    told,
)

BEFORE = Condition(odometer_km=184220.0, engine_h=7011.5, lamps=("ABS",), codes=("SPN 168 FMI 1",))


def test_a_condition_that_was_written_down_holds_whatever_it_was():
    """A lamp that burned before is nobody's fault here; it protects whoever fits the unit."""
    found = condition_before(BEFORE)
    assert found.verdict is Verdict.HOLDS
    assert found.because == "184,220 km, 7,011.5 h, lamps: ABS, codes: SPN 168 FMI 1"


@pytest.mark.parametrize(
    ("missing", "name"),
    [({"lamps": None}, "warning lamps"), ({"codes": None}, "fault codes"), ({"odometer_km": None}, "odometer")],
)
def test_what_nobody_wrote_down_is_open(missing: dict[str, None], name: str):
    """Before and after alike; engine hours may be left out, many vehicles do not show them."""
    before, after = condition_before(replace(BEFORE, **missing)), condition_after(BEFORE, replace(BEFORE, **missing))
    assert (before.verdict, before.because, before.next) == (Verdict.OPEN, f"not written down: {name}", LOOK)
    assert (after.verdict, after.next) == (Verdict.OPEN, LOOK_AGAIN)
    assert condition_before(replace(BEFORE, engine_h=None)).verdict is Verdict.HOLDS


def test_the_same_after_holds():
    """A few metres and minutes more are as before."""
    found = condition_after(BEFORE, replace(BEFORE, odometer_km=184221.0, engine_h=7012.0))
    assert (found.verdict, found.stage) == (Verdict.HOLDS, Stage.HAND_OVER)
    assert found.because == "184,221 km, 7,012 h, lamps: ABS, codes: SPN 168 FMI 1; as before"


def test_no_after_is_open():
    """It is written when the work is done."""
    found = condition_after(BEFORE, None)
    assert (found.verdict, found.because, found.next) == (Verdict.OPEN, "not written down yet", LOOK_AGAIN)


def test_a_new_lamp_or_code_fails():
    """Whatever is said of it: it is put right first, and looked at again."""
    lamp = condition_after(BEFORE, replace(BEFORE, lamps=("ABS", "airbag"), explained="battery was off"))
    assert (lamp.verdict, lamp.because, lamp.next) == (
        Verdict.FAILS,
        "warning lamp airbag was not there before",
        FIND_OUT,
    )
    code = condition_after(BEFORE, replace(BEFORE, codes=("SPN 168 FMI 1", "SPN 639 FMI 9")))
    assert code.because == "fault code SPN 639 FMI 9 was not there before"


def test_one_that_is_gone_is_open_until_it_is_explained():
    """A code that was cleared may have been somebody's evidence."""
    gone = replace(BEFORE, codes=())
    found = condition_after(BEFORE, gone)
    assert (found.verdict, found.next) == (Verdict.OPEN, EXPLAIN)
    assert found.because == "fault code SPN 168 FMI 1 is gone, and why is not said"
    explained = condition_after(BEFORE, replace(gone, explained="battery terminal tightened"))
    assert explained.verdict is Verdict.HOLDS
    assert explained.because.endswith(
        "no codes; before: 184,220 km, 7,011.5 h, lamps: ABS, codes: SPN 168 FMI 1; battery terminal tightened"
    )


def test_capitals_and_spaces_make_no_other_lamp():
    """'ABS' and 'abs ' are one."""
    assert condition_after(BEFORE, replace(BEFORE, lamps=("abs ",))).verdict is Verdict.HOLDS


def test_figures_that_run_backwards_are_questioned():
    """184,220 km before and 184,202 km after: one of the two was misread; the same for engine hours."""
    found = condition_after(BEFORE, replace(BEFORE, odometer_km=184202.0, engine_h=7011.4))
    assert (found.verdict, found.next) == (Verdict.OPEN, READ_AGAIN)
    assert found.because == (
        "odometer: 184,220 km before, 184,202 km after; engine hours: 7,011.5 h before, 7,011.4 h after"
    )


def test_two_units_are_not_compared():
    """184,220 km and 114,470 mi may be the same place on the road; nobody converts in silence."""
    found = condition_after(BEFORE, replace(BEFORE, odometer_km=None, odometer_mi=114470.0))
    assert (found.verdict, found.because) == (
        Verdict.OPEN,
        "odometer in km and in miles: they cannot be compared",
    )


def test_what_was_not_looked_at_before_is_no_difference():
    """A lamp now, and nobody looked before: the missing look is found before the work, not here."""
    assert condition_after(replace(BEFORE, lamps=None), BEFORE).verdict is Verdict.HOLDS


def test_a_condition_in_words():
    """What nobody knows is not called none."""
    assert told(Condition()) == "lamps not known, codes not known"
    assert told(Condition(odometer_mi=12.5, lamps=(), codes=())) == "12.5 mi, no lamps, no codes"


WORDS = st.lists(st.sampled_from(["ABS", "airbag", "engine", "tyre"]), unique=True).map(tuple)


@given(before=WORDS, after=WORDS, explained=st.sampled_from([None, "cleared"]))
def test_only_the_same_or_less_with_a_reason_holds(
    before: tuple[str, ...], after: tuple[str, ...], explained: str | None
):
    """Over all pairs of sets: a new lamp fails; one gone without a reason is open; nothing else is either."""
    was, now = replace(BEFORE, lamps=before), replace(BEFORE, lamps=after, explained=explained)
    new, gone = set(after) - set(before), set(before) - set(after)
    wanted = Verdict.FAILS if new else Verdict.OPEN if gone and not explained else Verdict.HOLDS
    assert condition_after(was, now).verdict is wanted
