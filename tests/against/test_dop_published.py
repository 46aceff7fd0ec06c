"""Dilution of precision against published examples and real receivers.

Sources: gnss_lib_py (Stanford NAV Lab), its own tests of DOP: five satellites with the whole matrix worked by hand; a
course in satellite geodesy whose test is worked by hand (zenith and four at 30°); receivers' own sentences from NOAA
research ships (ATOMIC 2020, PISTON 2019; public domain), whose sky angles are whole degrees: there ± 0.1 is allowed.
"""

from __future__ import annotations

import math

import pytest

from backprobe.physics.dop import dop
from backprobe.physics.geodesy import east_north_up

# used satellites as (elevation, azimuth), then PDOP, HDOP, VDOP as the receiver printed them
SHIPS = [
    ([(68, 160), (47, 299), (48, 343), (42, 200), (11, 37), (47, 38)], (2.7, 1.5, 2.3)),
    ([(43, 285), (40, 34), (18, 42), (27, 193), (44, 141), (65, 131)], (2.5, 1.2, 2.3)),
    ([(43, 189), (36, 319), (53, 342), (21, 253), (58, 229), (66, 167), (30, 28)], (2.7, 1.4, 2.4)),
]


def test_five_satellites_worked_by_hand() -> None:
    """GDOP √(23/3), HDOP √(25/6 - √2), VDOP √(9/4 + √2), TDOP √(5/4): the example of gnss_lib_py."""
    found = dop([east_north_up(az, el) for el, az in ((0, 0), (0, 90), (45, 180), (45, 270), (90, 0))])
    assert found is not None
    assert found.gdop == pytest.approx(math.sqrt(23 / 3), abs=1e-9)
    assert found.hdop == pytest.approx(math.sqrt(25 / 6 - math.sqrt(2)), abs=1e-9)
    assert found.vdop == pytest.approx(math.sqrt(9 / 4 + math.sqrt(2)), abs=1e-9)
    assert found.tdop == pytest.approx(math.sqrt(5 / 4), abs=1e-9)


def test_zenith_and_four() -> None:
    """HDOP √(4/3), VDOP √5, PDOP √(19/3), GDOP √(25/3), TDOP √2."""
    found = dop([(0.0, 0.0, 1.0), *(east_north_up(az, 30.0) for az in (0, 90, 180, 270))])
    assert found is not None
    assert [found.hdop**2, found.vdop**2, found.pdop**2, found.gdop**2, found.tdop**2] == pytest.approx(
        [4 / 3, 5, 19 / 3, 25 / 3, 2], abs=1e-9
    )


@pytest.mark.parametrize(("sky", "printed"), SHIPS)
def test_real_receivers(sky: list[tuple[float, float]], printed: tuple[float, ...]) -> None:
    """What ships' receivers printed beside the satellites that they used."""
    found = dop([east_north_up(az, el) for el, az in sky])
    assert found is not None
    assert (found.pdop, found.hdop, found.vdop) == pytest.approx(printed, abs=0.1)
