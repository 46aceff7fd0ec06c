"""What the name above a column says of it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.recording_names import Kind, is_unit, read_heading, with_unit

PLAIN, MILLI = (1.0, 1.0), (1.0, 1000.0)


@pytest.mark.parametrize(
    ("cell", "name", "kind", "per_unit"),
    [
        ("time_s", "time", Kind.TIME, PLAIN),
        ("Time (ms)", "Time", Kind.TIME, MILLI),
        ("t [us]", "t", Kind.TIME, (1.0, 1e6)),
        ("Timestamp", "Timestamp", Kind.TIME, None),
        ("Zeit", "Zeit", Kind.TIME, None),
        ("timestamp_ms", "timestamp", Kind.TIME, MILLI),
        ("millis", "millis", Kind.TIME, MILLI),
        ("(s)", "", Kind.TIME, PLAIN),
        ("Date", "Date", Kind.DATE, None),
        ("pulse length (ms)", "pulse length", Kind.DURATION, MILLI),
        ("ENGINE_RUN_TINE ()", "ENGINE_RUN_TINE", Kind.RUN_TIME, None),
        ("Engine run time (s)", "Engine run time", Kind.RUN_TIME, PLAIN),
        ("Red 12 (V)", "Red 12", Kind.VOLTAGE, PLAIN),
        ("Red 12 [mV]", "Red 12", Kind.VOLTAGE, MILLI),
        ("battery_V", "battery", Kind.VOLTAGE, PLAIN),
        ("battery_mV", "battery", Kind.VOLTAGE, MILLI),
        ("Voltage(V)", "Voltage", Kind.VOLTAGE, PLAIN),
        ("U1 / V", "U1", Kind.VOLTAGE, PLAIN),
        ("CONTROL_MODULE_VOLTAGE ()", "CONTROL_MODULE_VOLTAGE", Kind.VOLTAGE, None),
        ("Control module voltage (V)", "Control module voltage", Kind.VOLTAGE, PLAIN),
        ("ENGINE_RPM ()", "ENGINE_RPM", Kind.ENGINE_SPEED, None),
        ("Engine speed (1/min)", "Engine speed", Kind.ENGINE_SPEED, PLAIN),
        ("KEY", "KEY", Kind.KEY, None),
        ("Unit", "Unit", Kind.UNIT, None),
        ("key (V)", "key", Kind.VOLTAGE, PLAIN),
        ("Red 12", "Red 12", Kind.UNSURE, None),
        ("Red (pin 4)", "Red (pin 4)", Kind.UNSURE, None),
        ("channel_A", "channel_A", Kind.UNSURE, None),
        ("THROTTLE ()", "THROTTLE", Kind.OTHER, None),
        ("KEY ()", "KEY", Kind.OTHER, None),
        ("Current (A)", "Current", Kind.OTHER, None),
        ("Coolant (°C)", "Coolant", Kind.OTHER, None),
        ("Index", "Index", Kind.OTHER, None),
        ("Serial Number", "Serial Number", Kind.OTHER, None),
        ("", "", Kind.OTHER, None),
    ],
)
def test_headings(cell, name, kind, per_unit):
    """Name, kind and unit of the ways in which recorders write their headers."""
    heading = read_heading(cell)
    assert (heading.name, heading.kind, heading.per_unit) == (name, kind, per_unit)


@pytest.mark.parametrize("cell", ["(ms)", "[V]", "mV", " V ", "(m V)", "A", "°C"])
def test_units(cell):
    """A unit alone, in brackets or not."""
    assert is_unit(cell)


@pytest.mark.parametrize("cell", ["", "12", "Red", "()", "V1"])
def test_no_units(cell):
    """Anything else is none."""
    assert not is_unit(cell)


def test_a_unit_beneath_counts_where_the_name_has_none():
    """A unit row completes the header and does not overrule it."""
    assert with_unit(read_heading("Channel A"), "(mV)").kind is Kind.VOLTAGE
    assert with_unit(read_heading("Channel A"), "(mV)").per_unit == MILLI
    assert with_unit(read_heading("Channel A (V)"), "(mV)").per_unit == PLAIN
    assert with_unit(read_heading("Channel B"), "(A)").kind is Kind.OTHER
    assert with_unit(read_heading("Time"), "(ms)").per_unit == MILLI


@given(st.text())
def test_any_text(cell):
    """No header cell makes the reading raise."""
    heading = read_heading(cell)
    assert heading.kind in Kind
    assert with_unit(heading, cell).kind in Kind
