"""Azimuth and elevation against those that a phone's measurements of 29 April 2021 carry.

Source: Stanford-NavLab/gnss_lib_py, commit be41b0b9, MIT: the broadcast ephemerides of the day (RINEX 2) and raw
measurements of a phone near Palo Alto with azimuth and elevation of each satellite.
"""

from __future__ import annotations

import csv
from pathlib import Path

from backprobe.formats.navigation import read_navigation
from backprobe.physics.geodesy import az_el_deg
from backprobe.physics.gps_time import gps_of
from backprobe.physics.orbit import Observer, nearest_set

GPS = "1"
WITHIN_DEG = 0.01


def test_the_phone_saw_them_where_we_say(shared_data: Path) -> None:
    """Each GPS satellite of each second within 0.01°, from the place that a survey-grade receiver gave for it."""
    folder = shared_data / "orbits"
    orbits = read_navigation(
        (folder / "brdc1190.21n").read_text(encoding="ascii").splitlines(), file="brdc1190.21n", near_week=2155
    )
    assert (len(orbits.ids), orbits.skipped_count, orbits.leap_s) == (32, 0, 18)
    places = {row["UnixTimeMillis"]: row for row in rows(folder / "ground_truth.csv")}
    seen = [row for row in rows(folder / "device_gnss.csv") if row["ConstellationType"] == GPS]
    compared = 0
    for row in seen:
        place = places.get(row["utcTimeMillis"])
        if place is None or not row["SvAzimuthDegrees"]:
            continue
        observer = Observer(float(place["LatitudeDegrees"]), float(place["LongitudeDegrees"]))
        moment_s = gps_of(int(row["utcTimeMillis"]) / 1000)
        own = tuple(each for each in orbits.sets if each.id == f"G{int(row['Svid']):02d}")
        az, el = az_el_deg(observer.direction(nearest_set(own, moment_s), moment_s))
        assert abs((az - float(row["SvAzimuthDegrees"]) + 180) % 360 - 180) < WITHIN_DEG
        assert abs(el - float(row["SvElevationDegrees"])) < WITHIN_DEG
        compared += 1
    assert compared >= 50


def rows(path: Path) -> list[dict[str, str]]:
    """The rows of a table with a header."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
