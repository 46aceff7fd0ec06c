"""Days until the vehicle will not start: never more where anything is worse."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.span import Span, exactly
from backprobe.stages.parked.days import MOST_DAYS, Rest, Unsure, bound_by, shares

PLAIN = Rest(capacity_Ah=100, cold=0.8, charge=0.9, need=0.4, vehicle_mA=20, unit_mA=5, loss_per_day=0.001)


def unsure(**figures):
    """Something to reckon with."""
    usual = {
        "capacity_Ah": 110.0,
        "charge": Span(0.8, 0.9, 1.0),
        "aged": Span(0.8, 0.9, 0.96),
        "vehicle_mA": Span(20, 25, 30),
        "unit_mA": Span(4, 5, 6),
        "coldest_C": -5.0,
        "starts_to_C": Span(-29.0, -23.5, -18.0),
    }
    return Unsure(**{**usual, **figures})


def test_by_hand():
    """80 Ah x 0.9 = 72, less 32 needed, at 0.6 Ah a day and 0.001: ln(1 + 0.04 / 0.632) / 0.001 = 61.4 d."""
    assert PLAIN.days == pytest.approx(math.log1p(0.001 * 40 / (0.6 + 0.001 * 32)) / 0.001)
    assert PLAIN.days == pytest.approx(61.4, abs=0.05)
    assert PLAIN.left(PLAIN.days) == pytest.approx(PLAIN.need)
    assert PLAIN.bearable_mA(PLAIN.days) == pytest.approx(25.0)


def test_what_takes_most_is_named():
    """20 mA are 0.48 Ah a day, 5 mA are 0.12, the battery's own loss 0.072: together 0.672."""
    assert shares(PLAIN) == pytest.approx(
        {"vehicle_drain": 0.48 / 0.672, "unit": 0.12 / 0.672, "self_discharge": 0.072 / 0.672}
    )
    assert bound_by(PLAIN) == "vehicle_drain"
    assert bound_by(replace(PLAIN, unit_mA=30)) == "unit"
    assert bound_by(replace(PLAIN, unit_mA=0, vehicle_mA=0)) == "self_discharge"
    assert bound_by(replace(PLAIN, charge=0.3)) == "crank_at_coldest"


def test_it_is_the_crank_that_ends_it_not_the_empty_battery():
    """Below the need there are no days, however much is left."""
    assert replace(PLAIN, need=0.9).days == 0.0
    assert replace(PLAIN, need=1.4).days == 0.0


def test_nothing_is_promised_beyond_ten_years():
    """A battery that hardly loses anything."""
    assert replace(PLAIN, vehicle_mA=0, unit_mA=0, loss_per_day=1e-9).days == MOST_DAYS


def test_at_minus_18_a_battery_sized_for_that_must_be_full():
    """The tables' own figures: 2.10 / 0.40 at -18 °C over the same is 1; at 27 °C 1 / 5.25 = 0.19."""
    assert unsure(coldest_C=-18.0, starts_to_C=exactly(-18.0)).need.likely == pytest.approx(1.0)
    assert unsure(coldest_C=27.0, starts_to_C=exactly(-18.0)).need.likely == pytest.approx(1 / 5.25)


PARTS = st.lists(st.floats(0.05, 1.0), min_size=3, max_size=3).map(lambda found: Span(*sorted(found)))
CURRENTS = st.lists(st.floats(0.0, 500.0), min_size=3, max_size=3).map(lambda found: Span(*sorted(found)))
CASES = st.builds(
    unsure,
    capacity_Ah=st.floats(10, 500),
    charge=PARTS,
    aged=PARTS,
    vehicle_mA=CURRENTS,
    unit_mA=CURRENTS,
    coldest_C=st.floats(-50, 60),
)
NEVER_MORE = 1 + 1e-9


def no_more(worse, better):
    """Whether none of the three days is more."""
    pairs = zip((worse.low, worse.likely, worse.high), (better.low, better.likely, better.high), strict=True)
    return all(bad <= good * NEVER_MORE + 1e-9 for bad, good in pairs)


@given(CASES)
def test_the_days_stand_in_order(case):
    """Low, likely, high; none below nothing."""
    days = case.days
    assert 0.0 <= days.low <= days.likely * NEVER_MORE <= days.high * NEVER_MORE**2


@given(CASES, st.floats(1, 5))
def test_more_battery_never_fewer_days(case, times):
    """A larger capacity."""
    assert no_more(case.days, replace(case, capacity_Ah=case.capacity_Ah * times).days)


@given(CASES, st.floats(0, 300), st.floats(0, 300))
def test_more_drain_never_more_days(case, vehicle_mA, unit_mA):
    """Of the vehicle or of the unit."""
    spans = (case.vehicle_mA, vehicle_mA), (case.unit_mA, unit_mA)
    vehicle, unit = (Span(span.low + more, span.likely + more, span.high + more) for span, more in spans)
    assert no_more(replace(case, vehicle_mA=vehicle, unit_mA=unit).days, case.days)


@given(CASES, st.floats(0, 60))
def test_colder_never_more_days(case, kelvin):
    """The coldest in which it must start."""
    assert no_more(replace(case, coldest_C=case.coldest_C - kelvin).days, case.days)


@given(CASES, st.floats(0.1, 1))
def test_less_charge_or_older_never_more_days(case, part):
    """Both scale what is in it."""
    assert no_more(replace(case, charge=case.charge.times(part)).days, case.days)
    assert no_more(replace(case, aged=case.aged.times(part)).days, case.days)
