"""Figures that somebody typed: whether they can be meant, and how they are said back."""

from __future__ import annotations

from backprobe.errors import OptionError


def within(value: float, *, what: str, unit: str, least: float, most: float) -> float:
    """`value`, if it lies between `least` and `most`. Raises OptionError, also for what is not a number.

    >>> within(5.0, what="a lead", unit="m", least=0.001, most=100)
    5.0
    """
    if least <= value <= most:
        return value
    raise OptionError(f"{what} of {value:g} {unit}: {least:g} to {most:g} {unit} is expected")


def above_nothing(value: float, *, what: str, unit: str, most: float) -> float:
    """`value`, if it is more than 0 and at most `most`. Raises OptionError, also for what is not a number."""
    if 0.0 < value <= most:
        return value
    raise OptionError(f"{what} of {value:g} {unit}: more than 0 and at most {most:g} {unit} is expected")


def said(value: float) -> str:
    """A figure in words, to three digits that count, never with an exponent above 0.

    >>> said(0.03449), said(15.49), said(1234.5)
    ('0.0345', '15.5', '1234')
    """
    return f"{value:.3g}" if value < 1000.0 else f"{value:.0f}"
