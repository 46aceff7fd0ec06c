"""Signs are weighed as a table of odds says."""

import math

import pytest

from backprobe.stages.probe.recording.signs import PRIOR, Sign, in_words, sureness


@pytest.mark.parametrize(
    ("signs", "odds"),
    [
        ([], -1.5),
        ([Sign.DEEP, Sign.STEEP, Sign.INRUSH, Sign.NO_RIPPLE, Sign.STAYS_AT_REST], -2.3),  # -1.5+1+0.5+0.7-2-1
        ([Sign.DEEP, Sign.STEEP, Sign.INRUSH, Sign.RIPPLE, Sign.STAYS_AT_REST], 2.2),  # -1.5+1+0.5+0.7+2.5-1
    ],
)
def test_weights_are_added_to_the_prior(signs, odds):
    """Probability = 1 / (1 + e^-odds)."""
    assert PRIOR == -1.5
    assert sureness(signs) == round(1 / (1 + math.exp(-odds)), 2)


def test_a_load_is_unlikely_and_a_start_nearly_sure():
    """A lift pump (no ripple, back to rest) stays below 0.2; a crank that ends in charging comes above 0.95."""
    pump = [Sign.MIDDLING, Sign.STEEP, Sign.INRUSH, Sign.NO_RIPPLE, Sign.STAYS_AT_REST]
    start = [Sign.DEEP, Sign.STEEP, Sign.INRUSH, Sign.RIPPLE, Sign.CHARGES]
    assert sureness(pump) < 0.2 < 0.95 < sureness(start)


def test_words_carry_figures_the_weightiest_first():
    """The ripple weighs more than the depth, the depth more than the steepness."""
    said = in_words([Sign.STEEP, Sign.DEEP, Sign.RIPPLE], {"fall_ms": 4.2, "depth_V": 1.946, "ripple_Hz": 8.04})
    assert said == ("a compression ripple of 8.0 Hz", "a deep fall (1.95 V)", "within 4 ms")


def test_no_two_signs_are_one():
    """Two rows of the table with the same weight and words would be a single sign."""
    assert len(list(Sign)) == len(Sign.__members__)
