"""What a blade fuse resists, and what of it is from memory."""

from __future__ import annotations

import pytest

from backprobe.findings import Standing
from backprobe.limits.fuses import COLD_MOHM
from backprobe.stages.join.fuse_opening import fuse_of
from backprobe.stages.join.fuse_resistance import cold_mohm, fuse_ohm, fuse_words


def test_a_figure_that_was_read_is_taken_as_it_is():
    """10 A of type C has 7.69 mΩ cold: nothing to half more in use."""
    ohm = fuse_ohm(fuse_of(10))
    assert (ohm.low, ohm.likely, ohm.high) == (0.0, pytest.approx(0.00769), pytest.approx(0.011535))
    assert fuse_words(fuse_of(10)) == ""


def test_the_others_lie_on_the_line_through_those_that_were_read():
    """From 7.69 mΩ at 10 A to 1.44 at 40: slope ln(1.44 / 7.69) / ln 4 = -1.2085; 3 A: 7.69 × 0.3^-1.2085 = 32.9."""
    assert cold_mohm(fuse_of(3)) == pytest.approx(32.9, abs=0.05)
    assert cold_mohm(fuse_of(40)) == 1.44
    assert cold_mohm(fuse_of(15, "F")) == 4.58
    assert cold_mohm(fuse_of(5, "F")) == pytest.approx(4.58 * 3**1.2085, rel=1e-3)


def test_what_is_from_memory_is_shown_and_not_used():
    """3 A: 31.1 mΩ stands beside; of 1 A nobody remembers any."""
    assert fuse_words(fuse_of(3)) == "the fuse's 32.9 mΩ by our own model (31.1 mΩ from memory, unverified: not used)"
    assert fuse_words(fuse_of(1)) == "the fuse's 124 mΩ by our own model"


@pytest.mark.parametrize("row", [key for key, (_, how) in COLD_MOHM.items() if how is Standing.FROM_MEMORY], ids=str)
def test_the_model_reaches_what_is_remembered(row: tuple[str, float]):
    """No remembered figure lies above the high end, so that leaving them out hides no drop; most lie within a sixth."""
    kind, rating_A = row
    remembered = COLD_MOHM[row][0] / 1000.0
    ohm = fuse_ohm(fuse_of(rating_A, kind))
    assert remembered <= ohm.high
    assert ohm.likely == pytest.approx(remembered, rel=0.17)


def test_a_larger_fuse_never_resists_more():
    """Along the ratings of each type the figure falls."""
    for kind, ratings in (("C", (1, 2, 3, 5, 7.5, 10, 15, 20, 30, 40)), ("F", (2, 3, 5, 10, 15, 30))):
        mohm = [cold_mohm(fuse_of(rating, kind)) for rating in ratings]
        assert mohm == sorted(mohm, reverse=True)
