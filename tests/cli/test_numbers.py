"""Figures and gauges from the command line."""

import argparse

import pytest

from backprobe.cli.numbers import figure, gauge, written


@pytest.mark.parametrize(
    ("text", "value"), [("0.75", 0.75), ("0,75", 0.75), ("-3", -3.0), ("12.60", 12.6), ("1e-3", 0.001)]
)
def test_figures_as_people_write_them(text, value):
    """Decimal point or comma, a sign, a power of ten."""
    assert figure(text) == value


def test_a_figure_keeps_what_its_last_digit_is_worth():
    """12.60 was read to 0.01, 12.6 to 0.1."""
    assert (written("12.60").count(), written("12.6").count()) == (0.01, 0.1)


@pytest.mark.parametrize("text", ["", "nan", "inf", "-inf", "five", "5 m", "12V", "1_0", "0x10", "1.2.3", "1,234.5"])
def test_what_is_no_plain_figure_is_refused(text):
    """Units stand in the option's name, so that they never mix."""
    with pytest.raises(argparse.ArgumentTypeError, match="is no plain number"):
        figure(text)


@pytest.mark.parametrize(
    ("text", "number"), [("18", 18), ("18AWG", 18), ("0", 0), ("1/0", 0), ("2/0", -1), ("4/0 AWG", -3)]
)
def test_gauges_as_the_trade_writes_them(text, number):
    """Thick gauges are counted in zeros."""
    assert gauge(text) == number


@pytest.mark.parametrize("text", ["", "0.75", "-18", "0/0", "x/0", "AWG", "18.0", "1/1"])
def test_what_is_no_gauge_is_refused(text):
    """A decimal is hinted at square millimetres."""
    with pytest.raises(argparse.ArgumentTypeError, match="square millimetres go with --mm2"):
        gauge(text)
