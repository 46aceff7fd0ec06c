"""In a long recording only the stretches are read again in which something happened."""

import pytest
from tests.samples.waveforms import recording_of

from backprobe.stages.probe.recording.engine_speed import speed_line
from backprobe.stages.probe.recording.regions import MOST_REGIONS, regions
from backprobe.stages.probe.recording.trace import Sight

RATE_HZ = 1000


def found(values, *, scale=1.0, speed=None):
    """The regions of a long battery channel."""
    columns = {"battery": values} if speed is None else {"battery": values, "engine_speed": speed}
    sight = Sight(recording_of([i / RATE_HZ for i in range(len(values))], columns))
    return regions(sight, sight.recording.channels[0], speed=speed_line(sight), scale=scale)


def steady(*parts):
    """Levels with their seconds, one after the other."""
    return [volts for volts, seconds in parts for _ in range(int(seconds * RATE_HZ))]


def test_a_short_recording_is_one_region():
    """What is at hand whole is looked at whole."""
    assert found([12.0] * 5000) == [(0.0, 4.999)]


def test_nothing_happens():
    """A steady level has no regions."""
    assert found(steady((12.5, 100))) == []


def test_a_fall_with_its_recovery():
    """Down at 50 s, up at 52 s: the region holds both, and a few seconds around."""
    ((from_s, to_s),) = found(steady((12.5, 50), (10.0, 2), (12.4, 50)))
    assert from_s == pytest.approx(48, abs=0.3)
    assert to_s == pytest.approx(54, abs=0.3)


def test_a_rise_to_charging():
    """From rest to charging at 60 s, without a fall."""
    ((from_s, to_s),) = found(steady((12.5, 60), (14.1, 40)))
    assert from_s < 60 < to_s


def test_the_engine_speed():
    """A start that only the engine speed shows is looked at as well."""
    ((from_s, to_s),) = found(steady((12.5, 100)), speed=steady((0.0, 60), (800.0, 40)))
    assert from_s < 60 < to_s


def test_a_small_fall_at_24_V():
    """0.6 V are a fall at 12 V (0.4 V), not at 24 V (0.8 V)."""
    values = steady((25.0, 50), (24.4, 2), (25.0, 50))
    assert len(found(values)) == 1
    assert found(values, scale=2.0) == []


def test_the_deepest_falls_come_first():
    """Of thirty falls the sixteen deepest are looked at, and the one crank is among them."""
    parts = [part for i in range(30) for part in ((12.5, 60), (11.8 if i != 20 else 9.0, 1))]
    spans = found(steady(*parts))
    assert len(spans) == MOST_REGIONS
    crank_s = 20 * 61 + 60.5
    assert any(from_s < crank_s < to_s for from_s, to_s in spans)


def test_no_supply():
    """Without a channel there is nothing to look at."""
    sight = Sight(recording_of([i / 1000 for i in range(50_000)], {"dead": [0.0] * 50_000}))
    assert regions(sight, None, speed=None, scale=1.0) == []
