"""A starting profile as samples."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import (
    GOOD,
    found,
)

from backprobe.findings import Verdict
from backprobe.stages.join.level_waveform import level_waveform


def test_a_level_from_memory_decides_nothing():
    """Level II at 12 V is from memory: 4.5 V would fail, but it is open and said."""
    reset = found(replace(GOOD, supply_crank=level_waveform("II", system_V=12)))["join_unit_reset"]
    assert reset.verdict is Verdict.OPEN
    assert "from memory" in reset.because
