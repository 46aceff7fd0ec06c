"""A day of satellites, interpolated between worked moments, against working every moment."""

from __future__ import annotations

import math

import pytest
from tests.samples.navigation import START_S, constellation

from backprobe.physics.orbit import Observer
from backprobe.physics.tracks import sky_by_step

SETS = {each.id: (each,) for each in constellation(31)}


@pytest.mark.parametrize("place", [(60.2, 24.9), (-33.1, 151.2), (0.0, 0.0), (90.0, 0.0)])
def test_interpolated_is_as_worked(place: tuple[float, float]) -> None:
    """At every 7th minute of a day no satellite is more than 0.0001° off, and the same ones stand above 5°."""
    observer, low = Observer(*place), math.sin(math.radians(5.0))
    sky = sky_by_step(SETS, observer, start_s=START_S, steps=1440, least_up=low)
    worst = 0.0
    for minute in range(0, 1440, 7):
        worked = {
            number: observer.direction(each, START_S + 60 * minute) for number, (each,) in enumerate(SETS.values())
        }
        high = {number for number, direction in worked.items() if direction[2] >= low}
        seen = {number: direction for number, *direction in sky[minute]}
        assert {number for number in high ^ set(seen) if abs(worked[number][2] - low) > 1e-6} == set()
        worst = max([worst, *(math.dist(worked[number], direction) for number, direction in seen.items())])
    assert math.degrees(worst) < 0.0001


def test_so_many_moments_as_asked_for() -> None:
    """Any number of moments, any distance between them; those of half a day are the first of a whole one."""
    observer = Observer(50.0, 8.0)
    day = sky_by_step(SETS, observer, start_s=START_S, steps=100)
    assert [len(sky_by_step(SETS, observer, start_s=START_S, steps=n)) for n in (1, 10, 11)] == [1, 10, 11]
    assert sky_by_step(SETS, observer, start_s=START_S, steps=37) == day[:37]
    assert len(sky_by_step(SETS, observer, start_s=START_S, steps=5, step_s=1800.0)) == 5
