"""What a fleet asks for beyond the usual limits."""

from __future__ import annotations

from dataclasses import fields

from backprobe.evidence.fleet_policy import FleetPolicy


def test_a_fleet_that_asks_for_nothing_has_no_limit_of_its_own():
    """Only the file's name is needed; every limit is absent until it is stated."""
    policy = FleetPolicy(file="policy.toml")
    assert {getattr(policy, field.name) for field in fields(policy) if field.name != "file"} == {None}
