"""SEM almanacs: figures in half turns, weeks modulo 1024, torn lines."""

from __future__ import annotations

import pytest
from tests.samples.navigation import TOE_S, WEEK, constellation, elements, sem

from backprobe.errors import UnreadableError
from backprobe.formats.sem import is_sem, read_sem


def test_every_satellite_is_read() -> None:
    """All satellites; half turns become radians: the inclination is (0.30 + offset) × pi."""
    lines = sem(constellation(31, plain=True))
    orbits = read_sem(lines, file="current.al3", near_week=WEEK)
    assert is_sem(lines[:20])
    assert (len(orbits.ids), orbits.skipped_count) == (31, 0)
    first, told = elements(1, plain=True), orbits.sets[0]
    assert told.toe_s == TOE_S
    assert told.i0_rad == pytest.approx(first.i0_rad, abs=1e-12)
    assert told.omega_dot_rad_s == pytest.approx(-8.0e-9, rel=1e-9)


def test_the_week_is_the_nearest_one() -> None:
    """Week 107 near 2150 is 2155, and that is said."""
    orbits = read_sem(sem([elements(plain=True)]), file="current.al3", near_week=2150)
    assert "taken as week 2155" in orbits.notes[0]


def test_torn_lines_cost_their_own_satellite_alone() -> None:
    """The second satellite has lost a line, the third half of one: both are passed over, the rest is read."""
    lines = sem(constellation(5, plain=True))
    torn = [line for k, line in enumerate(lines) if k != 2 + 9 + 5]
    torn[2 + 2 * 9 - 1 + 5] = torn[2 + 2 * 9 - 1 + 5][:30]
    orbits = read_sem(torn, file="current.al3", near_week=WEEK)
    assert orbits.ids == ("G01", "G04", "G05")
    assert orbits.skipped_count == 1  # reading went on where the next whole satellite stands


@pytest.mark.parametrize("lines", [["31 CURRENT.ALM"], ["31 CURRENT.ALM", "week 7"], ["1 CURRENT.ALM", "107 352800"]])
def test_nothing_to_read_is_refused(lines: list[str]) -> None:
    """A file that ends too soon, or has no week, is refused."""
    with pytest.raises(UnreadableError):
        read_sem(lines, file="current.al3", near_week=WEEK)
