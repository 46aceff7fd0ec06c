"""What a wave loses that bends round an edge.

Recommendation ITU-R P.526, single knife-edge obstacle (the formula as public source code quotes it, P.2001 3.12 among
it): J = 6.9 + 20 log10(√((ν − 0.1)² + 1) + ν − 0.1) dB above ν = −0.78. For a sender as far as a satellite, ν = θ √(2
d / λ): θ is the angle by which the wave must bend, d the distance from the edge to the receiver, λ the wavelength.
"""

from __future__ import annotations

import math

L1_WAVELENGTH_M = 299_792_458.0 / 1_575.42e6
_NOTHING_BELOW = -0.78


def knife_edge_dB(nu: float) -> float:
    """The loss by ν; at the very edge of the shadow, ν = 0, it is 6 dB.

    >>> round(knife_edge_dB(0.0), 1), knife_edge_dB(-1.0)
    (6.0, 0.0)
    """
    if nu <= _NOTHING_BELOW:
        return 0.0
    shifted = nu - 0.1
    return 6.9 + 20 * math.log10(math.sqrt(shifted * shifted + 1) + shifted)


def bending_dB(angle_rad: float, *, edge_m: float, wavelength_m: float = L1_WAVELENGTH_M) -> float:
    """The loss of a satellite's wave that bends by an angle round an edge at a distance from the receiver.

    >>> round(bending_dB(math.radians(10.0), edge_m=1.0), 1)
    10.8
    """
    return knife_edge_dB(angle_rad * math.sqrt(2 * edge_m / wavelength_m))
