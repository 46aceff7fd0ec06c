"""The nominal constellation for any day."""

from __future__ import annotations

import math
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.limits.constellation import HOUR_ANGLE_DEG, SLOTS
from backprobe.physics.gps_time import gps_of, unix_of
from backprobe.physics.orbit import ecef_of
from backprobe.stages.mount.nominal import nominal_orbits, sidereal_deg

SIDEREAL_DAY_S = 86_164.0905


@given(st.integers(320_000_000, 4_000_000_000))
def test_the_table_holds_when_the_hour_angle_is_its_own(unix_s: int) -> None:
    """Slots are set at the last moment of that hour angle, within a sidereal day before the one that was asked for."""
    gps_s = gps_of(unix_s)
    toe_s = nominal_orbits(gps_s).sets[0].toe_s
    assert 0 <= gps_s - toe_s <= SIDEREAL_DAY_S + 1
    assert (sidereal_deg(unix_of(toe_s)) - HOUR_ANGLE_DEG + 180) % 360 - 180 == pytest.approx(
        0.0, abs=0.005
    )  # a leap second between


def test_a_slot_stands_where_the_table_says() -> None:
    """At toe a slot's longitude follows from node less hour angle, and its latitude is asin(sin 55° sin u)."""
    orbits = nominal_orbits(gps_of(datetime(2026, 3, 31, tzinfo=UTC).timestamp()))
    for each in orbits.sets:
        node_deg, u_deg = SLOTS[each.id]
        u, tilt = math.radians(u_deg), math.radians(55.0)
        x, y, z = ecef_of(each, each.toe_s)
        assert math.hypot(x, y, z) == pytest.approx(26_559_800.0, rel=1e-9)
        assert z / math.hypot(x, y, z) == pytest.approx(math.sin(tilt) * math.sin(u), abs=1e-9)
        east = node_deg - HOUR_ANGLE_DEG + math.degrees(math.atan2(math.cos(tilt) * math.sin(u), math.cos(u)))
        assert (math.degrees(math.atan2(y, x)) - east + 180) % 360 - 180 == pytest.approx(0.0, abs=1e-6)


def test_ground_tracks_repeat_every_sidereal_day() -> None:
    """After one turn of the earth every satellite stands over the same place again, to within 1 m."""
    for each in nominal_orbits(0.0).sets:
        day_s = 2 * math.pi / 7.2921151467e-5
        assert math.dist(ecef_of(each, each.toe_s), ecef_of(each, each.toe_s + day_s)) < 1.0
