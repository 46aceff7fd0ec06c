"""What to mind where somebody can be hurt."""

from __future__ import annotations

import pytest

from backprobe.stages.walkround import cautions


@pytest.mark.parametrize(
    "word", ["parking brake", "neutral", "chocked", "PTO off", "nobody beneath", "exhaust", "agreed caller"]
)
def test_everything_before_a_crank_is_named(word: str):
    """Brake, neutral, chocks, PTO, nobody beneath, ventilation, an agreed caller."""
    assert word in cautions.BEFORE_CRANK


def test_the_maker_s_time_is_told_or_asked_for():
    """A switch is opened after it, never before."""
    assert cautions.before_isolating(None) == cautions.NO_MAKER_TIME
    assert "2.5 min after key-off" in cautions.before_isolating(2.5)


def test_high_voltage_and_restraint_give_way_to_the_maker():
    """Licensed persons, the maker's procedure, no figure of our own for a waiting time."""
    assert "licensed" in cautions.HIGH_VOLTAGE
    assert "orange" in cautions.HIGH_VOLTAGE
    assert "the maker's waiting time" in cautions.RESTRAINT
    assert not any(letter.isdigit() for letter in cautions.RESTRAINT)
