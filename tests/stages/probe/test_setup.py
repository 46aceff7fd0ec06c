"""The vehicle and the meter as the probe sees them."""

from __future__ import annotations

import dataclasses

import pytest

from backprobe.evidence.meter import DEFAULT_CAPTURES
from backprobe.limits.lookup import meter
from backprobe.stages.probe.setup import Setup


def test_a_plain_truck_has_a_crank_and_an_accessory_position():
    """What is not said is the common case: key with accessory, a starter, a meter with MIN and MAX."""
    setup = Setup(system_V=12, meter=meter("basic"))
    assert (setup.has_crank, setup.has_accessory, setup.captures) == (True, True, DEFAULT_CAPTURES)
    assert setup.absent_keys == frozenset()


def test_a_setup_cannot_be_changed_behind_anybodys_back():
    """It is handed about, so it is frozen."""
    with pytest.raises(dataclasses.FrozenInstanceError):
        Setup(system_V=12, meter=meter("basic")).system_V = 24
