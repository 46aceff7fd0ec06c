"""Files in, a proof out."""

import pytest
from tests.samples.prove_cases import HEADER, STEPS, at, healthy

from backprobe.cases.prove import Sheets, names_of, prove_files, seen_of, setup_of
from backprobe.errors import OptionError, UnreadableError
from backprobe.evidence.vehicle_place import VehiclePlace

UNIT = """
name = "Lantern 2"
supply = { least_V = 8, most_V = 32, idle_mA = 65, transmit_mA = 180 }
lead = [{ name = "power", purpose = "supply" }, { name = "ground", purpose = "ground" }]
light = [{ name = "network", pattern = "one flash a second", means = "registered, sending" }]
reporting = { interval_s = 60, debounce_on_s = 2, debounce_off_s = 20 }
"""
JOB = """
vehicle = { system_V = 12, has_accessory = false }
unit = { sheet = "unit.toml", serial = "LN2-00417", id = "L1" }
place = { lat = -33.1, lon = 151.2, accuracy_m = 5 }
"""


@pytest.fixture
def folder(tmp_path):
    """A job sheet, its unit sheet, a script and reports."""
    (tmp_path / "job.toml").write_text(JOB, encoding="utf-8")
    (tmp_path / "unit.toml").write_text(UNIT, encoding="utf-8")
    script = "\n".join(["t,key", *(f"{at(t)},{key}" for t, key in STEPS)])
    (tmp_path / "script.csv").write_text(script, encoding="utf-8")
    (tmp_path / "reports.csv").write_text("\n".join([HEADER, *healthy()]), encoding="utf-8")
    return tmp_path


def proof(folder, **seen):
    """The answer to the folder's files."""
    told = seen_of(seen.get("lights"), idle=seen.get("idle"), transmit=seen.get("transmit"))
    sheets = Sheets(job=folder / "job.toml")
    return prove_files(folder / "script.csv", folder / "reports.csv", sheets=sheets, seen=told)


def test_the_setup_comes_from_the_sheets(folder):
    """Unit, its sheet, place and key positions."""
    setup, notes = setup_of(Sheets(job=folder / "job.toml"))
    assert (setup.unit_id, setup.unit_serial, setup.has_accessory) == ("L1", "LN2-00417", False)
    assert setup.place == VehiclePlace(lat_deg=-33.1, lon_deg=151.2, accuracy_m=5.0)
    assert setup.sheet.reporting.debounce_off_s == 20
    assert notes == ()


def test_what_is_said_goes_before_what_is_written(folder):
    """Unit id, place and sheet."""
    other = VehiclePlace(lat_deg=1.0, lon_deg=2.0)
    setup, _ = setup_of(Sheets(job=folder / "job.toml", unit_id="L7", place=other))
    assert (setup.unit_id, setup.place) == ("L7", other)
    assert setup_of(Sheets(unit=folder / "unit.toml"))[0].sheet.name == "Lantern 2"
    assert setup_of(Sheets())[0].sheet is None


def test_a_unit_sheet_that_is_not_there_is_noted(folder):
    """The usual figures stand in for it, and the answer says so."""
    (folder / "unit.toml").unlink()
    answer = proof(folder)
    assert "unit.toml" in answer.notes[0]
    assert any("common practice" in note for note in answer.notes)


def test_the_whole_way(folder):
    """Script, reports, sheets, lights and supply."""
    (folder / "lights.csv").write_text("light,pattern,after_s\nnetwork,one flash a second,41\n,,\n", encoding="utf-8")
    seen = seen_of(folder / "lights.csv", idle="12.412 V", transmit="12402 mV")
    answer = prove_files(
        folder / "script.csv", folder / "reports.csv", sheets=Sheets(job=folder / "job.toml"), seen=seen
    )
    found = answer.as_json()
    assert found["verdict"] == "holds"
    assert found["lights"][0]["as_stated"] is True
    assert found["supply"]["verdict"] == "holds"
    assert found["supply"]["change_V"] == 0.01
    assert any("lights.csv, line 3" in note for note in answer.notes)


VOLTS = [("12.4", None), (None, "12.4"), ("x", "12.4"), ("12.4", "12.4 A"), ("12.4", "0"), ("99", "12")]


@pytest.mark.parametrize(("idle", "transmit"), VOLTS)
def test_a_supply_that_makes_no_sense_is_refused(idle, transmit):
    """Both or none, in volts."""
    with pytest.raises(OptionError):
        seen_of(None, idle=idle, transmit=transmit)


def test_a_column_map_as_text_or_file(tmp_path):
    """A file ends in .toml."""
    (tmp_path / "map.toml").write_text('[columns]\nt = "Sent"\n', encoding="utf-8")
    assert names_of(None).columns == {}
    assert names_of("t=Sent").columns == names_of(str(tmp_path / "map.toml")).columns == {"t": "Sent"}


@pytest.mark.parametrize("name", ["script.csv", "reports.csv", "job.toml"])
def test_files_that_are_not_there(folder, name):
    """Named in the technician's words."""
    (folder / name).unlink()
    with pytest.raises(UnreadableError, match="there is none of this name"):
        proof(folder)
