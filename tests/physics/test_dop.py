"""Dilution of precision, held to the plain definition worked by numpy."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from backprobe.physics.dop import dop, planar
from backprobe.physics.geodesy import east_north_up

SKIES = st.lists(st.tuples(st.floats(0, 360), st.floats(0, 90)), min_size=4, max_size=14)


@given(SKIES)
def test_it_is_the_inverse_of_the_normal_matrix(sky: list[tuple[float, float]]) -> None:
    """The square roots of the diagonal of (AᵀA)⁻¹, for any sky from which a position follows."""
    rows = [east_north_up(*each) for each in sky]
    matrix = np.array([(*row, 1.0) for row in rows])
    normal = matrix.T @ matrix
    assume(np.linalg.cond(normal) < 1e7)
    q = np.diag(np.linalg.inv(normal))
    found = dop(rows)
    assert found is not None
    assert found.hdop == pytest.approx(math.sqrt(q[0] + q[1]), rel=1e-6)
    assert found.vdop == pytest.approx(math.sqrt(q[2]), rel=1e-6)
    assert found.pdop == pytest.approx(math.sqrt(q[0] + q[1] + q[2]), rel=1e-6)
    assert found.tdop == pytest.approx(math.sqrt(q[3]), rel=1e-6)
    assert found.gdop == pytest.approx(math.sqrt(q.sum()), rel=1e-6)


@given(SKIES, st.tuples(st.floats(0, 360), st.floats(0, 90)))
def test_one_more_satellite_never_widens_the_error(sky: list[tuple[float, float]], more: tuple[float, float]) -> None:
    """With a satellite added no dilution grows."""
    rows = [east_north_up(*each) for each in sky]
    fewer, all_of_them = planar(rows), planar([*rows, east_north_up(*more)])
    assume(fewer is not None)
    assert fewer is not None
    assert all_of_them is not None
    assert all(b <= a * (1 + 1e-6) for a, b in zip(fewer, all_of_them, strict=True))


@given(SKIES, st.floats(0, 360))
def test_turning_the_whole_sky_changes_nothing(sky: list[tuple[float, float]], turn: float) -> None:
    """HDOP has no preferred direction."""
    one = planar([east_north_up(az, el) for az, el in sky])
    other = planar([east_north_up(az + turn, el) for az, el in sky])
    assume(one is not None and one[0] < 100)
    assert one is not None
    assert other == pytest.approx(one, rel=1e-5)


def test_no_position_follows() -> None:
    """From three satellites, from four in one direction, and from any number on one cone round the zenith."""
    assert dop([east_north_up(az, 40.0) for az in (0, 120, 240)]) is None
    assert dop([east_north_up(10.0, 40.0)] * 4) is None
    assert dop([east_north_up(az, 40.0) for az in range(0, 360, 30)]) is None
