"""How long an insulated wire stands a short circuit while no heat leaves it.

IEC 60364-5-54 (543.1.2) states the rule for up to 5 s. It leaves cooling out, so that for longer times it asks for more
copper than is needed: what holds by it holds.
"""

from __future__ import annotations

import math

VALID_TO_S = 5.0
COPPER_HEAT_J_PER_K_MM3 = 3.45e-3
COPPER_OHM_MM = 17.241e-6
COPPER_ZERO_C = 234.5


def k_factor(from_C: float, to_C: float) -> float:
    """The factor k of copper [A·√s/mm²] that is heated from `from_C` to `to_C`.

    k = √(Qc (β + 20) / ρ20 × ln((β + Tf) / (β + Ti))). Source: IEC 60364-5-54, Annex A, read in secondary documents.

    >>> round(k_factor(70, 160), 1), round(k_factor(90, 250), 1)
    (114.8, 142.9)
    """
    heat = COPPER_HEAT_J_PER_K_MM3 * (COPPER_ZERO_C + 20.0) / COPPER_OHM_MM
    return math.sqrt(heat * math.log((COPPER_ZERO_C + to_C) / (COPPER_ZERO_C + from_C)))


def withstands_s(current_A: float, *, area_mm2: float, k: float) -> float:
    """How long the wire stands `current_A` before its insulation is damaged [s]: (k S / I)².

    Source: IEC 60364-5-54, 543.1.2, read in secondary documents.

    >>> round(withstands_s(40.0, area_mm2=0.75, k=115), 2)
    4.65
    """
    return math.pow(k * area_mm2 / current_A, 2)


def least_area_mm2(current_A: float, *, time_s: float, k: float) -> float:
    """The least copper area that stands `current_A` for `time_s` [mm²]: √(I² t) / k. Source: as above.

    >>> round(least_area_mm2(3000, time_s=0.4, k=115), 1)
    16.5
    """
    return current_A * math.sqrt(time_s) / k
