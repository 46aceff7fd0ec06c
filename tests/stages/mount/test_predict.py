"""Places through a day: figures, worst heading, ranking."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.samples.mount import BOX, DASH, ROOF, sheet, thin_sky
from tests.samples.navigation import START_S, constellation

from backprobe.evidence.orbits import Orbits
from backprobe.findings import Verdict
from backprobe.stages.mount.day import Day
from backprobe.stages.mount.predict import HEADINGS, Site, figures, predict, ranked, sky_of
from backprobe.stages.mount.satellites import satellites_of


def test_figures_of_a_day() -> None:
    """Of 20 minutes one has no fix: kept for half of it 1.9 (the tenth), for 95 % (the nineteenth) 2.8, not for all."""
    hdop = [1.0 + 0.1 * k for k in range(19)] + [math.inf]
    found = figures(Day(0.0, hdop, [*range(3, 23)], 15))
    assert (found.share, found.hdop_median, found.hdop_p95) == (0.75, 1.9, 2.8)
    assert (found.least, found.median) == (3, 12)


def test_no_fix_for_so_long_is_said_as_none() -> None:
    """With two of 20 minutes without a fix 95 % are not reached; with 11 not even half."""
    assert figures(Day(0.0, [1.0] * 18 + [math.inf] * 2, [4] * 20, 18)).hdop_p95 is None
    assert figures(Day(0.0, [1.0] * 9 + [math.inf] * 11, [4] * 20, 9)).hdop_median is None


def test_roof_dash_and_box() -> None:
    """The roof holds all day, a metal box has nothing at all, the dash lies between; that is their order."""
    found = predict(sheet(BOX, DASH, ROOF), thin_sky())
    box, dash, roof = found
    assert (roof.verdict, box.verdict) == (Verdict.HOLDS, Verdict.FAILS)
    assert (roof.usual.share, box.usual.share) == (1.0, 0.0)
    assert box.as_json()["hdop"] == {"median": None, "p95": None}
    assert box.usual.share < dash.usual.share < roof.usual.share
    assert dash.hard.share <= dash.usual.share <= dash.kind.share
    assert [each.place.name for each in ranked(found)] == ["on the roof", "on the dash", "in the fuse box"]
    assert [each.place.name for each in ranked((roof, replace(roof, place=BOX)))] == ["on the roof", "in the fuse box"]


def test_the_worst_heading_is_the_worst() -> None:
    """For any heading the figures are those of the worst; under a stated heading they are not worse than that."""
    anywhere = predict(sheet(DASH), thin_sky())[0]
    assert anywhere.heading_deg == anywhere.worst_heading_deg
    stated = [predict(sheet(DASH, heading_deg=heading), thin_sky())[0] for heading in HEADINGS[::3]]
    assert all(each.usual.share >= anywhere.usual.share for each in stated)
    assert {each.worst_heading_deg for each in stated} == {anywhere.worst_heading_deg}


def test_open_on_all_sides_no_heading_is_worse() -> None:
    """Where no heading is worse than another the first is named."""
    assert predict(sheet(ROOF), thin_sky())[0].worst_heading_deg == 0.0


@pytest.mark.parametrize("lat_deg", [-90.0, 0.0, 60.2, 90.0])
def test_a_whole_day_anywhere(lat_deg: float) -> None:
    """1440 minutes, with eight satellites at least above 5° in the open of 31, at the poles too."""
    orbits = Orbits(file="x", kind="invented", good_for_s=7200.0, sets=constellation(31))
    sky = sky_of(satellites_of(orbits), Site(lat_deg, 24.9, START_S))
    assert len(sky) == 1440
    assert min(len(minute) for minute in sky) >= 4
