"""A figure as somebody wrote it: value, unit, and what one count of its last digit is worth."""

from __future__ import annotations

import re
from dataclasses import dataclass

_FIGURE = re.compile(
    r"\s*(?P<sign>[+-]?)(?P<whole>[0-9]{0,15})(?:[.,](?P<part>[0-9]{0,15}))?(?:[eE](?P<power>[+-]?[0-9]{1,2}))?"
    r"\s*(?P<unit>[^\s0-9.,+-][^0-9]{0,11})?\s*",
    re.ASCII,
)

VOLT_UNITS = {"v": 0, "volt": 0, "volts": 0, "vdc": 0, "v dc": 0, "v=": 0, "mv": -3, "mvdc": -3, "mv dc": -3}


@dataclass(frozen=True, slots=True)
class Figure:
    """`mantissa` × 10^`power` as written, `decimals` of the mantissa, and the unit text behind it ('' if none)."""

    mantissa: str
    power: int
    decimals: int
    unit: str

    def value(self, shift: int = 0) -> float:
        """The value times 10^`shift`, rounded once, so that '350' with -3 is exactly the float 0.35.

        >>> read_figure("350 mV").value(-3)
        0.35
        """
        return float(f"{self.mantissa}e{self.power + shift}")

    def count(self, shift: int = 0) -> float:
        """One count of the last digit written, times 10^`shift`.

        >>> read_figure("12.30").count(), read_figure("12").count()
        (0.01, 1.0)
        """
        return float(f"1e{self.power - self.decimals + shift}")


def read_figure(text: str) -> Figure | None:
    """The figure that `text` holds, with decimal point or decimal comma and a unit behind it; None for anything else.

    Thousands separators, infinities and 'nan' are no figures.

    >>> read_figure("12,30 V")
    Figure(mantissa='12.30', power=0, decimals=2, unit='V')
    >>> read_figure("1.234,5") is None
    True
    """
    match = _FIGURE.fullmatch(text.replace("−", "-"))
    if match is None:
        return None
    sign, whole, part, power, unit = match.group("sign", "whole", "part", "power", "unit")
    if not whole and not part:
        return None
    mantissa = sign + (whole or "0") + ("." + part if part else "")
    return Figure(mantissa, int(power or 0), len(part or ""), (unit or "").strip())
