"""The vehicle on the job sheet against the one in the yard."""

from __future__ import annotations

from dataclasses import replace

import pytest

from backprobe.evidence.job_sheet import Vehicle
from backprobe.evidence.walkround import OnVehicle, VinRead
from backprobe.findings import Verdict
from backprobe.stages.walkround.identity import ANOTHER, identity

VIN = "5ZLDR7HV5KR200417"
SHEET = Vehicle(system_V=12, vin=VIN, plate="LY 07", fleet_number="07")
SEEN = OnVehicle(vin=VIN, plate="LY 07", fleet_number="07", key_with="Ines Okafor")


def test_the_same_three_hold():
    """With who holds the key."""
    found = identity(SEEN, SHEET)
    assert found.verdict is Verdict.HOLDS
    assert found.because == "VIN, plate, fleet number as on the sheet; key with Ines Okafor"


def test_a_vin_that_was_not_read_whole_is_told_as_that():
    """Its last six were typed, the rest compared by eye: it holds, and says so."""
    found = identity(replace(SEEN, vin_read=VinRead.LAST_SIX), SHEET)
    assert found.verdict is Verdict.HOLDS
    assert "of the VIN the last six were typed, the rest compared by eye" in found.because
    assert identity(replace(SEEN, vin_read=VinRead.SCANNED), SHEET).because == identity(SEEN, SHEET).because


def test_spaces_hyphens_and_capitals_make_no_other_vehicle():
    """A plate with its hyphen, a VIN in groups."""
    seen = OnVehicle(vin="5zldr7hv5-kr 200417", plate="ly-07", fleet_number="07", key_with="x")
    assert identity(seen, SHEET).verdict is Verdict.HOLDS


@pytest.mark.parametrize(
    ("seen", "words"),
    [
        (OnVehicle(vin=VIN, plate="LY 70", fleet_number="07", key_with="x"), "plate: LY 07 on the sheet, LY 70"),
        (OnVehicle(vin=VIN, plate="LY 07", fleet_number="7", key_with="x"), "fleet number: 07 on the sheet, 7 on"),
    ],
)
def test_a_disagreement_fails_and_names_both(seen: OnVehicle, words: str):
    """The work stops until it is settled which vehicle this is."""
    found = identity(seen, SHEET)
    assert (found.verdict, found.next) == (Verdict.FAILS, ANOTHER)
    assert words in found.because


def test_of_two_vins_the_one_that_checks_out_is_named():
    """200417 read as 200471: the weights of positions 16 and 17 are 3 and 2, so the sum changes by 6·3+... and fails.

    Positions 16 and 17 held 1 and 7 (1·3 + 7·2 = 17), swapped they hold 7 and 1 (7·3 + 1·2 = 23): 6 more, not 11.
    """
    wrong = "5ZLDR7HV5KR200471"
    on_vehicle = identity(OnVehicle(vin=wrong, plate="LY 07", fleet_number="07", key_with="x"), SHEET)
    assert f"VIN: {VIN} on the sheet, {wrong} on the vehicle" in on_vehicle.because
    assert "the one on the sheet has the right check digit" in on_vehicle.because
    on_sheet = identity(SEEN, Vehicle(system_V=12, vin=wrong, plate="LY 07", fleet_number="07"))
    assert "the one on the vehicle has the right check digit" in on_sheet.because


def test_no_hint_where_both_check_out_or_neither_is_of_north_america():
    """Two trucks of one yard, each with a right VIN; VINs whose check digit says nothing."""
    both = identity(OnVehicle(vin="5ZLDR7HVXKR200588", plate="LY 07", fleet_number="07", key_with="x"), SHEET)
    assert both.verdict is Verdict.FAILS
    assert "check digit" not in both.because
    elsewhere = Vehicle(system_V=12, vin="XL" + VIN[2:])
    assert "check digit" not in identity(OnVehicle(vin="XK" + VIN[2:], key_with="x"), elsewhere).because


def test_what_the_sheet_says_and_nobody_read_is_open():
    """It is to be read on the vehicle."""
    found = identity(OnVehicle(vin=VIN, fleet_number="07", key_with="x"), SHEET)
    assert (found.verdict, found.next) == (Verdict.OPEN, "read the plate on the vehicle")
    assert found.because == "plate not read on the vehicle (the sheet says LY 07)"


def test_what_the_sheet_does_not_say_cannot_be_compared():
    """A plate that only the vehicle shows is told; a vehicle without one asks for none."""
    found = identity(OnVehicle(vin=VIN, plate="LY 07", key_with="x"), Vehicle(system_V=12, vin=VIN))
    assert found.verdict is Verdict.HOLDS
    assert found.because == "VIN as on the sheet; plate LY 07, not on the sheet; key with x"


def test_nothing_read_at_all_is_open_once():
    """One sentence, not one for each."""
    found = identity(OnVehicle(key_with="x"), SHEET)
    assert (found.verdict, found.because) == (Verdict.OPEN, "nothing was read on the vehicle")
    assert identity(OnVehicle(key_with="x"), Vehicle(system_V=12)).verdict is Verdict.OPEN


def test_the_key_is_asked_for():
    """Who holds it must be known before anything is cranked or left."""
    found = identity(OnVehicle(vin=VIN, plate="LY 07", fleet_number="07"), SHEET)
    assert (found.verdict, found.because) == (Verdict.OPEN, "who holds the key is not said")
