"""What a figure was before it was written down wrongly."""

from __future__ import annotations

import pytest

from backprobe.stages.probe.slips import originals


def volts(typed: str) -> set[float]:
    """The volts that a figure may have been."""
    return {round(value, 2) for value, _ in originals(typed)}


@pytest.mark.parametrize(
    ("typed", "was"),
    [("1.24", 12.4), ("124.0", 12.4), ("21.40", 12.4), ("12.04", 12.4), ("2.40", 12.4), ("1.40", 12.4)],
)
def test_a_common_slip_leads_back_to_the_figure(typed, was):
    """A moved comma, two digits swapped, a digit left out."""
    assert was in volts(typed)


@pytest.mark.parametrize("typed", ["350 mV", "-0.20", "12", "", "abc", ".5", "1.2.3"])
def test_what_is_no_plain_figure_has_no_slips(typed):
    """Nothing is guessed from a unit, a sign or a figure without decimals."""
    assert originals(typed) == ()


def test_a_decimal_comma_is_read_alike():
    """'1,24' may have been the same as '1.24'."""
    assert originals("1,24") == originals("1.24")


def test_every_slip_is_rare():
    """All slips together are a few per mille, each weight positive."""
    weights = [weight for _, weight in originals("12.40")]
    assert min(weights) > 0.0
    assert sum(weights) < 0.05
