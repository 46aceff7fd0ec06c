"""Three real starts of a car, read from its diagnosis plug about twice a second: what they prove and what they do not.

Source: recordings of the carOBD project (eron93br/carOBD, commit bf09e1c0; free to all, cite the paper), kept at
../shared/data/supply and not part of this repository. The lowest volts and the engine speeds below were read off the
files by hand. In each file the run-time column stands at 0 throughout the crank: the time is not known.
"""

import pytest

from backprobe.evidence.keys import Key
from backprobe.files.open import text_lines
from backprobe.findings import Verdict
from backprobe.formats.recording_csv import read_recording
from backprobe.limits.lookup import meter
from backprobe.stages.probe.recording.channels import thresholds_V
from backprobe.stages.probe.recording.view import look, readings_from
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("basic"))


def looked(shared_data, name):
    """Recording and view of one of the logs."""
    path = shared_data / "supply" / name
    recording = read_recording(text_lines(path), file=name, thresholds_V=thresholds_V(SETUP))
    return recording, look(recording, SETUP)


@pytest.mark.parametrize(
    ("name", "lowest_V", "verdict"),
    [
        ("obd-drive1.csv", 11.894, Verdict.OPEN),
        ("obd-idle3.csv", 9.14, Verdict.THIN),
        ("obd-long10.csv", 7.558, Verdict.FAILS),
    ],
)
def test_what_the_logs_prove(shared_data, name, lowest_V, verdict):
    """A missed dip is open, 9.14 V is inside the limit but not proven, 7.56 V is outside."""
    _, view = looked(shared_data, name)
    (channel,) = view.channels
    assert channel.lowest_V == lowest_V
    assert channel.dip.verdict is verdict
    assert not channel.sampling.fast_enough
    if verdict is not Verdict.FAILS:
        assert "sampled too slowly to prove a dip" in channel.dip.because


# rows (from 0) of the last standstill and of the first row above 400 /min
STARTS = {"obd-drive1.csv": (3, 7), "obd-idle3.csv": (7, 8), "obd-long10.csv": (3, 4)}


@pytest.mark.parametrize("name", STARTS)
def test_the_start_is_found_by_the_engine_speed(shared_data, name):
    """One sure start; it ends between standstill and running, and begins no more than two seconds (4 rows) before."""
    recording, view = looked(shared_data, name)
    (start,) = [crank for crank in view.cranks if crank.sure >= 0.5]
    stood, ran = (row * recording.interval_s for row in STARTS[name])
    assert start.started
    assert start.sure >= 0.8
    assert stood <= start.end_s <= ran
    assert stood - 2.0 <= start.start_s <= start.end_s
    assert view.events.crank_start_s == start.start_s


@pytest.mark.parametrize("name", STARTS)
def test_the_time_is_said_to_be_unknown(shared_data, name):
    """All three clocks stand still during the crank."""
    recording, view = looked(shared_data, name)
    assert not recording.time_known
    assert not view.as_json()["time_known"]
    assert recording.time_note in view.notes


def test_the_readings_they_give(shared_data):
    """A crank by 'display' only, 9.140 V, and charging: between 13.9 and 14.5 V; no position of the key is invented."""
    _, view = looked(shared_data, "obd-idle3.csv")
    found = {reading.key: reading for reading in readings_from(view)}
    assert set(found) == {Key.CRANK, Key.RUNNING}
    assert (found[Key.CRANK].typed[:4], str(found[Key.CRANK].capture)) == ("9.14", "display")
    assert 13.9 <= found[Key.RUNNING].volts <= 14.5
