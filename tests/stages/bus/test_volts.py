"""The supply as the vehicle reports it."""

from __future__ import annotations

import pytest

from backprobe.stages.bus.volts import VoltTrack


def heard(*samples: tuple[float, float], node: int = 0) -> VoltTrack:
    """A track over (time, volts)."""
    track = VoltTrack()
    for time_s, volts in samples:
        track.take(time_s, volts, node=node)
    return track


def test_extremes_have_their_moment() -> None:
    """The first, the lowest with its time, the highest."""
    track = heard((1.0, 12.4), (2.0, 10.2), (3.0, 14.1))
    assert (track.first_V, track.first_s, track.lowest_V, track.lowest_s, track.highest_V) == (
        12.4,
        1.0,
        10.2,
        2.0,
        14.1,
    )
    assert (track.step_s, track.system_V) == (1.0, 12)


def test_what_no_vehicle_shows_is_counted_and_left_out() -> None:
    """192 V (raw 0x0F00) and 0 V are no supply."""
    track = heard((0.0, 12.4), (1.0, 192.0), (2.0, 0.0))
    assert (track.samples, track.implausible, track.lowest_V) == (1, 2, 12.4)


def test_a_24_V_system_is_told_by_its_level() -> None:
    """No 12 V system stands above 18 V."""
    assert heard((0.0, 24.8)).system_V == 24


def test_the_crank_begins_where_the_supply_had_fallen() -> None:
    """At 9.8 s it had fallen by 2 V, 0.1 s before the speed was reported: the starter pulled already."""
    track = heard((7.8, 12.4), (8.8, 12.3), (9.8, 10.3), (10.8, 11.9))
    seen = track.in_crank(9.9, 10.5, stood_s=9.88)
    assert (seen.start_s, seen.lowest_V, seen.lowest_s, seen.rest_V, seen.samples) == (9.8, 10.3, 9.8, 12.4, 1)
    assert seen.step_s == 1.0


def test_a_load_long_before_the_crank_is_none_of_it() -> None:
    """A fall more than 0.6 s before the speed is a heater's."""
    track = heard((7.8, 12.4), (8.8, 11.0), (9.8, 11.0))
    assert track.in_crank(9.9, 10.5, stood_s=9.88).start_s == 9.9


def test_the_fall_must_be_one_computer_s() -> None:
    """Two computers that see different levels are no fall."""
    track = VoltTrack()
    for i in range(10):
        track.take(i / 2, 12.4 if i % 2 else 11.9, node=i % 2)
    assert track.in_crank(4.6, 5.0, stood_s=4.58).start_s == 4.6


def test_a_crank_between_two_reports_shows_nothing() -> None:
    """None is not a figure."""
    seen = heard((1.0, 12.4), (3.0, 13.9)).in_crank(1.5, 2.2, stood_s=1.4)
    assert (seen.lowest_V, seen.lowest_s, seen.samples, seen.rest_V) == (None, None, 0, 12.4)


def test_memory_does_not_grow() -> None:
    """A million reports keep no more than the last 90 s and some steps."""
    track = VoltTrack()
    for i in range(200_000):
        track.take(i / 100, 12.0 + i % 3 / 10)
    assert len(track.recent) <= 9_001
    assert track.step_s == pytest.approx(0.01)
