"""Engine data as CSV, told from a recording and given row by row."""

from __future__ import annotations

import itertools

import pytest

from backprobe.evidence.recording import Recording
from backprobe.formats.obd_csv import WINDOW_ROWS, EngineRow, engine_rows, is_engine_data, supply_channel
from backprobe.formats.recording_csv import read_recording


def read(*lines: str) -> Recording:
    """The recording in lines."""
    return read_recording(lambda: list(lines), file="f.csv", thresholds_V=())


@pytest.mark.parametrize(
    ("header", "known"),
    [
        ("time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", True),
        ("time_s,CONTROL_MODULE_VOLTAGE ()", True),
        ("Time (s),Engine speed (rpm),Battery (V)", True),
        ("time_s,red,black", False),
        ("t,key", False),
        ("", False),
    ],
)
def test_engine_data_is_told_by_its_columns(header: str, known: bool) -> None:
    """An engine speed, or the control module's own voltage."""
    cells = ",".join(["12.4"] * header.count(","))
    assert is_engine_data([header, f"0,{cells}", f"1,{cells}"]) is known


def test_each_row_is_given_once() -> None:
    """More rows than a window holds: none is missing, none comes twice, times rise."""
    count = 2 * WINDOW_ROWS + 10
    recording = read(
        "time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", *(f"{i / 10:.1f},{i % 900},12.4" for i in range(count))
    )
    rows = list(engine_rows(recording))
    assert len(rows) == count
    assert rows[0] == EngineRow(0.0, 0.0, 12.4)
    assert all(a.time_s < b.time_s for a, b in itertools.pairwise(rows))


def test_the_supply_is_the_control_module_s() -> None:
    """Where several voltages stand, that one; else the first."""
    named = read("time_s,sensor_V,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", "0,0.4,700,14.1", "1,0.5,700,14.1")
    other = read("time_s,battery_V,ENGINE_RPM ()", "0,12.4,0", "1,12.4,0")
    assert [getattr(supply_channel(each), "name", None) for each in (named, other)] == [
        "CONTROL_MODULE_VOLTAGE",
        "battery",
    ]


def test_a_row_that_lacks_a_figure_has_none() -> None:
    """Empty cells are None."""
    rows = list(engine_rows(read("time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", "0,,12.4", "1,700,", "2,700,12.4")))
    assert rows[0] == EngineRow(0.0, None, 12.4)
    assert rows[1] == EngineRow(1.0, 700.0, None)
