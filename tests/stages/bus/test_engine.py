"""Each turn of the starter, from the engine speed alone."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.bus_frames import rpm_at

from backprobe.stages.bus.engine import ABSENT_S, EngineTrack

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine


def heard(samples: list[tuple[float, float]]) -> EngineTrack:
    """The track over whole samples."""
    track = EngineTrack()
    for time_s, rpm in samples:
        track.take(time_s, rpm)
    track.finish()
    return track


def drive(*, until_s: float, step_s: float = 0.02, **engine: float) -> list[tuple[float, float]]:
    """The invented engine sampled evenly."""
    times = [round(i * step_s, 6) for i in range(round(until_s / step_s))]
    return [(time_s, rpm_at(time_s, **engine)) for time_s in times]  # type: ignore[arg-type]


def test_a_start_has_its_begin_and_end() -> None:
    """Cranked from 2.0 s at 180 rpm; from 2.8 s it rises by 1425 rpm a second and passes 1.5 × 180 rpm at 2.863 s."""
    track = heard(drive(until_s=10, crank_s=2.0, crank_length_s=0.8, stop_s=99))
    [attempt] = track.attempts
    assert attempt.start_s == 2.0
    assert attempt.end_s == pytest.approx(2.863, abs=0.02)
    assert attempt.started is True
    assert attempt.starter_rpm == 180.0
    assert (track.highest_rpm, track.stops_s) == (750.0, [])


@BUSY
@given(st.floats(1.0, 5.0), st.floats(0.3, 8.0), st.sampled_from([0.01, 0.02, 0.05, 0.1]))
def test_any_crank_is_found_to_two_samples(crank_s: float, length_s: float, step_s: float) -> None:
    """Whenever it begins, however long it is: begin and end lie within two samples, and 0.1 s of run-up."""
    samples = drive(until_s=20, step_s=step_s, crank_s=crank_s, crank_length_s=length_s, stop_s=99)
    [attempt] = heard(samples).attempts
    assert attempt.start_s == pytest.approx(crank_s, abs=2 * step_s)
    assert attempt.end_s == pytest.approx(crank_s + length_s, abs=0.1 + 2 * step_s)


def test_a_start_that_fails_and_one_that_does_not() -> None:
    """Two attempts: the first ends where the engine stands again."""
    first = [(t / 50, 200.0 if 50 <= t < 100 else 0.0) for t in range(200)]
    second = [(4 + t, rpm) for t, rpm in drive(until_s=5, crank_s=1.0, crank_length_s=0.5, stop_s=99)]
    track = heard([*first, *second])
    assert [(a.start_s, a.started) for a in track.attempts] == [(1.0, False), (5.0, True)]
    assert track.attempts[0].end_s == 2.0


def test_an_engine_that_dies_at_once_was_not_started() -> None:
    """It fires and stands again within a second."""
    samples = [(t / 50, 0.0 if t < 50 or t >= 90 else 200.0 if t < 75 else 600.0) for t in range(200)]
    [attempt] = heard(samples).attempts
    assert attempt.started is False


def test_what_the_log_breaks_off_in_is_neither() -> None:
    """The log ends while the starter turns: whether the engine started is not known."""
    [attempt] = heard(drive(until_s=2.5, crank_s=2.0, crank_length_s=5.0, stop_s=99)).attempts
    assert attempt.started is None


def test_an_engine_that_runs_down_jerks_without_being_cranked() -> None:
    """0, 60, 0 rpm within half a second of standing is the flywheel, as a diesel does it."""
    samples = [(t / 50, 700.0) for t in range(100)]
    samples += [
        (2.0 + t / 50, rpm) for t, rpm in enumerate([150.0, 150.0, 0.0, 0.0, 60.0, 60.0, 48.0, 0.0, *[0.0] * 50])
    ]
    track = heard(samples)
    assert track.attempts == []
    assert track.stops_s == [2.04]
    assert track.ran_at_start


def test_one_sample_between_two_is_no_hindrance() -> None:
    """At two rows a second the crank may fall between two samples: it lies between the last stand and the first run."""
    [attempt] = heard([(0.0, 0.0), (0.5, 0.0), (1.0, 900.0), (1.5, 850.0), (2.0, 800.0), (2.5, 800.0)]).attempts
    assert (attempt.start_s, attempt.end_s, attempt.started) == (0.5, 1.0, True)


def test_an_absence_ends_what_is_known() -> None:
    """After more than two seconds without a speed nothing is carried over: the engine is heard anew."""
    track = heard([(0.0, 0.0), (1.0, 0.0), (1.0 + ABSENT_S + 0.1, 700.0), (4.0, 700.0)])
    assert track.attempts == []
    assert track.appeared_s == [0.0, 3.1]
    assert track.ran_when_heard_s == [3.1]
    assert not track.ran_at_start


def test_another_s_zeros_between_the_engine_s_own_speed_are_no_stops() -> None:
    """Every fifth sample says 0 rpm, as a second sender under the same address does: the engine runs on."""
    track = heard([(i / 50, 0.0 if i % 5 == 0 and i else 700.0) for i in range(500)])
    assert (track.attempts, track.stops_s) == ([], [])


def test_turning_slowly_for_a_minute_is_no_crank() -> None:
    """No starter turns an engine for more than a minute."""
    track = heard([(t / 10, 0.0 if t < 20 else 300.0) for t in range(1000)])
    assert track.attempts == []


@BUSY
@given(st.lists(st.tuples(st.floats(0, 3), st.floats(0, 8000)), max_size=200))
def test_any_speeds_are_borne(steps: list[tuple[float, float]]) -> None:
    """No speeds whatever end in an error, and no attempt ends before it begins."""
    samples, now_s = [], 0.0
    for step_s, rpm in steps:
        now_s += step_s
        samples.append((now_s, rpm))
    assert all(each.start_s <= each.end_s for each in heard(samples).attempts)
