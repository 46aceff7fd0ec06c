"""Sheets of one vehicle reduced to what another may take over."""

from __future__ import annotations

import tomllib

import pytest
from tests.samples.demo_jobs import DEMO

from backprobe.errors import UnreadableError
from backprobe.evidence.job_sheet import NamedWire
from backprobe.formats.job_toml import KEYS, read_job
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.usual_sheets import JOB_KEPT, WALKROUND_KEPT, usual_job, usual_mount, usual_walkround
from backprobe.formats.walkround_toml import KEYS as WALKROUND_KEYS

TRUCK = DEMO / "truck-07"


def text(name: str) -> str:
    """A sheet of the demo's truck 7."""
    return (TRUCK / name).read_text(encoding="utf-8")


def test_choices_stay_and_what_was_measured_goes() -> None:
    """Method, fuse, place and length of each joint; not the pull of a sample crimp, the drops, the tug."""
    wires = read_job(text("job.toml"), "job.toml").wires
    kept = tomllib.loads(usual_job(text("job.toml"), wires))
    power, ground, _, door = kept["joint"]
    assert (power["method"], power["fuse_A"], power["length_m"]) == ("soldered_sleeve", 3, 1.8)
    assert (ground["place"], "pull_N" in ground, "tugged" in ground) == (
        "bolt of the pedal bracket, M8, bared and greased",
        False,
        False,
    )
    assert door == {
        "lead": "door",
        "end": "cut back and capped, 60 mm from the unit",
        "cut_mm": 60,
        "capped": True,
        "tied_back": True,
    }
    assert kept["join"] == {"ambient_C": 60, "vehicle_fuse_A": 15, "vehicle_fuse_type": "C", "vehicle_load_A": 4}
    assert kept["battery"] == {"kind": "flooded", "capacity_Ah": 180}
    assert kept["parked"] == {"coldest_C": -5, "starts_to_C": -20, "wanted_days": 21}
    assert list(kept["hand_over"]) == ["told_driver"]
    assert "ground" not in kept  # of [ground] there was only what was measured
    assert [(wire["name"], wire["lead"], wire["cavity"]) for wire in kept["wire"]] == [
        ("X12/4 RD", "supply", "4"),
        ("X12/9 VT", "ignition", "9"),
    ]


def test_no_number_no_name_no_place() -> None:
    """Nothing that says which vehicle it was, who worked on it, and where; no remark either."""
    wires = read_job(text("job.toml"), "job.toml").wires
    said = (
        usual_job(text("job.toml"), wires) + usual_walkround(text("walkround.toml")) + usual_mount(text("mount.toml"))
    )
    for secret in ("5ZLDR7HV5KR200417", "LN2-00417", "Okafor", "Linden", "LY 07", "-33.1", "#", "184220"):
        assert secret not in said
    assert set(JOB_KEPT) <= set(KEYS)
    assert set(WALKROUND_KEPT) <= set(WALKROUND_KEYS)
    assert not {"vehicle", "job", "place", "photo", "meter"} & set(JOB_KEPT)
    assert JOB_KEPT["unit"] == ("sheet",)


def test_wires_that_were_not_chosen_are_left_out() -> None:
    """One for a lead, one that stands in a joint under other capitals; not the third."""
    wires = [
        NamedWire(name="A", lead="supply", circuits=("one", "two")),
        NamedWire(name="door switch", colour="BN"),
        NamedWire(name="C"),
    ]
    kept = tomllib.loads(usual_job('[[joint]]\nlead = "door"\nwire = "Door  Switch"\n', wires))
    assert kept["wire"] == [
        {"name": "A", "lead": "supply", "circuit": ["one", "two"]},
        {"name": "door switch", "colour": "BN"},
    ]
    assert usual_job("", []) == ""


def test_the_unit_and_what_is_dangerous_in_the_type() -> None:
    """What firmware is wanted, how much the unit's own battery must have, lights; high voltage, not who allowed it."""
    kept = tomllib.loads(usual_walkround(text("walkround.toml")))
    assert kept == {
        "unit": {
            "firmware": "4.2.1",
            "firmware_wanted": "4.2.1",
            "backup_least_V": 3.6,
            "lights": ["network: one flash a second", "sky: steady"],
        },
        "hazards": {"high_voltage": False, "dual_batteries": False, "system_48V": False},
    }


def test_the_places_of_the_unit_read_as_before() -> None:
    """All places with their parts; not where the front pointed."""
    before = read_mount(text("mount.toml").replace('heading = "any"', "heading = 90"), "mount.toml")
    after = read_mount(usual_mount(text("mount.toml")), "mount.toml")
    assert (after.places, after.chosen) == (before.places, before.chosen)
    assert (before.heading_deg, after.heading_deg) == (90, None)


def test_what_is_no_toml_is_refused() -> None:
    """With the line."""
    with pytest.raises(UnreadableError):
        usual_job("[joint", [])
