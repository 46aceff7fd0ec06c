"""The nominal constellation of the GPS performance standard as orbits for any day.

Its ground tracks repeat every sidereal day, which is what the satellites are steered for: so the table of slots holds
each day at the moment when the Greenwich hour angle is the table's own. Nodes and perigees do drift with the years;
therefore it tells how a day goes on the whole, not which satellite stands where at a given minute.
"""

from __future__ import annotations

import math

from backprobe.evidence.orbits import Elements, Orbits
from backprobe.limits.constellation import BASIS, HALF_AXIS_KM, HOUR_ANGLE_DEG, INCLINATION_DEG, SLOTS
from backprobe.physics.gps_time import DAY_S, WEEK_S, unix_of
from backprobe.physics.orbit import EARTH_RATE_RAD_S, MU_M3_S2

KIND = "nominal constellation"
_J2000_UNIX_S = 946_728_000  # 1 January 2000, 12 h


def sidereal_deg(unix_s: float) -> float:
    """The Greenwich hour angle of the equinox [degrees], for which UTC does: it is wrong by 0.004° at most.

    The mean sidereal time of 1982, 280.46061837° + 360.98564736629° a day from noon of 1 January 2000 (from memory).
    For 1 July 1993, 0 h, the performance standard of 2001 prints 18 h 36 min 14.4 s, which are 279.06°:

    >>> round(sidereal_deg(741_484_800), 2)
    279.06
    """
    return (280.46061837 + 360.98564736629 * (unix_s - _J2000_UNIX_S) / DAY_S) % 360.0


def nominal_orbits(gps_s: float) -> Orbits:
    """The 24 slots as orbits that hold from the moment at or before `gps_s` when the hour angle is the table's."""
    past_deg = (sidereal_deg(unix_of(gps_s)) - HOUR_ANGLE_DEG) % 360.0
    toe_s = gps_s - math.radians(past_deg) / EARTH_RATE_RAD_S
    return Orbits(
        file=BASIS,
        kind=KIND,
        good_for_s=math.inf,
        sets=tuple(_slot(name, toe_s, place=place) for name, place in SLOTS.items()),
    )


def _slot(name: str, toe_s: float, *, place: tuple[float, float]) -> Elements:
    """A slot's elements; its mean motion is forced to two turns in a sidereal day, which the half axis gives nearly."""
    node_deg, latitude_deg = place
    half_axis_m = HALF_AXIS_KM * 1000.0
    east_rad = math.radians(node_deg - HOUR_ANGLE_DEG)
    return Elements(
        id=name,
        toe_s=toe_s,
        sqrt_a=math.sqrt(half_axis_m),
        e=0.0,
        i0_rad=math.radians(INCLINATION_DEG),
        omega0_rad=east_rad + EARTH_RATE_RAD_S * (toe_s % WEEK_S),
        omega_rad=0.0,
        m0_rad=math.radians(latitude_deg),
        delta_n_rad_s=2 * EARTH_RATE_RAD_S - math.sqrt(MU_M3_S2 / half_axis_m**3),
    )
