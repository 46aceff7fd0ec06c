"""The unit's supply as it was shown twice."""

import dataclasses

import pytest

from backprobe.evidence.supply_pair import SupplyPair


def test_a_pair_keeps_what_was_shown():
    """12.41 V idle and 12.40 V transmitting, to 0.01 V; it cannot be changed afterwards."""
    pair = SupplyPair(12.41, 12.40, 0.01)
    assert round(pair.idle_V - pair.transmit_V, 3) == 0.01
    with pytest.raises(dataclasses.FrozenInstanceError):
        pair.count_V = 1.0
