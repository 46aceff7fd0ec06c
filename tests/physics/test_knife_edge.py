"""What a wave loses round an edge, held to the integral that the formula stands for."""

from __future__ import annotations

import cmath
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.knife_edge import L1_WAVELENGTH_M, bending_dB, knife_edge_dB


@pytest.mark.parametrize("nu", [0.0, 0.5, 1.0, 2.0, 3.0])
def test_it_is_near_fresnels_integral(nu: float) -> None:
    """The field behind an edge is (1 + i)/2 times the integral of exp(-iπt²/2) from ν on: within 0.3 dB of it."""
    t = np.linspace(nu, 120.0, 1_200_001)
    fade = np.exp(-(((t - nu) / 40.0) ** 2))  # ends the integral softly instead of at a wall
    integral = complex(np.trapezoid(np.exp(-0.5j * math.pi * t**2) * fade, t))
    assert knife_edge_dB(nu) == pytest.approx(-20 * math.log10(abs((1 + 1j) / 2 * integral)), abs=0.3)
    assert cmath.isfinite(integral)


@given(st.floats(0, 1.5), st.floats(0, 1.5), st.floats(0.05, 3.0))
def test_more_bending_costs_more(one: float, other: float, edge_m: float) -> None:
    """Further round the edge, and round a farther edge, more is lost."""
    less, more = sorted((one, other))
    assert bending_dB(less, edge_m=edge_m) <= bending_dB(more, edge_m=edge_m)
    assert bending_dB(more, edge_m=edge_m) <= bending_dB(more, edge_m=edge_m * 1.5)


def test_the_wavelength() -> None:
    """299792458 m/s ÷ 1575.42 MHz = 0.1903 m."""
    assert pytest.approx(0.190294, abs=1e-6) == L1_WAVELENGTH_M
