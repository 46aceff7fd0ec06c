"""Telling a readings table from a recording, and finding the meter that is named."""

from __future__ import annotations

import pytest

from backprobe.cases.probe import is_readings_header, meter_of, open_recording, probe_file
from backprobe.errors import InputError, UnreadableError
from backprobe.limits.lookup import meter
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("basic"), unit_least_V=8.0)


@pytest.mark.parametrize(
    ("header", "is_table"),
    [
        ("wire,key,volts", True),
        ("Wire;Key;Volts;note", True),
        ("key,volts,colour", True),
        ("time_s,battery,Red,key", False),
        ("ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", False),
    ],
)
def test_the_header_tells_which_it_is(header, is_table):
    """A table has wires or key and volts; a recording has neither pair."""
    assert is_readings_header(header) is is_table


def test_comments_before_the_header_are_passed_over(tmp_path):
    """A table may begin with remarks."""
    path = tmp_path / "readings.csv"
    path.write_text("# truck 7\n\nwire,key,volts\nRed,on,12.4\n")
    assert [wire.name for wire in probe_file(path, SETUP).result.wires] == ["Red"]


def test_a_recordings_channels_are_its_wires_but_for_the_battery(tmp_path):
    """The battery is what others are compared with."""
    path = tmp_path / "crank.csv"
    path.write_text("time_s,battery,Red\n" + "".join(f"{i / 10},12.5,12.4\n" for i in range(50)))
    answer = probe_file(path, SETUP)
    assert [wire.name for wire in answer.result.wires] == ["Red"]
    assert answer.view is not None


def test_time_below_each_limit_is_counted(tmp_path):
    """9 V and 10 V, and the unit's own 8 V: half a second at 7.5 V is below all three."""
    path = tmp_path / "crank.csv"
    rows = [f"{i / 100:.2f},{7.5 if 100 <= i < 150 else 12.5}" for i in range(300)]
    path.write_text("time_s,Red (V)\n" + "\n".join(rows) + "\n")
    below = open_recording(path, SETUP).channels[0].seconds_below
    assert {limit: round(seconds, 1) for limit, seconds in below.items()} == {9.0: 0.5, 10.0: 0.5, 8.0: 0.5}


def test_a_meter_is_a_class_or_a_file(tmp_path):
    """A name from the table, or a sheet of its own."""
    sheet = tmp_path / "mine.toml"
    sheet.write_text("percent = 0.8\ncounts = 3\n")
    assert meter_of("precise") == meter("precise")
    assert (meter_of(str(sheet)).percent, meter_of(str(sheet)).counts) == (0.8, 3.0)


@pytest.mark.parametrize("name", ["golden", "nowhere.toml", ""])
def test_other_meters_are_refused(name):
    """Neither a class nor a file that is there."""
    with pytest.raises(InputError):
        meter_of(name)


def test_a_picture_is_no_table(tmp_path):
    """A wrong file is named for what it looks like."""
    path = tmp_path / "readings.csv"
    path.write_bytes(b"\xff\xd8\xff\xe0" + bytes(100))
    with pytest.raises(UnreadableError, match="JPEG"):
        probe_file(path, SETUP)
