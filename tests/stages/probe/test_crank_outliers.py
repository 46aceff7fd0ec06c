"""A crank reading that is too good beside those of the other wires."""

from __future__ import annotations

import pytest
from tests.samples.wire_readings import SETUP, SUPPLY, reading, rows

from backprobe.stages.probe.belief import believe
from backprobe.stages.probe.crank_outliers import AGREE_V, APART_V, set_outliers_aside


def doubted(*cranks: float, beside: float) -> tuple[float, ...]:
    """The crank values set aside on Red, which showed `cranks` by MIN; another wire showed `beside`."""
    red = (*rows("Red", SUPPLY, without="crank"), *(reading("Red", "crank", volts, "min") for volts in cranks))
    blue = (*rows("Blue", SUPPLY, without="crank"), reading("Blue", "crank", beside, "min"))
    beliefs = [
        believe("Red", red, others=blue, setup=SETUP),
        believe("Blue", blue, others=red, setup=SETUP),
    ]
    return tuple(each.volts for each in set_outliers_aside(beliefs, SETUP)[0].doubtful)


def test_far_above_every_other_wire_is_set_aside():
    """12.0 V where the other wire went to 10.2 V: likelier '10.2' written wrongly."""
    assert doubted(12.0, beside=10.2) == (12.0,)


@pytest.mark.parametrize("above_V", [0.0, APART_V - 0.1])
def test_wires_differ_a_little(above_V):
    """Up to a volt apart nothing is doubted."""
    assert doubted(10.2 + above_V, beside=10.2) == ()


def test_a_second_value_close_by_confirms_it():
    """Two cranks that agree are believed, however good."""
    assert doubted(12.0, 12.0 - AGREE_V + 0.1, beside=10.2) == ()


def test_a_poor_wire_is_never_set_aside_for_being_poor():
    """Only what is too good needs a second look; too low counts at once."""
    assert doubted(8.0, beside=11.0) == ()
