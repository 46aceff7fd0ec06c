"""The table of what each kind of wire shows at each position of the key."""

import math

import pytest

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.roles import HALF_SHARE, PRIOR, Level, Role, Way, priors, read_mix, read_table, ways

# What defines a role: where it is surely live and where surely dead. 'crank' is what a display sees there.
DEFINED = {
    Role.CONSTANT: ("off accessory on crank running after", ""),
    Role.IGNITION: ("on crank running", "off accessory after charging"),
    Role.IGNITION_NOT_IN_CRANK: ("on running", "off accessory crank after"),
    Role.START: ("crank", "off accessory after"),
    Role.NO_SUPPLY: ("", "off accessory on crank running after"),
}


def way_of(role: Role) -> Way:
    """The commonest way of a role."""
    return max((way for way, _ in ways(12) if way.role is role), key=lambda way: way.share)


@pytest.mark.parametrize("role", DEFINED)
def test_roles_are_live_and_dead_where_they_are_defined_to_be(role: Role):
    """Battery level or zero, for certain, in every way of the role."""
    live, dead = DEFINED[role]
    for way in (way for way, _ in ways(12) if way.role is role):
        for word, level in [(key, Level.BATTERY) for key in live.split()] + [(key, Level.ZERO) for key in dead.split()]:
            assert way.levels[Key(word)] == ((level, 1.0),), (role, word)


def test_only_an_ignition_is_dead_before_on_and_live_through_the_crank():
    """No other way is, with certainty, what an ignition is at its five positions."""
    ignition = way_of(Role.IGNITION)
    keys = (Key.OFF, Key.ACCESSORY, Key.ON, Key.CRANK, Key.RUNNING)
    alike = [way for way, _ in ways(12) if all(way.levels[key] == ignition.levels[key] for key in keys)]
    assert [way.role for way in alike] == [Role.IGNITION]


def test_accessory_is_live_in_accessory_and_mostly_dead_in_the_crank():
    """Nine in ten are cut while the starter turns; a socket that nobody cuts is an accessory all the same."""
    accessory = [way for way, _ in ways(12) if way.role is Role.ACCESSORY]
    assert all(way.levels[Key.ACCESSORY] == ((Level.BATTERY, 1.0),) for way in accessory)
    assert math.fsum(way.share for way in accessory if way.levels[Key.CRANK] == ((Level.ZERO, 1.0),)) == 0.9


@pytest.mark.parametrize("system_V", [12, 24])
def test_shares_and_mixes_sum_to_one(system_V: int):
    """Priors over all ways, ways within a role, levels within a cell: each is a distribution."""
    assert math.fsum(prior for _, prior in ways(system_V)) == pytest.approx(1.0)
    assert math.fsum(PRIOR.values()) == pytest.approx(1.0)
    for way, _ in ways(system_V):
        for mix in (*way.levels.values(), *([way.crank_min] if way.crank_min else [])):
            assert math.fsum(share for _, share in mix) == pytest.approx(1.0), (way.role, mix)
    for role in Role:
        of_role = [way.share for way, _ in ways(12) if way.role is role]
        assert math.fsum(of_role) == pytest.approx(1.0), role


def test_a_start_wire_shows_zero_to_a_min_hold_and_the_crank_to_a_max_hold():
    """MIN armed before the crank keeps what stood there before; MAX keeps the crank, or the level before."""
    start = way_of(Role.START)
    assert dict(start.mix(Key.CRANK, Capture.DISPLAY)) == {Level.BATTERY: 1.0}
    assert dict(start.mix(Key.CRANK, Capture.MIN))[Level.ZERO] >= 0.8
    held = start.mix(Key.CRANK, Capture.MAX)
    assert math.fsum(share for level, share in held if level is Level.BATTERY) == 0.5


def test_only_24_v_vehicles_have_half_voltages():
    """A twentieth of the wires of a 24 V vehicle hang on a converter or a centre tap."""
    assert not any(way.half_voltage for way, _ in ways(12))
    assert math.fsum(prior for way, prior in ways(24) if way.half_voltage) == pytest.approx(HALF_SHARE)


def test_a_vehicle_has_no_wires_of_the_positions_it_lacks():
    """No crank: no start wire and none that dies in the crank; no accessory position: no accessory wire."""
    roles = [way.role for way, _ in ways(12)]
    electric = dict(zip(roles, priors(12, has_crank=False, has_accessory=True), strict=True))
    button = dict(zip(roles, priors(12, has_crank=True, has_accessory=False), strict=True))
    assert electric[Role.START] == electric[Role.IGNITION_NOT_IN_CRANK] == 0.0
    assert button[Role.ACCESSORY] == 0.0
    assert math.fsum(priors(24, has_crank=False, has_accessory=False)) == pytest.approx(1.0)


def test_a_cell_reads_as_levels_with_shares():
    """'B60Z40' is battery level in 60 %, zero in 40 %; a letter alone is certain."""
    assert read_mix("B60Z40") == ((Level.BATTERY, 0.6), (Level.ZERO, 0.4))
    assert read_mix("M") == ((Level.SIGNAL, 1.0),)


def test_a_row_without_a_min_column_shows_the_same_to_every_hold():
    """The eight key positions follow in the order of the header."""
    (way,) = read_table("head\nconstant 100 B B B B B B Z B")
    assert way.crank_min is None
    assert way.mix(Key.CRANK, Capture.MIN) == ((Level.BATTERY, 1.0),)
    assert way.levels[Key.ISOLATED] == ((Level.ZERO, 1.0),)


@pytest.mark.parametrize("capture", list(Capture))
@pytest.mark.parametrize("key", list(Key))
def test_whatever_the_capture_a_mix_is_a_distribution(key: Key, capture: Capture):
    """MIN and MAX too have levels whose shares sum to one."""
    for way, _ in ways(24):
        assert math.fsum(share for _, share in way.mix(key, capture)) == pytest.approx(1.0)
