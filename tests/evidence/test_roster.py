"""Rows of a roster, and what is wrong with them."""

from __future__ import annotations

from backprobe.evidence.roster import RosterFault, RosterRow


def test_what_a_row_is_called():
    """By plate, then fleet number, then VIN, then serial, then its line."""
    assert RosterRow(line=2, plate="LY 07", vin="V").name == "LY 07"
    assert RosterRow(line=2, fleet_number="7", vin="V").name == "7"
    assert RosterRow(line=2, unit_serial="0417").name == "0417"
    assert RosterRow(line=2).name == "line 2"


def test_what_a_row_says():
    """Only what is known, and not where it stood."""
    assert RosterRow(line=2, plate="LY 07", lat_deg=0.5).values() == {"plate": "LY 07", "lat_deg": 0.5}


def test_a_fault_in_words_and_as_json():
    """Row, column, text, what was expected."""
    fault = RosterFault(3, "Reg", "1.2E+10", "the plate")
    assert str(fault) == 'row 3, Reg: "1.2E+10" (the plate)'
    assert fault.as_json() == {"row": 3, "column": "Reg", "text": "1.2E+10", "expected": "the plate"}
