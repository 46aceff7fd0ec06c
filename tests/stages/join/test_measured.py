"""Resistances from what was read."""

from __future__ import annotations

import pytest

from backprobe.evidence.join_sheet import Drop
from backprobe.limits.meters import METERS
from backprobe.stages.join.measured import read_mV, read_ohm


def test_a_reading_of_millivolts():
    """100 mV, ±(0.5 % + 2 counts of 1 mV) = ±2.5 mV; 100.5 mV was read to 0.1 mV: ±(0.5025 + 0.2) mV."""
    coarse, fine = read_mV(100.0, METERS["basic"]), read_mV(100.5, METERS["basic"])
    assert (coarse.low, coarse.high) == pytest.approx((97.5, 102.5))
    assert fine.high == pytest.approx(101.2025)


def test_resistance_by_the_ends_of_both():
    """100 mV at 5 A ±5 %: 97.5 / 5.25, 100 / 5, 102.5 / 4.75 mΩ."""
    assert read_ohm(Drop(100, 5), METERS["basic"]).rounded(5) == {"low": 0.01857, "likely": 0.02, "high": 0.02158}
