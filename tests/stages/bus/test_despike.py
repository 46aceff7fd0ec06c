"""Single samples that no flywheel can follow."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.stages.bus.despike import Despiker


def through(samples: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """What comes out of samples."""
    despiker = Despiker()
    return [ready for sample in samples for ready in despiker.take(*sample)] + list(despiker.rest())


def test_one_leap_is_taken_out() -> None:
    """A zero between two 700s, 20 ms apart."""
    samples = [(i / 50, 0.0 if i == 5 else 700.0) for i in range(10)]
    assert [value for _, value in through(samples)] == [700.0] * 10


def test_an_edge_stays_where_it_is() -> None:
    """From standing to running between two samples: the first that runs is still the first."""
    samples = [(i / 50, 0.0 if i < 5 else 700.0) for i in range(10)]
    assert through(samples) == samples


def test_slow_samples_are_left_alone() -> None:
    """At two a second one sample may be the whole crank."""
    samples = [(0.0, 0.0), (0.5, 245.0), (1.0, 0.0), (1.5, 900.0)]
    assert through(samples) == samples


@settings(deadline=None)
@given(st.lists(st.tuples(st.floats(0, 1), st.floats(0, 8000)), max_size=50))
def test_every_sample_comes_out_once_at_its_time(steps: list[tuple[float, float]]) -> None:
    """None is lost and none is moved; no value is made up."""
    samples, now_s = [], 0.0
    for step_s, value in steps:
        now_s += step_s
        samples.append((now_s, value))
    found = through(samples)
    assert [time_s for time_s, _ in found] == [time_s for time_s, _ in samples]
    assert {value for _, value in found} <= {value for _, value in samples}
