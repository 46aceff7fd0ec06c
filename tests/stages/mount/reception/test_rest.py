"""The longest rest in a log is found, with and without a speed."""

from random import Random

import pytest

from backprobe.evidence.epoch import EpochFix
from backprobe.evidence.reception import Rest
from backprobe.stages.mount.reception.rest import RestFinder

M_PER_DEG = 111_195.0  # of a meridian: 6371.0088 km · π / 180


def rested(track: list[tuple[float, float, float | None]]) -> Rest | None:
    """What is found of (time, metres north, speed)."""
    finder = RestFinder()
    for time_s, north_m, speed in track:
        finder.add(time_s, EpochFix(48.0 + north_m / M_PER_DEG, 11.0, speed_mps=speed))
    return finder.result()


def test_parked_between_two_drives() -> None:
    """Two minutes of driving, five of rest, two of driving: the rest is found to within one piece of 30 s."""
    track: list[tuple[float, float, float | None]] = [(t, 10.0 * t, 10.0) for t in range(120)]
    track += [(120 + t, 1200.0, 0.0) for t in range(300)]
    track += [(420 + t, 1200 + 10.0 * t, 10.0) for t in range(120)]
    found = rested(track)
    assert found is not None
    assert found.duration_s == pytest.approx(300, abs=31)


def test_positions_alone_tell_it_too() -> None:
    """Without a speed: 3 m about for five minutes is rest, 10 m/s is not."""
    rng = Random(1)
    at_rest: list[tuple[float, float, float | None]] = [(t, rng.gauss(0, 3), None) for t in range(300)]
    found = rested(at_rest)
    assert found is not None
    assert found.fixes == 300
    assert rested([(t, 10.0 * t, None) for t in range(300)]) is None


def test_less_than_a_minute_is_no_rest() -> None:
    """40 s say nothing of a scatter."""
    assert rested([(t, 0.0, 0.0) for t in range(40)]) is None


def test_a_long_silence_ends_a_rest() -> None:
    """Two rests with ten minutes without a word between them are two."""
    track: list[tuple[float, float, float | None]] = [(t, 0.0, 0.0) for t in range(90)]
    track += [(700 + t, 0.0, 0.0) for t in range(120)]
    found = rested(track)
    assert found is not None
    assert found.duration_s == 119


def test_another_place_is_another_rest() -> None:
    """Slow enough for a rest, but 300 m away: towed, or on a ferry."""
    track: list[tuple[float, float, float | None]] = [(t, 0.0, 0.0) for t in range(120)]
    track += [(120 + t, 300.0, 0.0) for t in range(200)]
    found = rested(track)
    assert found is not None
    assert found.fixes == 200
    assert found.r95_mm == 0


def test_across_the_date_line() -> None:
    """0.00002° on both sides of 180° are 4 m apart, not an earth's girth."""
    finder = RestFinder()
    for t in range(120):
        finder.add(float(t), EpochFix(0.0, 179.99998 if t % 2 else -179.99998))
    found = finder.result()
    assert found is not None
    assert found.r95_mm == pytest.approx(2224, abs=3)  # half of 0.00004° · 111195 m
