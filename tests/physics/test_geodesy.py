"""Places on the ellipsoid and directions from there."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.geodesy import A_M, FLATTENING, az_el_deg, east_north_up, ecef_m, local_axes


def test_poles_and_equator() -> None:
    """The pole lies a × (1 - 1/298.257223563) = 6356752.314 m from the centre, the equator a."""
    assert ecef_m(90.0, 0.0)[2] == pytest.approx(A_M * (1 - FLATTENING), abs=1e-6)
    assert ecef_m(-90.0, 0.0)[2] == pytest.approx(-6_356_752.314, abs=1e-3)
    assert ecef_m(0.0, 180.0) == pytest.approx((-A_M, 0.0, 0.0), abs=1e-6)


@given(st.floats(-90, 90), st.floats(-180, 180))
def test_the_axes_are_a_right_angled_frame(lat: float, lon: float) -> None:
    """Each of length 1, each at right angles to the others."""
    axes = local_axes(lat, lon)
    for i, one in enumerate(axes):
        for j, other in enumerate(axes):
            assert math.fsum(a * b for a, b in zip(one, other, strict=True)) == pytest.approx(float(i == j), abs=1e-12)


@given(st.floats(0, 359.99), st.floats(-89.9, 89.9))
def test_angles_come_back(az: float, el: float) -> None:
    """To a unit vector and back."""
    back_az, back_el = az_el_deg(east_north_up(az, el))
    assert (back_az - az + 180) % 360 - 180 == pytest.approx(0.0, abs=1e-6)
    assert back_el == pytest.approx(el, abs=1e-6)
