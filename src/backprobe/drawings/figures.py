"""How a figure is written in a picture: fixed decimals, a true minus, and never without its unit."""

from __future__ import annotations

_TOO_LONG = 1e7  # beyond this a figure is written with a power of ten
_FINEST = 1e-9
MINUS = "−"


def figure_text(value: float, digits: int) -> str:
    """`value` with exactly `digits` decimals; very large ones with a power of ten.

    >>> figure_text(11.9, 2), figure_text(-0.001, 2), figure_text(-4.5, 1), figure_text(2.5e9, 0)
    ('11.90', '0.00', '−4.5', '2.5e9')
    """
    if abs(value) >= _TOO_LONG:
        return _power_of_ten(value).replace("-", MINUS)
    text = f"{round(value, digits) + 0.0:.{max(digits, 0)}f}"
    return text.replace("-", MINUS)


def _power_of_ten(value: float) -> str:
    mantissa, exponent = f"{value:.3e}".split("e")
    return f"{mantissa.rstrip('0').rstrip('.')}e{int(exponent)}"


def short_figure_text(value: float, digits: int) -> str:
    """`value` with at most `digits` decimals and no trailing zeros, for limits and ticks.

    >>> short_figure_text(9.0, 2), short_figure_text(0.30, 2), short_figure_text(100.0, 0)
    ('9', '0.3', '100')
    """
    text = figure_text(value, digits)
    return text.rstrip("0").rstrip(".") if "." in text and "e" not in text else text


def with_unit(figure: str, unit: str) -> str:
    """The figure with its unit after a space; alone where it has none."""
    return f"{figure} {unit}" if unit else figure


def nice_step(least: float) -> float:
    """The smallest of 1, 2, 5 times a power of ten that is at least `least` (which is above 0).

    The power comes from the decimal form of the number, not from a logarithm, whose last digit differs between
    interpreters.

    >>> nice_step(0.3), nice_step(2.0), nice_step(70)
    (0.5, 2.0, 100.0)
    """
    exponent = int(f"{least:e}".split("e")[1])
    for step in (f"{factor}e{exponent + over}" for over in (0, 1) for factor in (1, 2, 5)):
        if float(step) >= least:
            return float(step)
    return least


def step_digits(step: float) -> int:
    """How many decimals a multiple of `step` (1, 2 or 5 times a power of ten) needs."""
    return max(0, -int(f"{step:e}".split("e")[1]))


def ticks(low: float, high: float, *, step: float, most: int = 50) -> list[float]:
    """The multiples of `step` from `low` to `high`; none where there would be more than `most`.

    None either where the step is finer than any meter shows: its figures would not fit any picture.
    """
    if step < _FINEST or not 0 < (high - low) / step <= most or abs(low / step) > 1e9:
        return []
    first = -int(-low // step)
    found = [index * step for index in range(first, first + most + 2)]
    return [value for value in found if low <= value <= high]
