"""What to change, reckoned: each figure found does reach the wanted days, and not by much more."""

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.samples.parked import UNIT, parked

from backprobe.stages.parked.changes import Change, changes_for, if_full
from backprobe.stages.parked.parked import parked_answer


def answered(**figures):
    """The answer on the usual vehicle."""
    return parked_answer(parked(**figures))


def likely_of(answer):
    """The likely end."""
    return answer.unsure.rests()[1]


@given(st.floats(5, 200))
def test_the_battery_found_reaches_the_days(wanted):
    """And one that is 1 Ah smaller does not."""
    answer = answered(wanted_days=wanted)
    rest, found_Ah = likely_of(answer), answer.changes[1].for_likely
    assume(found_Ah is not None and found_Ah > 110)
    assert replace(rest, capacity_Ah=found_Ah).days >= wanted * (1 - 1e-9)
    assert replace(rest, capacity_Ah=found_Ah - 1.0).days < wanted


@given(st.floats(5, 400))
def test_the_charger_found_reaches_the_days(wanted):
    """And one that gives 1 mA less does not."""
    answer = answered(wanted_days=wanted)
    rest, found_mA = likely_of(answer), answer.changes[2].for_likely
    assume(found_mA is not None and 0 < found_mA < rest.vehicle_mA)
    assert replace(rest, vehicle_mA=rest.vehicle_mA - found_mA).days >= wanted * (1 - 1e-9)
    assert replace(rest, vehicle_mA=rest.vehicle_mA - found_mA + 1.0).days < wanted


@given(st.floats(20, 120))
def test_the_interval_found_reaches_the_days(wanted):
    """A unit that reports every minute; one minute sooner is too often."""
    often = replace(UNIT, reporting=replace(UNIT.reporting, stopped_interval_s=60))
    answer = answered(wanted_days=wanted, unit=often)
    rest, found_min = likely_of(answer), answer.changes[0].for_likely
    assume(found_min is not None and found_min > 1)
    at, sooner = (replace(answer.plan, interval_s=m * 60.0).mean_mA.likely for m in (found_min, found_min - 1))
    assert replace(rest, unit_mA=at).days >= wanted * (1 - 1e-9)
    assert replace(rest, unit_mA=sooner).days < wanted


def test_where_nothing_need_change_it_stays():
    """Two days are had at the worst."""
    every, battery, charger = answered(wanted_days=2.0).changes
    assert (every.for_worst, battery.for_worst, charger.for_worst) == (60.0, 110.0, 0.0)


def test_what_can_never_be_reached_is_none():
    """A battery that is too empty for a start at the coldest: only charging helps, which is another matter."""
    changes = answered(coldest_C=-40.0).changes
    assert [change.for_likely for change in changes] == [None, None, None]


def test_a_full_battery_lasts_longer():
    """The same, charged first."""
    answer = answered()
    assert if_full(answer.unsure).low > answer.days.low
    assert changes_for(30.0, answer.unsure, plan=answer.plan) == answer.changes


@pytest.mark.parametrize(
    ("for_likely", "for_worst", "said"),
    [
        (30, 90, "report every 90 min instead of 10"),
        (30, None, "report every 30 min instead of 10 (for the likely only)"),
        (10, None, "report every …: alone never enough for the worst"),
    ],
)
def test_a_change_in_words(for_likely, for_worst, said):
    """What to set."""
    change = Change(what="report every", unit="min", at_present=10, for_likely=for_likely, for_worst=for_worst)
    assert change.in_words() == said
