"""The starting profile is drawn as the standard draws it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.starting_profile import StartingProfile, lowest_V, voltage_at

PROFILE = StartingProfile(
    rest_V=12.0, trough_V=4.5, plateau_V=6.5, fall_s=0.005, trough_s=0.015, climb_s=0.05, plateau_s=10.0, rise_s=0.1
)


@pytest.mark.parametrize(
    ("time_s", "volts"),
    [
        (-1.0, 12.0),
        (0.0, 12.0),
        (0.0025, 8.25),  # half of the fall: (12 + 4.5) / 2
        (0.005, 4.5),
        (0.0199, 4.5),
        (0.045, 5.5),  # half of the climb: (4.5 + 6.5) / 2
        (0.07, 6.5),  # the ripple starts at its lowest point
        (0.195, 7.5),  # a quarter of 0.5 s later its middle, 6.5 + 1
        (0.32, 8.5),  # half a period later its top, 6.5 + 2
        (10.12, 9.25),  # half of the rise, 20 whole periods after 0.07 s: (6.5 + 12) / 2
        (10.17, 12.0),
        (60.0, 12.0),
    ],
)
def test_each_part_of_the_shape(time_s, volts):
    """Rest, fall, trough, climb, ripple and rise stand where their times put them."""
    assert voltage_at(PROFILE, time_s) == pytest.approx(volts, abs=1e-9)


def test_the_rise_starts_where_the_ripple_stands():
    """A plateau that ends within a period leaves no jump: 2.25 periods after the climb the ripple is at 7.5 V."""
    profile = StartingProfile(
        rest_V=12.0,
        trough_V=4.5,
        plateau_V=6.5,
        fall_s=0.005,
        trough_s=0.015,
        climb_s=0.05,
        plateau_s=1.125,
        rise_s=0.1,
    )
    assert profile.crank_s == pytest.approx(1.195)  # 0.005 + 0.015 + 0.05 + 1.125
    assert voltage_at(profile, 1.195) == pytest.approx(7.5)
    assert voltage_at(profile, 1.245) == pytest.approx(9.75)  # half way from 7.5 to 12


@given(st.floats(-2.0, 15.0))
def test_the_trough_is_the_lowest_and_rest_the_highest(time_s):
    """No moment lies below the lowest voltage or above rest."""
    assert lowest_V(PROFILE) == 4.5
    assert 4.5 <= voltage_at(PROFILE, time_s) <= 12.0


@given(st.floats(-1.0, 12.0), st.floats(0.00001, 0.0005))
def test_there_are_no_jumps(time_s, step_s):
    """The steepest part is the fall, 7.5 V in 5 ms: 1500 V/s."""
    assert abs(voltage_at(PROFILE, time_s + step_s) - voltage_at(PROFILE, time_s)) <= 1500 * step_s + 1e-9
