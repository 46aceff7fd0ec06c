"""The vehicle and the meter before the first wire is touched."""

import dataclasses

import pytest

from backprobe.evidence.keys import Capture
from backprobe.limits.lookup import meter
from backprobe.stages.probe.setup import Setup


def test_a_setup_is_a_plain_truck_unless_said():
    """Crank, accessory, a meter that holds MIN and MAX and is no recorder; no unit, no positions lacking."""
    setup = Setup(system_V=12, meter=meter("basic"))
    assert (setup.has_crank, setup.has_accessory) == (True, True)
    assert setup.captures == {Capture.DISPLAY, Capture.MIN, Capture.MAX}
    assert setup.unit_least_V is None
    assert setup.absent_keys == frozenset()


def test_a_setup_cannot_be_changed_behind_anybody_s_back():
    """It is handed about, so it is frozen."""
    with pytest.raises(dataclasses.FrozenInstanceError):
        Setup(system_V=12, meter=meter("basic")).system_V = 24
