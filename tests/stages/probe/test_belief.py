"""What the readings on one wire say about it."""

from __future__ import annotations

import math

import pytest
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows

from backprobe.evidence.keys import Key
from backprobe.stages.probe.belief import believe
from backprobe.stages.probe.roles import Role


def belief(*readings, others=()):
    """The belief about a wire of these readings."""
    return believe("Red", readings, others=others, setup=SETUP)


def test_without_readings_the_roles_are_as_common_as_they_are():
    """Nothing seen, nothing learnt: the roles sum to one."""
    assert math.fsum(belief().roles.values()) == pytest.approx(1.0)


@pytest.mark.parametrize(("shown", "role"), [(SUPPLY, Role.CONSTANT), (IGNITION, Role.IGNITION)])
def test_a_full_row_makes_the_role_sure(shown, role):
    """Five or six readings that all fit leave little doubt."""
    assert belief(*rows("Red", shown)).roles[role] > 0.95


def test_the_order_of_readings_does_not_matter():
    """Evidence is evidence, whenever it came."""
    readings = rows("Red", SUPPLY)
    assert belief(*readings).roles == pytest.approx(belief(*reversed(readings)).roles)


def test_a_figure_that_fits_nothing_is_doubted_not_believed():
    """1.24 V at key on among five readings of a constant."""
    slip = reading("Red", "on", 1.24)
    found = belief(*rows("Red", SUPPLY, without="on"), slip)
    assert found.doubtful == (slip,)
    assert found.at(Key.ON) == ()


def test_one_reading_alone_is_never_doubted():
    """There is nothing yet that it could contradict."""
    assert belief(reading("Red", "on", 1.24)).doubtful == ()


def test_a_load_tells_a_feed_from_a_pulled_up_line():
    """Battery level without load says little; holding it at 1.5 A says that it can feed."""
    bare = belief(reading("Red", "on", 12.1))
    fed = belief(reading("Red", "on", 12.1), reading("Red", "on", 12.0, load_A=1.5))
    dropped = belief(reading("Red", "on", 12.1), reading("Red", "on", 0.1, load_A=1.5))
    assert fed.roles[Role.SIGNAL] < bare.roles[Role.SIGNAL] < dropped.roles[Role.SIGNAL]


def test_volts_at_a_position_are_the_median_without_load():
    """A loaded reading and a doubtful one do not count."""
    found = belief(reading("Red", "on", 12.4), reading("Red", "on", 12.2), reading("Red", "on", 11.9, load_A=2.0))
    assert found.volts(Key.ON) == pytest.approx((12.4 + 12.2) / 2)
    assert found.volts(Key.CRANK) is None
