"""What a job sheet says of wire, fuse, ground, inputs and mounting."""

from __future__ import annotations

from pathlib import Path

import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.join_sheet import Drop, JoinSheet, Mount, Route, SignalLevels
from backprobe.formats.job_toml import read_job

SAMPLES = Path(__file__).resolve().parents[1] / "samples" / "job_sheets"


def test_the_full_sheet():
    """Every key comes out where it belongs."""
    told = read_job((SAMPLES / "good-full.toml").read_text(encoding="utf-8"), "job.toml").join
    assert told == JoinSheet(
        ambient_C=60.0,
        insulation="pvc-105",
        crank_level="I",
        tap=Drop(60.0, 2.0),
        vehicle_fuse_A=15.0,
        vehicle_fuse_type="C",
        vehicle_load_A=5.0,
        reversible=True,
        pierced=False,
        spread=False,
        why_spliced="no free way in the connector",
        ground=Drop(12.0, 2.0),
        self_tapping=False,
        behind="nothing",
        switched_negative=False,
        levels=(
            SignalLevels(
                lead="door",
                on_V=0.2,
                off_V=12.3,
                floats_off=False,
                coil=False,
                diode=False,
                isolated=False,
                sources=("Violet", "White/red"),
                isolation="diode",
                pulled="up",
                active="low",
                reported_on="2026-03-31T08:12:00Z",
                reported_off="2026-03-31T08:14:30Z",
            ),
        ),
        mount=Mount(
            place="behind the dash",
            solid=True,
            reachable=True,
            dry=True,
            cool=True,
            quiet=True,
            tied=True,
            clear=True,
            clear_of_airbags=True,
            clear_of_column=True,
            clear_of_pedals=True,
            clear_of_ducts=True,
            windscreen=False,
            top_mm=100.0,
            bottom_mm=100.0,
            in_sight=False,
            safety_technology=True,
        ),
        route=Route(
            grommets=True,
            sheathed=True,
            held=True,
            drip_loop=True,
            clear_of_heat=True,
            clear_of_fuel=True,
            clear_of_moving=True,
        ),
    )


def test_a_report_may_be_dated_as_toml_dates():
    """A date and time without quotation marks is one too."""
    text = (
        '[vehicle]\nsystem_V = 12\n[unit]\nsheet = "u"\n[[input]]\nlead = "door"\nreported_on = 2026-03-31T08:12:00Z\n'
    )
    assert read_job(text, "job.toml").join.levels[0].reported_on == "2026-03-31T08:12:00+00:00"


def test_a_level_is_one_of_the_systems_own():
    """Level IV is one of 12 V, and none of 24 V."""
    sheet = '[vehicle]\nsystem_V = {}\n[unit]\nsheet = "u"\n[join]\ncrank_level = "IV"'
    assert read_job(sheet.format(12), "job.toml").join.crank_level == "IV"
    with pytest.raises(UnreadableError) as caught:
        read_job(sheet.format(24), "job.toml")
    assert (caught.value.place.line, caught.value.expected) == (6, "ISO 16750-2 has no level IV at 24 V: I, II, III")


def test_a_sheet_that_says_nothing_of_it():
    """Nothing is made up."""
    assert read_job('[vehicle]\nsystem_V = 12\n[unit]\nsheet = "u"', "job.toml").join == JoinSheet()
