"""Currents of a parked vehicle and the days they leave."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.drain import bearable_mA, charge_after_Ah, days_until, mean_mA


def test_the_mean_of_sleep_and_reports():
    """3.5 mA for 3570 s and 180 mA for 30 s: (12495 + 5400) / 3600 = 4.971 mA."""
    assert mean_mA([(3.5, 3570), (180, 30)]) == pytest.approx(17895 / 3600)
    assert mean_mA([]) == 0.0


def test_days_of_a_plain_drain():
    """40 Ah at 50 mA: 40 / 1.2 = 33.3 days."""
    assert days_until(80, needed_Ah=40, drain_mA=50, loss_per_day=0.0) == pytest.approx(40 / 1.2)


def test_the_batterys_own_loss_alone():
    """From 80 to 40 Ah at 1 % a day of what is left: ln 2 / 0.01 = 69.3 days."""
    assert days_until(80, needed_Ah=40, drain_mA=0.0, loss_per_day=0.01) == pytest.approx(math.log(2) / 0.01)


def test_both_against_a_day_by_day_reckoning():
    """Taking 1.2 Ah and 0.2 % of the rest each thousandth of a day from 80 Ah gets to 40 Ah in the same time."""
    charge, days, step = 80.0, 0.0, 0.001
    while charge > 40.0:
        charge -= (1.2 + 0.002 * charge) * step
        days += step
    assert days_until(80, needed_Ah=40, drain_mA=50, loss_per_day=0.002) == pytest.approx(days, abs=0.01)


def test_nothing_drains_for_ever_and_nothing_to_spare_is_no_day():
    """Without drain and loss it lasts for ever; at or below what is needed there is no day left."""
    assert days_until(80, needed_Ah=40, drain_mA=0.0, loss_per_day=0.0) == math.inf
    assert days_until(80, needed_Ah=0, drain_mA=0.0, loss_per_day=0.01) == math.inf
    assert days_until(40, needed_Ah=40, drain_mA=50, loss_per_day=0.01) == 0.0


@given(st.floats(0, 300), st.floats(0, 100), st.floats(0, 500), st.floats(0, 0.02), st.floats(0, 100))
def test_more_battery_is_never_fewer_days(charge_Ah, needed_Ah, drain_mA, loss, more):
    """And more drain or a higher need never more."""
    days = days_until(charge_Ah, needed_Ah=needed_Ah, drain_mA=drain_mA, loss_per_day=loss)
    near = 1 + 1e-9
    assert days_until(charge_Ah + more, needed_Ah=needed_Ah, drain_mA=drain_mA, loss_per_day=loss) * near >= days
    assert days_until(charge_Ah, needed_Ah=needed_Ah, drain_mA=drain_mA + more, loss_per_day=loss) <= days * near
    assert days_until(charge_Ah, needed_Ah=needed_Ah + more, drain_mA=drain_mA, loss_per_day=loss) <= days * near


@given(st.floats(1, 200), st.floats(0.01, 1), st.floats(0, 500), st.floats(1e-5, 0.02))
def test_what_is_left_when_the_days_are_over_is_what_was_needed(charge_Ah, part, drain_mA, loss):
    """The curve meets the need where `days_until` says; and the drain found for those days is the drain it was."""
    needed_Ah = charge_Ah * part * 0.99
    days = days_until(charge_Ah, needed_Ah=needed_Ah, drain_mA=drain_mA, loss_per_day=loss)
    left = charge_after_Ah(charge_Ah, days=days, drain_mA=drain_mA, loss_per_day=loss)
    assert left == pytest.approx(needed_Ah, rel=1e-6)
    bearable = bearable_mA(charge_Ah, needed_Ah=needed_Ah, days=days, loss_per_day=loss)
    assert bearable == pytest.approx(drain_mA, rel=1e-5, abs=1e-5 * max(charge_Ah, 1))


def test_without_own_loss_the_charge_falls_straight():
    """50 mA for 10 d are 12 Ah; never below nothing."""
    assert charge_after_Ah(40, days=10, drain_mA=50, loss_per_day=0.0) == pytest.approx(28)
    assert charge_after_Ah(4, days=10, drain_mA=50, loss_per_day=0.0) == 0.0
