"""Invented places for a unit, and a thinned day of an invented sky."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from tests.samples.jobs import DEMO
from tests.samples.navigation import START_S, constellation

from backprobe.evidence.mount_sheet import MountPlace, MountSheet, Part, Side
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.formats.job_toml import read_job
from backprobe.physics.orbit import Observer
from backprobe.physics.tracks import sky_by_step
from backprobe.stages.mount.day import Cell, placed

JOB = replace(
    read_job((DEMO / "linden-yard" / "truck-07" / "job.toml").read_text(encoding="utf-8"), "job.toml"),
    place=VehiclePlace(lat_deg=-33.1, lon_deg=151.2),
)
LOW = 0.0871557  # the sine of 5°
WINDSCREEN = Part(material="glass", side=Side.AHEAD, away_mm=250, rake_deg=60, to_mm=750, left_mm=1300, right_mm=900)
LEFT_WINDOW = Part(material="glass", side=Side.LEFT, away_mm=1300, from_mm=50, to_mm=650, ahead_mm=100, behind_mm=900)
METAL_ROOF = Part(material="metal", side=Side.ABOVE, away_mm=750, ahead_mm=100)
DASH = MountPlace(name="on the dash", parts=(WINDSCREEN, LEFT_WINDOW), cover=("plastic",))
ROOF = MountPlace(name="on the roof", elsewhere="open", cover=("plastic",))
BOX = MountPlace(name="in the fuse box", cover=("plastic",))


def sheet(*places: MountPlace, **more: object) -> MountSheet:
    """A sheet of these places, else of the dash alone."""
    return MountSheet(file="mount.toml", places=places or (DASH,), **more)


@cache
def thin_sky(lat_deg: float = 52.0) -> tuple[tuple[Cell, ...], ...]:
    """The sky of every 24th minute of a day."""
    sets = {each.id: (each,) for each in constellation(31)}
    sky = sky_by_step(sets, Observer(lat_deg, 7.0), start_s=START_S, steps=60, step_s=1440.0, least_up=LOW)
    return tuple(tuple(minute) for minute in placed(sky))


DASH_TOML = """
heading = "any"

[[place]]
name = "on the dash"
cover = "plastic"

[[place.part]]
of = "glass"
where = "ahead"
away_mm = 250
rake_deg = 60
to_mm = 750
left_mm = 1300
right_mm = 900

[[place.part]]
of = "glass"
where = "left"
away_mm = 1300
from_mm = 50
to_mm = 650
ahead_mm = 100
behind_mm = 900
"""
ROOF_TOML = """
[[place]]
name = "on the roof"
cover = ["plastic"]
elsewhere = "open"
"""
