"""Engine data logged from three cars, read whole: lowest volts, and times that are not known.

Source: eron93br/carOBD, commit bf09e1c0 (free to all, the README asks to cite the paper), kept outside the repository.
About two rows a second; the only clock is the engine's run time, which stands at 0 while it is cranked. The lowest
volts are those named in the data's own notes; the rest is checked against Python's csv module on the same files.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from backprobe.evidence.recording import Quantity, Recording
from backprobe.files.open import text_lines
from backprobe.formats.recording_csv import read_recording

VOLTAGE, SPEED, RUN_TIME = "CONTROL_MODULE_VOLTAGE", "ENGINE_RPM", "ENGINE_RUN_TINE"
LOGS = {"obd-idle3.csv": 9.14, "obd-long10.csv": 7.558, "obd-drive1.csv": 11.894}  # lowest volts
by_log = pytest.mark.parametrize("name", LOGS)


@pytest.fixture(scope="module")
def recordings(shared_data: Path) -> dict[str, Recording]:
    paths = [shared_data / "supply" / name for name in LOGS]
    return {path.name: read_recording(text_lines(path), file=path.name, thresholds_V=(10.0,)) for path in paths}


@pytest.fixture(scope="module")
def columns(shared_data: Path) -> dict[str, dict[str, list[float]]]:
    """The three columns of each log as the csv module reads them."""
    found = {}
    for name in LOGS:
        with (shared_data / "supply" / name).open(newline="") as file:
            rows = list(csv.DictReader(file))
        found[name] = {column: [float(row[f"{column} ()"]) for row in rows] for column in (VOLTAGE, SPEED, RUN_TIME)}
    return found


@by_log
def test_every_row_is_read(recordings, columns, name):
    """No row is skipped, and the values are those of the file, one by one."""
    recording = recordings[name]
    window = recording.fine(recording.start_s, recording.end_s)
    assert recording.skipped_count == 0
    assert recording.rows == len(columns[name][VOLTAGE])
    assert list(window.values[VOLTAGE]) == columns[name][VOLTAGE]
    assert list(window.values[SPEED]) == columns[name][SPEED]


@by_log
def test_lowest_volts(recordings, columns, name):
    """9.14 V and 7.56 V while starting; drive1 starts the engine and misses the dip altogether."""
    channel = recordings[name].channel(VOLTAGE)
    assert channel is not None
    assert channel.lowest == LOGS[name] == min(columns[name][VOLTAGE])
    assert channel.highest == max(columns[name][VOLTAGE])


@by_log
def test_only_voltage_and_speed_are_taken(recordings, name):
    """Of 27 columns two are channels; TIME_RUN_WITH_MIL_ON and the like are neither channel nor clock."""
    assert {c.name: c.quantity for c in recordings[name].channels} == {
        VOLTAGE: Quantity.VOLTAGE,
        SPEED: Quantity.ENGINE_SPEED,
    }


@by_log
def test_time_is_not_known_and_that_is_said(recordings, columns, name):
    """The run time stands at 0 over the first rows, so rows are counted; four rows for about 2 s give the pace.

    The estimate is compared with the run time gained after the engine had started, over the rows that took.
    """
    recording, run_time = recordings[name], columns[name][RUN_TIME]
    assert not recording.time_known
    assert "stands at 0 while the engine is cranked" in (recording.time_note or "")
    first = next(i for i, seconds in enumerate(run_time) if seconds > 0)
    last = max(i for i in range(1, len(run_time)) if run_time[i] > run_time[i - 1])
    pace_s = (run_time[last] - run_time[first]) / (last - first)
    assert recording.interval_s == pytest.approx(pace_s, rel=0.01)
    assert recording.interval_s == pytest.approx(0.49, abs=0.005)
    assert recording.end_s == pytest.approx((recording.rows - 1) * recording.interval_s)
