"""The resistances around a job's loop."""

from __future__ import annotations

import pytest
from tests.samples.wiring import GOOD, ON_RED, POWER, told

from backprobe.stages.join.fuse_opening import fuse_of
from backprobe.stages.join.measured import UNREAD_GROUND_OHM
from backprobe.stages.join.wiring_case import fuse_ohm, ground_ohm, lead_ohm, to_unit_ohm


def test_a_lead_is_reckoned_hot():
    """2 m of 0.75 mm² at 60 °C: 2 × 26 mΩ × (234.5 + 60) / 254.5 = 60.2 mΩ."""
    ohm = lead_ohm(POWER, ON_RED, ambient_C=60.0)
    assert ohm is not None
    assert ohm.likely == pytest.approx(0.0602, abs=0.0001)


def test_a_ground_that_nobody_read_is_wide():
    """As read: 14 mV at 2 A are 7 mΩ; else what works in vehicles."""
    assert ground_ohm(GOOD).likely == pytest.approx(0.007)
    assert ground_ohm(told(ground=None)) == UNREAD_GROUND_OHM


def test_a_fuse_whose_own_figure_is_missing_has_that_of_a_smaller_one():
    """10 A has 7.69 mΩ; 1 A counts with twice the 53.5 mΩ of 2 A."""
    assert fuse_ohm(fuse_of(10)).likely == pytest.approx(0.00769)
    assert fuse_ohm(fuse_of(1)).likely == pytest.approx(0.107)


def test_the_way_to_the_unit_and_back():
    """Lead 60.2, ground lead 30.1, fuse 31.1, two joints of 2, ground 7 mΩ."""
    ohm = to_unit_ohm(GOOD, POWER, joint=ON_RED, fuse=fuse_of(3))
    assert ohm is not None
    assert ohm.likely == pytest.approx(0.1324, abs=0.0002)
    assert ohm.low < ohm.likely < ohm.high
