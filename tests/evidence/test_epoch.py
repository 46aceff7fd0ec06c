"""A moment of a receiver's log is a plain value."""

from dataclasses import FrozenInstanceError

import pytest

from backprobe.evidence.epoch import Epoch, EpochFix, SatelliteSample


def test_a_moment_cannot_be_changed() -> None:
    """What was heard stays as it was heard."""
    heard = SatelliteSample("G07", 120, 40, 41.0)
    moment = Epoch(1.0, 1.0, 0, EpochFix(48.1, 11.5, used=8), (heard,), frozenset({"G07"}))
    with pytest.raises(FrozenInstanceError):
        moment.time_s = 2.0  # type: ignore[misc]
    assert moment == Epoch(1.0, 1.0, 0, EpochFix(48.1, 11.5, 8), (SatelliteSample("G07", 120, 40, 41.0),), {"G07"})  # type: ignore[arg-type]


def test_a_silent_moment() -> None:
    """No position and no satellites is a moment too."""
    assert Epoch(0.0, 0.0, 0, None).satellites == ()
