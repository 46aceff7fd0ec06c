"""Engine data in rows, listened to as a bus log is."""

from __future__ import annotations

from backprobe.formats.recording_csv import read_recording
from backprobe.stages.bus.engine_data import listen_to_rows
from backprobe.stages.bus.heard import Heard

HEADER = "time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()"


def heard(*rows: str) -> Heard:
    """What rows come to."""
    lines = [HEADER, *rows]
    return listen_to_rows(read_recording(lambda: lines, file="obd.csv", thresholds_V=())).heard


def test_a_start_in_rows() -> None:
    """Two rows a second: it stood at 1.0 s, ran at 1.5 s; the supply had fallen at 1.0 s."""
    found = heard("0,0,12.4", "0.5,0,12.4", "1,0,9.6", "1.5,900,12.0", "2,850,13.9", "2.5,800,14.0", "3,800,14.0")
    [crank] = found.key.cranks
    assert (crank.start_s, crank.end_s, crank.started, crank.lowest_V, crank.rest_V) == (1.0, 1.5, True, 9.6, 12.4)
    assert (found.format, found.frames, found.rpm_max) == ("obd-csv", 7, 900.0)
    assert found.key.on_at_start
    assert found.key.on_s is None


def test_cells_that_hold_nothing_are_no_figures() -> None:
    """A row may lack either."""
    found = heard("0,,12.4", "0.5,0,", "1,0,12.3", "1.5,0,12.3")
    assert found.volts is not None
    assert found.volts.samples == 3
    assert found.rpm_max == 0.0


def test_times_count_from_the_first_row() -> None:
    """A clock that begins at 100 s."""
    found = heard("100,700,14.0", "101,700,13.5", "102,700,14.0")
    assert found.volts is not None
    assert (found.volts.lowest_s, found.length_s) == (1.0, 2.0)
    assert found.key.runs_at_start
