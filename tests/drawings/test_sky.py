"""The dome of a sky plot: where directions stand on it."""

import math

import pytest

from backprobe.drawings.sky import Dome, piece, width_deg

DOME = Dome(100.0, 100.0, 90.0)


def test_north_is_up_and_east_is_right() -> None:
    """Azimuths run clockwise from the top; straight up is the centre, the horizon the rim."""
    assert DOME.at(0, 0) == (100.0, 10.0)
    assert DOME.at(90, 0) == (190.0, 100.0)
    assert DOME.at(180, 45) == (100.0, 145.0)  # half way: 90 × 45 / 90
    assert DOME.at(270, 90) == (100.0, 100.0)


def test_the_front_is_up_where_the_heading_is_known() -> None:
    """With the front at 90° east is up and south is right."""
    dome = Dome(100.0, 100.0, 90.0, up_deg=90.0)
    assert dome.at(90, 0) == (100.0, 10.0)
    assert dome.at(180, 0) == (190.0, 100.0)


def test_below_the_horizon_is_on_the_rim() -> None:
    """A satellite that is just setting still stands on the disc."""
    assert DOME.at(90, -3) == DOME.at(90, 0)


@pytest.mark.parametrize(("start", "end", "wide"), [(10, 40, 30), (350, 20, 30), (0, 360, 360), (90, 90, 360)])
def test_sectors_run_clockwise_through_north(start: float, end: float, wide: float) -> None:
    """From 350° to 20° it is 30°; from anywhere to itself it is the whole circle."""
    assert width_deg(start, end) == wide


def test_a_piece_has_the_area_of_its_sector() -> None:
    """A quarter of the disc down to the horizon: π · 90² / 4, less what straight steps of 3° cut off (0.05 %)."""
    points = piece(DOME, (315, 45), elevations=(0, 90))
    around = zip(points, [*points[1:], points[0]], strict=True)
    area = abs(math.fsum(ax * by - bx * ay for (ax, ay), (bx, by) in around)) / 2
    assert area == pytest.approx(math.pi * 90**2 / 4, rel=1e-3)
