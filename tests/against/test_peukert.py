"""Peukert's law against two worked examples in print, and one printed table that is wrong."""

import pytest

from backprobe.physics.peukert import peukert_hours, peukert_hours_of


def test_a_hundred_ampere_hours_at_five():
    """electrotechnik.net 2010/01: Peukert capacity 100 Ah, k 1.2, 5 A: 14.5 h."""
    assert peukert_hours_of(100, current_A=5, exponent=1.2) == pytest.approx(14.5, abs=0.05)


@pytest.mark.parametrize(("exponent", "hours"), [(1.3, 8.12), (1.4, 7.58)])
def test_twice_the_twenty_hour_current(exponent, hours):
    """100 Ah in 20 h at 10 A, formula of batterystuff.com; batteryguy1.rssing.com says "around 7.5 h" for k 1.4."""
    found = peukert_hours(10, capacity_Ah=100, rated_hours=20, exponent=exponent)
    assert found == pytest.approx(hours, abs=0.005)
    assert peukert_hours(10, capacity_Ah=100, rated_hours=20, exponent=1.4) == pytest.approx(7.5, abs=0.1)


@pytest.mark.parametrize(("current_A", "printed_Ah", "right_Ah"), [(10, 89, 93.3), (50, 65, 79.4), (100, 58, 74.1)])
def test_a_printed_table_that_does_not_follow_the_law(current_A, printed_Ah, right_Ah):
    """utilitiesbunker.com prints 89, 65, 58 Ah for k 1.1; C (I / 5)^(1 - k) gives 93.3, 79.4, 74.1. Not to be used."""
    found = current_A * peukert_hours(current_A, capacity_Ah=100, rated_hours=20, exponent=1.1)
    assert found == pytest.approx(right_Ah, abs=0.05)
    assert abs(found - printed_Ah) > 4
