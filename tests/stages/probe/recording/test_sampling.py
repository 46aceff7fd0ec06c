"""Whether the sampling can have missed the trough is told by the channel's own step."""

import random
from array import array

import pytest
from tests.samples.waveforms import Turn, Vehicle

from backprobe.stages.probe.recording.sampling import basis, held_s, limit_s, sampling, shortest_trough_s
from backprobe.stages.probe.recording.trace import Line


def crank_line(rate_Hz, *, held=1, digits=3):
    """A battery in a crank at 5 s, each value repeated `held` times."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0),))
    noise = random.Random(5)
    times = [4.0 + row / rate_Hz for row in range(int(3.0 * rate_Hz))]
    fresh = [round(vehicle.battery_at(t) + noise.gauss(0, 0.01), digits) for t in times[::held]]
    return Line(array("d", times), array("d", [fresh[i // held] for i in range(len(times))]))


def test_the_limit_follows_from_the_profile():
    """Three samples inside 15 ms (12 V) or 50 ms (24 V): 5 ms and 16.7 ms."""
    assert (shortest_trough_s(12), shortest_trough_s(24)) == (0.015, 0.050)
    assert limit_s(12) == pytest.approx(0.005)
    assert limit_s(24) == pytest.approx(0.016667)
    assert "15 ms at 12 V" in basis(12)
    assert "secondary document" in basis(12)


@pytest.mark.parametrize(
    ("rate_Hz", "system_V", "fast", "slow"),
    [
        (10_000, 12, True, False),
        (200, 12, True, False),
        (150, 12, False, False),
        (100, 24, True, False),
        (50, 24, False, False),
        (10, 12, False, False),
        (5, 12, False, True),
        (1, 24, False, True),
    ],
)
def test_steady_sampling(rate_Hz, system_V, fast, slow):
    """At most 5 ms (12 V) or 16.7 ms (24 V) is fast enough; above 100 ms even the plateau may be missed."""
    found = sampling(crank_line(rate_Hz), start_s=5.0, system_V=system_V)
    assert (found.fast_enough, found.slow) == (fast, slow)
    assert found.step_s == pytest.approx(1 / rate_Hz, rel=0.01)


def test_repeated_values_are_no_samples():
    """1000 rows a second that repeat each value 300 times are three samples a second."""
    found = sampling(crank_line(1000, held=300), start_s=5.0, system_V=12)
    assert found.step_s == pytest.approx(0.3)
    assert (found.fast_enough, found.slow) == (False, True)


def test_a_coarse_value_is_not_a_repeated_one():
    """Steps of 0.1 V at 1000 rows a second: the value stands still for some rows, but moves by single counts."""
    assert sampling(crank_line(1000, digits=1), start_s=5.0, system_V=12).fast_enough


def test_a_wire_that_is_switched_is_not_held():
    """A dead wire that jumps to 12 V and back twice tells nothing of the pace."""
    values = [0.0] * 500 + [12.0] * 500 + [0.0] * 500
    assert held_s(Line(array("d", [i / 1000 for i in range(1500)]), array("d", values))) == 0.0


def test_a_gap_in_the_trough():
    """30 ms without rows just after the fall can hide the trough; 30 ms later in the crank cannot."""
    line = crank_line(1000)

    def without(from_s, to_s):
        kept = [(t, v) for t, v in zip(line.time_s, line.values, strict=True) if not from_s < t < to_s]
        return Line(array("d", [t for t, _ in kept]), array("d", [v for _, v in kept]))

    assert not sampling(without(5.001, 5.031), start_s=5.0, system_V=12).fast_enough
    assert sampling(without(5.601, 5.631), start_s=5.0, system_V=12).fast_enough


def test_without_a_clock_nothing_is_fast_enough():
    """Where the file's time stands still, the pace is not known."""
    found = sampling(crank_line(1000), start_s=5.0, system_V=12, time_known=False)
    assert (found.fast_enough, found.slow) == (False, True)
