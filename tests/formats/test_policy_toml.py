"""A fleet's own policy is read, and refused where it would loosen a limit."""

from __future__ import annotations

import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.formats.policy_toml import read_policy


def test_a_policy_is_read():
    """What it does not name stays as it is."""
    text = "[join]\nground_drop_mV = 50\nwire_over_fuse = 1.5"
    assert read_policy(text, "fleet.toml") == FleetPolicy(file="fleet.toml", ground_drop_mV=50, wire_over_fuse=1.5)


def test_the_parked_table():
    """Days that the fleet wants at least; two batteries no further apart than 0.1 V, or less."""
    found = read_policy("[parked]\nwanted_days = 21\nbalance_V = 0.05", "fleet.toml")
    assert found == FleetPolicy(file="fleet.toml", wanted_days=21, balance_V=0.05)
    with pytest.raises(UnreadableError) as caught:
        read_policy("[parked]\nbalance_V = 0.2", "fleet.toml")
    assert "0 to 0.1: a policy may tighten" in caught.value.expected


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("ground_drop_mV = 150", "0 to 100: a policy may tighten a limit, never loosen it"),
        ("wire_over_fuse = 1.2", "1.35 to 10: a policy may tighten a limit, never loosen it"),
        ("fuse_load_part = 0.9", "0.01 to 0.75: a policy may tighten a limit, never loosen it"),
        ("path_drop_mV = 301", "0 to 300: a policy may tighten a limit, never loosen it"),
        ("loaded_drop_V = 0.4", "0 to 0.3: a policy may tighten a limit, never loosen it"),
        ("unit_margin_V = -1", "0 to 20: a policy may tighten a limit, never loosen it"),
        ("ground_drop_mV = nan", "0 to 100: a policy may tighten"),
        ('ground_drop_mV = "50"', "without quotation marks"),
        ("ground_mV = 50", "did you mean ground_drop_mV?"),
    ],
)
def test_a_policy_that_loosens_is_refused_with_its_line(line: str, words: str):
    """Refused and said, never silently taken or left out."""
    with pytest.raises(UnreadableError) as caught:
        read_policy(f"[join]\n{line}", "fleet.toml")
    assert caught.value.place.line == 2
    assert words in caught.value.expected
