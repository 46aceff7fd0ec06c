"""Few buckets however long the log is."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from backprobe.stages.bus.envelope import MOST_POINTS, EnvelopeTrack

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine


def test_no_more_points_than_a_picture_needs() -> None:
    """A hundred thousand values, one of them low: it is still the lowest, near its place."""
    track = EnvelopeTrack()
    for i in range(100_000):
        track.take(i / 50, 5.0 if i == 77_777 else 12.0)
    assert len(track.points) <= MOST_POINTS
    low = min(track.points, key=lambda point: point[1])
    assert low[1] == 5.0
    assert abs(low[0] - 77_777 / 50) <= track.step_s


@BUSY
@given(st.lists(st.tuples(st.floats(0, 100), st.floats(-10, 40)), min_size=1, max_size=300))
def test_extremes_are_never_lost(steps: list[tuple[float, float]]) -> None:
    """Whatever comes when: the extremes of all are those of the buckets, whose times rise."""
    track, now_s = EnvelopeTrack(), 0.0
    for step_s, value in steps:
        now_s += step_s
        track.take(now_s, value)
    values = [value for _, value in steps]
    assert min(point[1] for point in track.points) == min(values)
    assert max(point[2] for point in track.points) == max(values)
    assert [point[0] for point in track.points] == sorted(point[0] for point in track.points)
