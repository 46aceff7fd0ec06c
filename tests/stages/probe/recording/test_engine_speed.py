"""The engine speed tells when the engine came to run."""

import pytest
from tests.samples.waveforms import recording_of

from backprobe.stages.probe.recording.engine_speed import speed_channel, speed_line, speed_starts
from backprobe.stages.probe.recording.trace import Sight


def starts(values, *, step_s=0.5):
    """The starts in an engine speed sampled at a steady step."""
    recording = recording_of([i * step_s for i in range(len(values))], {"engine_speed": [float(v) for v in values]})
    return speed_starts(speed_line(Sight(recording)))


def test_turned_and_ran():
    """Zero until 1.5 s, 245 /min (the starter) from 2.0 s, 1128 /min from 3.0 s: moments half way between."""
    (found,) = starts([0, 0, 0, 0, 245, 245, 1128, 1100])
    assert (found.stood_s, found.turned_s, found.ran_s) == (1.5, 1.75, 2.75)


def test_straight_to_running():
    """0, then 1100 /min: turned and ran lie between the same two samples."""
    (found,) = starts([0, 0, 1100, 1000])
    assert (found.turned_s, found.ran_s) == (0.75, 0.75)


def test_a_failed_attempt_is_no_start():
    """180 /min and back to zero, then a start."""
    (found,) = starts([0, 180, 180, 0, 0, 200, 800])
    assert (found.stood_s, found.ran_s) == (2.0, 2.75)


def test_running_from_the_beginning_is_no_start():
    """Nobody saw it start; a stall and restart is one."""
    assert starts([800, 900, 850]) == ()
    assert len(starts([800, 900, 0, 0, 210, 900])) == 1


def test_no_speed_channel():
    """Without one there is neither channel nor line."""
    recording = recording_of([0, 1], {"battery": [12.0, 12.0]})
    assert speed_channel(recording) is None
    assert speed_line(Sight(recording)) is None


def test_a_long_recording_uses_the_envelope():
    """100,000 rows: the start at 60 s is found within a bucket."""
    values = [0.0] * 60_000 + [900.0] * 40_000
    recording = recording_of([i / 1000 for i in range(100_000)], {"engine_speed": values})
    (found,) = speed_starts(speed_line(Sight(recording)))
    assert found.ran_s == pytest.approx(60.0, abs=0.1)
