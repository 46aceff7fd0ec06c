"""The table of roles is whole, and says what the trade says."""

from __future__ import annotations

import math

import pytest

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.roles import PRIOR, Level, Role, priors, read_mix, read_table, ways


def mix(role: Role, key: Key) -> dict[Level, float]:
    """The levels of a role at a position, over all its ways."""
    found: dict[Level, float] = {}
    for way, _ in ways(12):
        if way.role is role:
            for level, share in way.mix(key, Capture.DISPLAY):
                found[level] = found.get(level, 0.0) + share * way.share
    return found


@pytest.mark.parametrize("system_V", [12, 24])
def test_the_priors_sum_to_one(system_V):
    """Every wire is something."""
    assert math.fsum(prior for _, prior in ways(system_V)) == pytest.approx(1.0)
    assert math.fsum(PRIOR.values()) == pytest.approx(1.0)


@pytest.mark.parametrize("role", [role for role in Role if role is not Role.UNKNOWN])
def test_the_ways_of_a_role_share_it_wholly(role):
    """The shares of a role's ways add up to the role."""
    assert math.fsum(way.share for way, _ in ways(12) if way.role is role) == pytest.approx(1.0)


@pytest.mark.parametrize("system_V", [12, 24])
@pytest.mark.parametrize("capture", list(Capture))
@pytest.mark.parametrize("key", list(Key))
def test_each_cell_is_a_distribution(key, capture, system_V):
    """Whatever the position and the capture, the levels' shares sum to one."""
    for way, _ in ways(system_V):
        assert math.fsum(share for _, share in way.mix(key, capture)) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("role", "live", "dead"),
    [
        (Role.CONSTANT, "off accessory on crank running after", ""),
        (Role.IGNITION, "on crank running", "off accessory after"),
        (Role.IGNITION_NOT_IN_CRANK, "on running", "off accessory crank after"),
        (Role.START, "crank", "off accessory after"),
    ],
)
def test_what_defines_a_role_is_certain(role, live, dead):
    """A role's own positions are not a matter of likelihood."""
    for key in live.split():
        assert mix(role, Key(key)) == {Level.BATTERY: pytest.approx(1.0)}
    for key in dead.split():
        assert mix(role, Key(key)) == {Level.ZERO: pytest.approx(1.0)}


def test_a_retained_wire_is_dead_after_ten_minutes():
    """That is what tells it from a constant."""
    assert mix(Role.RETAINED, Key.OFF)[Level.BATTERY] == pytest.approx(1.0)
    assert mix(Role.RETAINED, Key.AFTER) == {Level.ZERO: pytest.approx(1.0)}


def test_a_min_hold_mostly_misses_a_start_wire():
    """Armed before the crank, it keeps the zero that stood there; MAX shows it."""
    start = next(way for way, _ in ways(12) if way.role is Role.START)
    shares = {capture: dict(start.mix(Key.CRANK, capture)) for capture in (Capture.MIN, Capture.DISPLAY)}
    assert shares[Capture.MIN][Level.ZERO] > 0.5
    assert shares[Capture.DISPLAY][Level.BATTERY] == 1.0


def test_only_a_24_V_vehicle_has_a_centre_tap():
    """Near 12 V means nothing special in a 12 V vehicle."""
    assert not any(way.half_voltage for way, _ in ways(12))
    assert any(way.half_voltage for way, _ in ways(24))


def test_a_vehicle_without_a_crank_has_no_wires_of_the_crank():
    """Their priors are zero, the others grow to one."""
    shares = priors(12, has_crank=False, has_accessory=True)
    gone = [share for (way, _), share in zip(ways(12), shares, strict=True) if way.role is Role.START]
    assert set(gone) == {0.0}
    assert math.fsum(shares) == pytest.approx(1.0)


def test_a_cell_and_a_row_are_read_as_written():
    """'B60Z40' is 60 % battery, 40 % zero; a table's first line is its heading."""
    assert read_mix("B60Z40") == ((Level.BATTERY, 0.6), (Level.ZERO, 0.4))
    (way,) = read_table("heading\nsignal 50 M Z B M M Z Z Z Z80B20")
    assert (way.role, way.share, way.mix(Key.ACCESSORY, Capture.DISPLAY)) == (Role.SIGNAL, 0.5, ((Level.ZERO, 1.0),))
    assert way.mix(Key.CRANK, Capture.MIN) == ((Level.ZERO, 0.8), (Level.BATTERY, 0.2))
