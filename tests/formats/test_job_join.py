"""What a job sheet says of wire, fuse, ground, inputs and mounting."""

from __future__ import annotations

from pathlib import Path

from backprobe.evidence.join_sheet import Drop, JoinSheet, Mount, SignalLevels
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
        vehicle_load_A=5.0,
        reversible=True,
        pierced=False,
        why_spliced="no free way in the connector",
        ground=Drop(12.0, 2.0),
        self_tapping=False,
        behind="nothing",
        switched_negative=False,
        levels=(
            SignalLevels(lead="door", on_V=0.2, off_V=12.3, floats_off=False, coil=False, diode=False, isolated=False),
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
            windscreen=False,
            top_mm=100.0,
            bottom_mm=100.0,
            in_sight=False,
        ),
    )


def test_a_sheet_that_says_nothing_of_it():
    """Nothing is made up."""
    assert read_job('[vehicle]\nsystem_V = 12\n[unit]\nsheet = "u"', "job.toml").join == JoinSheet()
