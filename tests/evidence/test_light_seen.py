"""What a light was seen to do."""

import dataclasses

import pytest

from backprobe.evidence.light_seen import LightSeen


def test_what_was_seen_does_not_change():
    """Evidence is frozen; a time is not needed."""
    seen = LightSeen(light="network", pattern="steady")
    assert seen.after_s is None
    with pytest.raises(dataclasses.FrozenInstanceError):
        seen.pattern = "dark"
