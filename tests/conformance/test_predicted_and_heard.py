"""What was predicted of a place and what a receiver hears there say the same: which side is blocked, and how good the
fix is.

The receiver is invented: it hears what the prediction's orbits, losses and open sky leave, with noise, and writes a
log. Prediction and log are then judged by two parts of the product that share nothing but the open sky's curve.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from tests.samples.mount import sheet
from tests.samples.navigation import START_S, constellation
from tests.samples.nmea import gga, gsv, rmc, sentence

from backprobe.evidence.mount_sheet import MountPlace, Part, Side
from backprobe.evidence.orbits import Orbits
from backprobe.evidence.reception import Reception
from backprobe.findings import Verdict
from backprobe.physics.dop import dop
from backprobe.physics.geodesy import az_el_deg
from backprobe.physics.orbit import Observer
from backprobe.stages.mount.beside import beside_finding, measured_by_log
from backprobe.stages.mount.heard import Case, losses_dB, open_sky_dBHz
from backprobe.stages.mount.mask import CELL_DEG, COLUMNS, mask_of
from backprobe.stages.mount.predict import Site, predict, sky_of
from backprobe.stages.mount.reception.listen import reception_of
from backprobe.stages.mount.reception.sector import blocked_sectors
from backprobe.stages.mount.satellites import satellites_of

LAT, LON = 48.117, 11.517
SATELLITES = constellation(31)
ORBITS = Orbits(file="invented", kind="invented", good_for_s=7200.0, sets=SATELLITES)
WALL = Part(material="metal", side=Side.LEFT, away_mm=400, to_mm=2500)
BESIDE_A_WALL = MountPlace(name="beside a metal wall", parts=(WALL,), cover=("plastic",), elsewhere="open")
IN_THE_OPEN = replace(BESIDE_A_WALL, name="in the open", parts=())
HEARD_FROM_DBHZ, USED_FROM_DBHZ = 20.0, 30.0


def log_of(place: MountPlace, *, heading_deg: float, minutes: int = 60) -> Reception:
    """What a receiver at the place hears in an hour from 9 h UTC on, every 20 s."""
    rng, observer = Random(7), Observer(LAT, LON)
    losses = losses_dB(mask_of(place), Case.USUAL)
    lines: list[str] = []
    for step in range(minutes * 3):
        at_s = 9 * 3600 + 20 * step
        rows: list[tuple[int, int, int, int | None]] = []
        used = []
        for each in SATELLITES:
            direction = observer.direction(each, START_S + at_s)
            az, el = az_el_deg(direction)
            if el < 5:
                continue
            loss = losses[int(el / CELL_DEG)][int((az - heading_deg) % 360 / CELL_DEG) % COLUMNS]
            level = open_sky_dBHz(el) - loss + rng.gauss(0, 1.2)
            rows.append(
                (int(each.id[1:]), round(el), round(az) % 360, round(level) if level >= HEARD_FROM_DBHZ else None)
            )
            used += [(int(each.id[1:]), direction)] if level >= USED_FROM_DBHZ else []
        fix = dop([direction for _, direction in used])
        stamp = f"{at_s // 3600:02d}{at_s // 60 % 60:02d}{at_s % 60:02d}.00"
        here = f"4807.{380 + rng.randint(-3, 3):04d},N,01131.{rng.randint(0, 6):04d},E"
        hdop = "99.9" if fix is None else f"{fix.hdop:.1f}"
        numbers = [f"{number:02d}" for number, _ in used][:12]
        lines.append(gga(stamp, quality=int(fix is not None), used=len(used), hdop=hdop, place=here))
        lines.append(
            sentence(f"GPGSA,A,{3 if fix else 1},{','.join(numbers + [''] * (12 - len(numbers)))},2.0,{hdop},1.6")
        )
        lines += gsv(rows)
        lines.append(rmc(stamp, valid=fix is not None, place=here))
    return reception_of(lines, file="reception.nmea")


@pytest.mark.parametrize("heading", [0.0, 120.0])
def test_the_blocked_side_is_the_one_that_was_described(heading: float) -> None:
    """A metal wall to the left: the log's blocked sector holds the bearing of the left side, 90° before the front."""
    left = (heading - 90) % 360
    found = blocked_sectors(log_of(BESIDE_A_WALL, heading_deg=heading).bins)
    assert found
    assert any((left - each.from_deg) % 360 <= (each.to_deg - each.from_deg) % 360 for each in found)
    assert not blocked_sectors(log_of(IN_THE_OPEN, heading_deg=heading).bins)


def test_what_is_heard_is_what_was_predicted() -> None:
    """An hour's HDOP keeps within what is predicted for 95 % of a day; a sheet that forgot the wall is caught by it."""
    site = Site(LAT, LON, START_S)
    wanted = sheet(BESIDE_A_WALL, IN_THE_OPEN, heading_deg=0.0)
    walled, opened = predict(wanted, sky_of(satellites_of(ORBITS), site))
    heard = measured_by_log(log_of(BESIDE_A_WALL, heading_deg=0.0))
    assert heard is not None
    assert beside_finding(walled, heard).verdict in (Verdict.HOLDS, Verdict.THIN)
    assert beside_finding(opened, heard).verdict is Verdict.FAILS
