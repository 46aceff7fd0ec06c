"""How likely a value is at each kind of level."""

import math

import pytest

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.levels import (
    LOAD_V,
    STARTER_V,
    STRAY_V,
    battery,
    beside,
    densities,
    flat,
    pulled_down,
    resting_density,
    under_load,
    zero_density,
)
from backprobe.stages.probe.roles import Level

METER_V = 0.05
REST = battery(Key.ON, Capture.DISPLAY)


def at(volts: float, *, scale: float = 1.0) -> dict[Level, float]:
    """The densities at key on."""
    return densities(volts, bell=REST, extra_V=METER_V, scale=scale)


@pytest.mark.parametrize(
    ("volts", "level"),
    [(12.5, Level.BATTERY), (0.01, Level.ZERO), (2.5, Level.SIGNAL), (7.5, Level.PULSED), (11.7, Level.RESTING)],
)
def test_each_level_is_likeliest_where_it_belongs(volts: float, level: Level):
    """12.5 V is a battery, 10 mV nothing, 2.5 V a sensor, 7.5 V a dimmed lamp, 11.7 V a pulled-up line."""
    found = at(volts)
    found.pop(Level.HALF)
    assert max(found, key=lambda each: found[each]) is level


def test_half_a_battery_is_half_a_24_v_battery():
    """12.4 V in a 24 V vehicle is 6.2 V on the 12 V scale."""
    assert at(12.4 / 2, scale=2.0)[Level.HALF] > 5 * at(12.4 / 2, scale=2.0)[Level.PULSED]


def test_a_sensor_keeps_its_volts_in_a_24_v_vehicle():
    """0.4 V and 5.0 V are signals at either voltage; 5.0 V is 2.5 V on the 12 V scale, and 8 V is none."""
    assert at(0.4 / 2, scale=2.0)[Level.SIGNAL] == at(5.0 / 2, scale=2.0)[Level.SIGNAL] > 0.0
    assert at(8.0 / 2, scale=2.0)[Level.SIGNAL] == 0.0


def test_a_flat_density_is_one_over_its_width():
    """1 / (5.5 - 0.3) = 0.1923 per volt inside, nothing outside."""
    assert flat(1.0, 0.3, to_V=5.5) == pytest.approx(1 / 5.2)
    assert flat(0.2, 0.3, to_V=5.5) == 0.0


@pytest.mark.parametrize("capture", list(Capture))
@pytest.mark.parametrize("key", [Key.OFF, Key.ON, Key.CRANK, Key.RUNNING, Key.AFTER])
def test_a_battery_s_density_sums_to_one(key: Key, capture: Capture):
    """Summed at 0.01 V from 0 to 20 V."""
    bell = battery(key, capture)
    total = math.fsum(bell.density(i / 100, METER_V) * 0.01 for i in range(2001))
    assert total == pytest.approx(1.0, abs=0.01)


def test_the_meter_s_error_widens_a_bell():
    """Far out a coarse meter makes a value likelier, at the centre less likely."""
    assert REST.density(11.2, 0.5) > REST.density(11.2, 0.0)
    assert REST.density(12.5, 0.5) < REST.density(12.5, 0.0)


def test_the_battery_stands_where_the_key_puts_it():
    """12.5 V at rest, 14 V charging, lower in the crank the better the hold; in an electric vehicle on may charge."""
    assert battery(Key.OFF, Capture.DISPLAY).centre_V == 12.5
    assert battery(Key.CHARGING, Capture.DISPLAY).centre_V == battery(Key.RUNNING, Capture.DISPLAY).centre_V == 14.0
    cranks = [battery(Key.CRANK, capture).centre_V for capture in (Capture.DISPLAY, Capture.MIN, Capture.LOGGED)]
    assert cranks == sorted(cranks, reverse=True)
    assert battery(Key.ON, Capture.DISPLAY, has_crank=False).density(14.0, METER_V) > 5 * REST.density(14.0, METER_V)


def test_other_wires_narrow_the_battery():
    """Beside wires at 12.0 V a battery feed is likelier at 12.0 V than at 12.5 V; without them nothing changes."""
    narrowed = beside(REST, 12.0)
    assert narrowed.density(12.0, METER_V) > REST.density(12.0, METER_V)
    assert narrowed.density(12.5, METER_V) < narrowed.density(12.0, METER_V) / 4
    assert beside(REST, None) is REST


def test_a_load_costs_a_feed_a_little():
    """The centre falls by what a feed gives way; the width grows."""
    loaded = under_load(REST)
    assert loaded.centre_V == REST.centre_V - LOAD_V
    assert loaded.width_V > REST.width_V


def test_a_crank_that_came_pulls_the_battery_down():
    """From 12.4 V at rest nothing above 12.4 - 0.3 V is a crank; without a rest level nothing is cut off."""
    crank = battery(Key.CRANK, Capture.MIN)
    assert pulled_down(crank, 12.4).density(12.4 - STARTER_V + 0.01, METER_V) == 0.0
    assert pulled_down(crank, 12.4).density(11.0, METER_V) == crank.density(11.0, METER_V)
    assert pulled_down(crank, None) is crank


def test_stray_volts_are_rare_and_end():
    """A dead wire shows 0.02 V a hundred times as often as 0.5 V, and hardly ever more than a couple of volts."""
    assert zero_density(0.02, METER_V) > 100 * zero_density(1.0, METER_V) > 0.0
    assert zero_density(STRAY_V + 1.0, METER_V) < 1e-5


def test_a_pulled_up_line_rests_under_the_battery():
    """0.6 V under it is likeliest; 1.5 V above it never happens."""
    centre, sharp = REST.centre_V, beside(REST, REST.centre_V)
    assert resting_density(centre - 0.6, REST, extra_V=METER_V) > 1.5 * resting_density(centre, REST, extra_V=METER_V)
    assert resting_density(centre - 0.6, sharp, extra_V=METER_V) > 2 * sharp.density(centre - 0.6, METER_V)
    assert resting_density(centre + 1.5, sharp, extra_V=METER_V) < 1e-4


def test_a_dead_wire_is_near_zero_most_of_the_time():
    """More than 85 % of it lies within 0.2 V of zero."""
    near = math.fsum(zero_density(i / 100, 0.02) * 0.01 for i in range(-50, 20))
    assert 0.85 < near <= 1.01
