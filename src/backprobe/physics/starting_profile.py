"""The supply voltage while the starter turns, as ISO 16750-2 (4.6.3) draws it for a test bench.

From rest the voltage falls into a short trough (the starter's inrush), climbs to a plateau that is held with a
ripple on top while the engine is turned, and rises back to rest. The shape was read in test files that reproduce
the standard, not in the standard itself; there the middle of the ripple lies half its height above the plateau's
figure, so that this figure is the ripple's lowest point.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class StartingProfile:
    """The figures of one level, in V and s; the standard's own names stand behind them.

    `ripple_pp_V` is peak to peak. 2 Hz and 2 V are the standard's figures (read in a secondary document).
    """

    rest_V: float  # UB
    trough_V: float  # US6
    plateau_V: float  # US
    fall_s: float  # tf
    trough_s: float  # t6
    climb_s: float  # t7
    plateau_s: float  # t8
    rise_s: float  # tr
    ripple_Hz: float = 2.0
    ripple_pp_V: float = 2.0

    @property
    def crank_s(self) -> float:
        """From the beginning of the fall to the beginning of the rise [s]."""
        return math.fsum((self.fall_s, self.trough_s, self.climb_s, self.plateau_s))


def lowest_V(profile: StartingProfile) -> float:
    """The lowest voltage of the profile [V]."""
    return min(profile.trough_V, profile.plateau_V)


def voltage_at(profile: StartingProfile, time_s: float) -> float:
    """The voltage [V] at `time_s`, counted from the beginning of the fall; the rest voltage before and afterwards.

    >>> level_1 = StartingProfile(
    ...     rest_V=12, trough_V=8, plateau_V=9.5, fall_s=0.005, trough_s=0.015, climb_s=0.05, plateau_s=1, rise_s=0.04
    ... )
    >>> [round(voltage_at(level_1, time_s), 2) for time_s in (-1, 0.0025, 0.01, 0.045, 0.07, 0.32, 1.09, 2)]
    [12.0, 10.0, 8.0, 8.75, 9.5, 11.5, 10.75, 12.0]
    """
    if time_s <= 0.0:
        return float(profile.rest_V)
    left_s = time_s
    for length_s, from_V, to_V in _ramps(profile):
        if left_s < length_s:
            return from_V + (to_V - from_V) * left_s / length_s
        left_s -= length_s
    if left_s < profile.plateau_s:
        return _on_plateau(profile, left_s)
    left_s -= profile.plateau_s
    if left_s >= profile.rise_s:
        return float(profile.rest_V)
    from_V = _on_plateau(profile, profile.plateau_s)
    return from_V + (profile.rest_V - from_V) * left_s / profile.rise_s


def _ramps(profile: StartingProfile) -> tuple[tuple[float, float, float], ...]:
    """Everything before the plateau: length, voltage at its beginning and at its end."""
    return (
        (profile.fall_s, profile.rest_V, profile.trough_V),
        (profile.trough_s, profile.trough_V, profile.trough_V),
        (profile.climb_s, profile.trough_V, profile.plateau_V),
    )


def _on_plateau(profile: StartingProfile, since_s: float) -> float:
    """The voltage `since_s` after the plateau's beginning, where the ripple starts at its lowest point."""
    swing = 1.0 - math.cos(2.0 * math.pi * profile.ripple_Hz * since_s)
    return profile.plateau_V + 0.5 * profile.ripple_pp_V * swing
