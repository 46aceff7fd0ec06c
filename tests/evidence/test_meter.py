"""A meter's figures are those of its data sheet; what it can capture has a plain default."""

from __future__ import annotations

import dataclasses

import pytest

from backprobe.evidence.keys import Capture
from backprobe.evidence.meter import Meter


def test_a_plain_meter_cannot_log() -> None:
    """Display, MIN and MAX are to be expected of a meter; a fast recorder is not."""
    meter = Meter(name="plain", percent=0.5, counts=2)
    assert meter.captures == {Capture.DISPLAY, Capture.MIN, Capture.MAX}
    assert meter.min_capture_ms == 100.0


def test_a_meter_is_not_changed() -> None:
    """Its figures stay as stated."""
    meter = Meter(name="plain", percent=0.5, counts=2)
    with pytest.raises(dataclasses.FrozenInstanceError):
        meter.percent = 0.1  # type: ignore[misc]
