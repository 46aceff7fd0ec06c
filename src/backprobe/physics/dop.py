"""Dilution of precision: by how much the geometry of the satellites widens the error of a position.

With a row (e, n, u, 1) for each satellite in the matrix A, where (e, n, u) is the unit vector to it, the covariance is
Q = (AᵀA)⁻¹, and HDOP = √(q11 + q22), VDOP = √q33, PDOP = √(q11 + q22 + q33), TDOP = √q44, GDOP = √(trace Q). Clock and
position are parted first: the upper left 3 × 3 of Q is the inverse of AᵀA's own less the part that the clock takes up.
Definition as printed by inventeksys.com; the parting is the Schur complement.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from backprobe.physics.geodesy import Vector

LEAST_SATELLITES = 4
_FLAT = 1e-9  # a determinant below this: the satellites lie in one plane or cone, no position follows


@dataclass(frozen=True, slots=True)
class Dop:
    """The five dilutions of one set of satellites."""

    gdop: float
    pdop: float
    hdop: float
    vdop: float
    tdop: float


def dop(directions: Iterable[Vector]) -> Dop | None:
    """The dilutions of the satellites in these directions (unit vectors east, north, up); None where no fix follows.

    One overhead and three 30° high and 120° apart give HDOP 4/3:

    >>> from backprobe.physics.geodesy import east_north_up
    >>> found = dop([(0.0, 0.0, 1.0), *(east_north_up(az, 30.0) for az in (0, 120, 240))])
    >>> round(found.hdop, 4), round(found.pdop, 4)
    (1.3333, 2.6667)
    """
    rows = list(directions)
    found = planar(rows)
    if found is None:
        return None
    h2, v2, t2 = found
    p2 = h2 + v2
    return Dop(math.sqrt(p2 + t2), math.sqrt(p2), math.sqrt(h2), math.sqrt(v2), math.sqrt(t2))


def planar(rows: list[Vector]) -> tuple[float, float, float] | None:
    """HDOP², VDOP² and TDOP² of these directions; None with fewer than four, or where they are of no use together."""
    count = len(rows)
    if count < LEAST_SATELLITES:
        return None
    se = sn = su = ee = en = eu = nn = nu = uu = 0.0
    for e, n, u in rows:
        se += e
        sn += n
        su += u
        ee += e * e
        en += e * n
        eu += e * u
        nn += n * n
        nu += n * u
        uu += u * u
    me, mn, mu = se / count, sn / count, su / count
    ee -= se * me
    en -= se * mn
    eu -= se * mu
    nn -= sn * mn
    nu -= sn * mu
    uu -= su * mu
    a, b, c = nn * uu - nu * nu, nu * eu - en * uu, en * nu - nn * eu
    det = ee * a + en * b + eu * c
    if det < _FLAT:
        return None
    d, f, g = ee * uu - eu * eu, ee * nn - en * en, en * eu - ee * nu
    across = me * (me * a + 2 * (mn * b + mu * c)) + mn * (mn * d + 2 * mu * g) + mu * mu * f
    return (a + d) / det, f / det, 1 / count + across / det
