"""The resistances around a job's loop."""

from __future__ import annotations

import pytest
from tests.samples.wiring import GOOD, ON_RED, POWER, told

from backprobe.stages.join.measured import UNREAD_GROUND_OHM
from backprobe.stages.join.wiring_case import ground_ohm, lead_ohm


def test_a_lead_is_reckoned_hot():
    """2 m of 0.75 mm² at 60 °C: 2 × 26 mΩ × (234.5 + 60) / 254.5 = 60.2 mΩ."""
    ohm = lead_ohm(POWER, ON_RED, ambient_C=60.0)
    assert ohm is not None
    assert ohm.likely == pytest.approx(0.0602, abs=0.0001)


def test_a_ground_that_nobody_read_is_wide():
    """As read: 14 mV at 2 A are 7 mΩ; else what works in vehicles."""
    assert ground_ohm(GOOD).likely == pytest.approx(0.007)
    assert ground_ohm(told(ground=None)) == UNREAD_GROUND_OHM
