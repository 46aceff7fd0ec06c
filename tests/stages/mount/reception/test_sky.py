"""A log as a sky plot."""

from dataclasses import replace

from tests.samples.receptions import OPEN_SKY, reception, sky_bins

from backprobe.drawings.sky import SkyMaskCell, SkySatellite
from backprobe.stages.mount.reception.sky import satellites_of, sky_of

BLOCKED = sky_bins({az: cn0 - 16 if 90 <= az < 180 else cn0 for az, cn0 in OPEN_SKY.items()})


def test_each_satellite_stands_where_it_was_longest() -> None:
    """One that moved from one piece of the sky into another: the longer stay counts, with its mean there."""
    (first,) = sky_bins({100: 40})
    later = replace(first, az_bin=7, heard=200, used=200, cn0_tenths=200 * 430, az_sum=200 * 108, el_sum=200 * 47)
    assert satellites_of((first, later)) == (SkySatellite("G01", 108.0, 47.0, 43.0, used=True),)


def test_not_heard_and_not_used() -> None:
    """Mostly missing is not heard; heard and rarely used is not used; SBAS that is silent is left out."""
    silent, heard = sky_bins({100: 0, 200: 38})
    sbas = replace(silent, satellite="S126")
    drawn = satellites_of((silent, replace(heard, used=10), sbas))
    assert [(each.id, each.cn0_dBHz, each.used) for each in drawn] == [("G01", None, False), ("G02", 38.0, False)]


def test_the_blocked_side_is_named_on_it() -> None:
    """With the compass, and with the cab."""
    assert sky_of(reception(bins=BLOCKED)).sectors[0].label == "blocked: south-east"
    assert sky_of(reception(bins=BLOCKED), heading_deg=315.0).sectors[0].label == "blocked: rear"


def test_prediction_goes_beside() -> None:
    """Predicted satellites and a mask are passed on as they are."""
    predicted, mask = (SkySatellite("G07", 10, 20),), (SkyMaskCell(0, 90, 0, 40, 30, "metal"),)
    plot = sky_of(reception(), predicted=predicted, mask=mask)
    assert (plot.predicted, plot.mask) == (predicted, mask)


def test_a_drive_shows_no_sector() -> None:
    """The satellites are drawn, no side is."""
    plot = sky_of(reception(bins=BLOCKED, moving=600))
    assert plot.satellites
    assert not plot.sectors
