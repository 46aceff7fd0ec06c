"""Figures and sizes from the command line; argparse turns what is refused here into an error in plain words."""

from __future__ import annotations

import argparse

from backprobe.formats.figures import Figure, read_figure


def written(text: str) -> Figure:
    """A figure as it was typed, with decimal point or decimal comma and no unit."""
    figure = read_figure(text)
    if figure is None or figure.unit:
        raise argparse.ArgumentTypeError(f"'{text}' is no plain number, such as 0.75; its unit is in the option")
    return figure


def figure(text: str) -> float:
    """The value of a figure."""
    return written(text).value()


def gauge(text: str) -> int:
    """An American wire gauge: 18, or 2/0, which is -1."""
    plain = text.strip().lower().removesuffix("awg").strip()
    zeros = plain.removesuffix("/0") if plain.endswith("/0") else None
    if zeros is not None and zeros.isdecimal() and int(zeros) > 0:
        return 1 - int(zeros)
    if not plain.isdecimal():
        raise argparse.ArgumentTypeError(f"'{text}' is no gauge, such as 18 or 2/0; square millimetres go with --mm2")
    return int(plain)
