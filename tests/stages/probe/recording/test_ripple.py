"""The compression ripple is found with its frequency, and only where it is."""

import math
import random
from array import array

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.stages.probe.recording.ripple import cranking_speed_rpm, levelled, ripple
from backprobe.stages.probe.recording.trace import Line


def line(frequency_Hz, *, length_s=1.0, rate_Hz=500.0, pp_V=0.6, noise_V=0.0, sag_V=0.0):
    """A plateau at 10 V with a ripple, noise and a slow sag."""
    noise = random.Random(3)
    times = [row / rate_Hz for row in range(int(length_s * rate_Hz))]
    values = [
        10.0 + pp_V / 2 * math.cos(2 * math.pi * frequency_Hz * t) - sag_V * t + noise.gauss(0.0, noise_V)
        for t in times
    ]
    return Line(array("d", times), array("d", values))


@settings(max_examples=40, deadline=None)
@given(st.floats(3.0, 28.0), st.floats(0.1, 2.0))
def test_frequency_and_height(frequency_Hz, pp_V):
    """One second of a clean ripple of 3 to 28 Hz: frequency within 3 % or 0.15 Hz, height within 15 %."""
    found = ripple(line(frequency_Hz, pp_V=pp_V), scale=1.0)
    assert found is not None
    assert found.frequency_Hz == pytest.approx(frequency_Hz, rel=0.03, abs=0.15)
    assert found.pp_V == pytest.approx(pp_V, rel=0.15)


def test_under_noise_and_a_sagging_battery():
    """A ripple of 0.4 V at 7 Hz under noise of 0.05 V and a sag of 1 V/s."""
    found = ripple(line(7.0, pp_V=0.4, noise_V=0.05, sag_V=1.0, length_s=1.5), scale=1.0)
    assert found is not None
    assert found.frequency_Hz == pytest.approx(7.0, abs=0.2)


def test_noise_alone_is_no_ripple():
    """White noise has no frequency that stands out."""
    assert ripple(line(5.0, pp_V=0.0, noise_V=0.1), scale=1.0) is None


def test_a_pump_is_too_fast():
    """60 Hz lies outside the band of compressions."""
    assert ripple(line(60.0, rate_Hz=2000.0), scale=1.0) is None


def test_what_cannot_be_seen():
    """Little more than a period; 20 rows a second, at which 17 Hz would look like 3 Hz; a height of 0.04 V."""
    assert ripple(line(3.0, length_s=0.4), scale=1.0) is None
    assert ripple(line(17.0, rate_Hz=20.0, length_s=4.0), scale=1.0) is None
    assert ripple(line(8.0, pp_V=0.04), scale=1.0) is None
    assert ripple(Line(array("d"), array("d")), scale=1.0) is None


def test_twice_the_system_voltage_needs_twice_the_height():
    """0.1 V are enough at 12 V (0.06 V asked), not at 24 V (0.12 V)."""
    assert ripple(line(8.0, pp_V=0.1), scale=1.0) is not None
    assert ripple(line(8.0, pp_V=0.1), scale=2.0) is None


@pytest.mark.parametrize(("frequency_Hz", "cylinders", "rpm"), [(8, 4, 240), (10, 6, 200), (12, 8, 180), (2.5, 3, 100)])
def test_cranking_speed(frequency_Hz, cylinders, rpm):
    """Each cylinder of a four-stroke engine compresses once in two turns: 8 Hz × 60 × 2 / 4 = 240 /min."""
    assert cranking_speed_rpm(frequency_Hz, cylinders) == rpm


def test_a_parabola_is_levelled_away():
    """Mean, slope and bend go: nothing is left of 3 + 2x - x²."""
    flat = levelled([3 + 2 * x - x * x for x in range(20)])
    assert max(map(abs, flat)) < 1e-9
