"""What a start takes, and how full the battery must be."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.crank_need import crank_Ah, demand_over_supply, least_charge_to_crank

SUPPLY = [(-29.0, 0.25), (-18.0, 0.40), (0.0, 0.65), (27.0, 1.0)]
DEMAND = [(-29.0, 3.5), (-18.0, 2.1), (0.0, 1.55), (27.0, 1.0)]
TABLES = {"supply": SUPPLY, "demand": DEMAND}


def test_a_crank_takes_little():
    """300 A for 6 s is 1800 As = 0.5 Ah."""
    assert crank_Ah(300.0, seconds=6.0) == pytest.approx(0.5)


def test_cold_asks_more_of_less():
    """At -18 °C 210 % is asked of 40 %: 5.25 times as hard; at 0 °C 155 / 65 = 2.38 times."""
    assert demand_over_supply(-18.0, **TABLES) == pytest.approx(2.1 / 0.4)
    assert demand_over_supply(0.0, **TABLES) == pytest.approx(1.55 / 0.65)


def test_half_full_will_do_at_freezing():
    """A battery that just starts full at -18 °C needs 2.385 / 5.25 = 45 % at 0 °C, and all of it at -18 °C."""
    assert least_charge_to_crank(0.0, full_at_C=-18.0, **TABLES) == pytest.approx((1.55 / 0.65) / (2.1 / 0.4))
    assert least_charge_to_crank(-18.0, full_at_C=-18.0, **TABLES) == pytest.approx(1.0)


def test_beyond_its_coldest_no_charge_is_enough():
    """At -29 °C 3.5 / 0.25 = 14 against 5.25: 2.7 times full."""
    assert least_charge_to_crank(-29.0, full_at_C=-18.0, **TABLES) == pytest.approx(14 / 5.25)


@given(st.floats(-40, 40), st.floats(0, 40))
def test_colder_never_asks_for_less(temperature_C, more_K):
    """The need rises as it gets colder."""
    cold, warm = (least_charge_to_crank(t, full_at_C=-18.0, **TABLES) for t in (temperature_C, temperature_C + more_K))
    assert cold >= warm * (1 - 1e-12)
