"""Size and resistance of copper wire."""

from __future__ import annotations

import math

IACS_OHM_MM2_PER_M = 0.017241
INFERRED_ZERO_C = 234.5
MIL_MM = 0.0254


def awg_diameter_mm(gauge: int) -> float:
    """Diameter of a solid wire of an American wire gauge; 0 is 1/0, -1 is 2/0, -3 is 4/0.

    d = 0.127 mm × 92^((36 - n) / 39). Source: ASTM B258, read in secondary documents.

    >>> round(awg_diameter_mm(18), 4), round(awg_diameter_mm(36), 3)
    (1.0237, 0.127)
    """
    return 0.127 * math.pow(92.0, (36 - gauge) / 39)


def circle_mm2(diameter_mm: float) -> float:
    """Area of a circle [mm²]."""
    return math.pi / 4 * diameter_mm * diameter_mm


def awg_area_mm2(gauge: int) -> float:
    """Copper area of a gauge [mm²]: that of its solid wire, which ASTM B258 lets stranded wire have as well.

    >>> round(awg_area_mm2(18), 4)
    0.823
    """
    return circle_mm2(awg_diameter_mm(gauge))


def circular_mils(area_mm2: float) -> float:
    """An area in circular mils: that of a circle of 0.001 inch across is one.

    >>> round(circular_mils(awg_area_mm2(18)), 1)
    1624.3
    """
    return area_mm2 / circle_mm2(MIL_MM)


def copper_ohm_per_m(area_mm2: float) -> float:
    """Resistance of a metre of annealed copper of 100 % IACS at 20 °C [Ω/m]: 0.017241 Ω·mm²/m over its area.

    Source: NBS Handbook 100 (1966), read in secondary documents.

    >>> round(copper_ohm_per_m(0.75), 6)
    0.022988
    """
    return IACS_OHM_MM2_PER_M / area_mm2


def copper_mm2(ohm_per_m: float) -> float:
    """The area of 100 % IACS copper that has `ohm_per_m` at 20 °C [mm²]: how much copper a resistance stands for."""
    return IACS_OHM_MM2_PER_M / ohm_per_m


def at_temperature_ohm(ohm_at_20C: float, temperature_C: float) -> float:
    """A copper resistance at another temperature than 20 °C [Ω]: R × (234.5 + T) / 254.5.

    Source: FAA AC 43.13-1B (2001) 11-66, which turns wire lengths by the same ratio; 1 / 254.5 is the 0.00393 per
    kelvin of NBS Handbook 100.

    >>> round(at_temperature_ohm(6.385, 75.0), 3)
    7.765
    """
    return ohm_at_20C * (INFERRED_ZERO_C + temperature_C) / (INFERRED_ZERO_C + 20.0)
