"""Directions in words."""

import pytest

from backprobe.stages.mount.reception.sector import Sector
from backprobe.stages.mount.reception.words import degrees, direction


def sector(start: int, end: int, *, below: int = 90) -> Sector:
    """A sector between two azimuths."""
    return Sector(start, end, below, 0.99, 12.0, 5, 2)


@pytest.mark.parametrize(
    ("start", "end", "named"),
    [
        (345, 15, "north"),
        (60, 120, "east"),
        (90, 180, "south-east"),
        (270, 0, "north-west"),
        (0, 240, "all but the north-west"),
    ],
)
def test_compass(start: int, end: int, named: str) -> None:
    """By the middle of the sector; of a very wide one what is left is named."""
    assert direction(sector(start, end), None) == named


@pytest.mark.parametrize(
    ("heading", "named"),
    [(0.0, "right"), (90.0, "front"), (180.0, "left"), (270.0, "rear"), (45.0, "right front"), (360.0, "right")],
)
def test_sides_of_the_cab(heading: float, named: str) -> None:
    """An eastern sector, with the front pointing in several directions."""
    assert direction(sector(60, 120), heading) == named


def test_degrees_with_and_without_a_height() -> None:
    """Azimuths clockwise; the height where it ends below the zenith."""
    assert degrees(sector(330, 30)) == "330° to 30°"
    assert degrees(sector(90, 180, below=30)) == "90° to 180°, up to 30° high"
