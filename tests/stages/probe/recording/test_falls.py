"""Falls of the supply are found where they begin and where they end."""

import random
from array import array

import pytest
from tests.samples.waveforms import Load, Turn, Vehicle

from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.physics.starting_profile import StartingProfile, voltage_at
from backprobe.stages.probe.recording.falls import falls
from backprobe.stages.probe.recording.trace import Line

LEVELS = [(system_V, level) for system_V, levels in STARTING_PROFILES.items() for level in levels]


def line_of(function, *, length_s, rate_Hz=1000.0, noise_V=0.0):
    """A line sampled from a function of time."""
    noise = random.Random(7)
    times = [row / rate_Hz for row in range(int(length_s * rate_Hz))]
    return Line(array("d", times), array("d", [function(t) + noise.gauss(0.0, noise_V) for t in times]))


def battery(vehicle, **options):
    """The battery of a vehicle as a line."""
    return line_of(vehicle.battery_at, length_s=vehicle.length_s, **options)


@pytest.mark.parametrize("rate_Hz", [200.0, 1000.0, 10_000.0])
@pytest.mark.parametrize(("system_V", "level"), LEVELS)
def test_starting_profiles(system_V, level, rate_Hz):
    """Every profile is one fall, its moments within 10 ms, its trough and plateau as drawn."""
    profile = StartingProfile(**STARTING_PROFILES[system_V][level].figures)
    line = line_of(lambda t: voltage_at(profile, t - 2.0), length_s=4.0 + profile.crank_s, rate_Hz=rate_Hz)
    (found,) = falls(line, scale=system_V / 12)
    assert found.start_s == pytest.approx(2.0, abs=0.01)
    assert found.end_s == pytest.approx(2.0 + profile.crank_s, abs=0.01)
    assert found.trough_V == pytest.approx(profile.trough_V, abs=0.3 * system_V / 12)
    assert profile.plateau_V <= found.plateau_V <= profile.plateau_V + 2.0
    assert found.recovered


@pytest.mark.parametrize("noise_V", [0.0, 0.02, 0.05])
@pytest.mark.parametrize("overrun_s", [0.0, 0.1, 0.3])
def test_a_starter_is_released_at_the_last_edge(overrun_s, noise_V):
    """The engine may run on its own before the starter is let go; the end is the release, within 50 ms."""
    turn = Turn(start_s=5.0, length_s=1.2, overrun_s=overrun_s)
    (found,) = falls(battery(Vehicle(turns=(turn,), length_s=12), noise_V=noise_V), scale=1.0)
    assert found.start_s == pytest.approx(5.0, abs=0.05)
    assert found.end_s == pytest.approx(6.2, abs=0.05)
    assert found.fall_s <= 0.05


def test_a_crank_while_a_heater_is_on():
    """A heater from 3 s pulls the level down, the crank at 6 s further: two falls, the first taken over."""
    vehicle = Vehicle(turns=(Turn(start_s=6.0),), loads=(Load(start_s=3.0, end_s=9.0, amps=80.0),), length_s=14)
    heater, crank = falls(battery(vehicle), scale=1.0)[:2]
    assert (heater.taken_over, heater.recovered) == (True, False)
    assert crank.start_s == pytest.approx(6.0, abs=0.05)
    assert crank.end_s == pytest.approx(6.9, abs=0.05)


def test_a_heater_that_is_switched_off_in_the_crank():
    """The heater goes off when the starter turns: the plateau is no deeper, the starter's own inrush tells."""
    vehicle = Vehicle(
        turns=(Turn(start_s=6.0, amps=180.0, inrush_A=700.0),),
        loads=(Load(start_s=3.0, end_s=6.0, amps=170.0),),
        length_s=14,
    )
    _, crank = falls(battery(vehicle), scale=1.0)
    assert crank.start_s == pytest.approx(6.0, abs=0.05)


def test_ripple_is_not_a_fall_of_its_own():
    """A crank with a heavy ripple (±40 % of the current) is one fall."""
    turn = Turn(start_s=3.0, length_s=4.0, swing=0.4, strokes_Hz=4.0, fires=False)
    assert len(falls(battery(Vehicle(turns=(turn,), length_s=9)), scale=1.0)) == 1


@pytest.mark.parametrize("rate_Hz", [1.0, 2.0, 5.0, 10.0, 20.0])
def test_slow_sampling(rate_Hz):
    """From 1 to 20 rows a second the moments are right within two steps."""
    vehicle = Vehicle(turns=(Turn(start_s=5.3, length_s=2.4, overrun_s=0.0),), length_s=14)
    (found,) = falls(battery(vehicle, rate_Hz=rate_Hz), scale=1.0)
    assert found.start_s == pytest.approx(5.3, abs=2 / rate_Hz)
    assert found.end_s == pytest.approx(7.7, abs=2 / rate_Hz)


def test_noise_and_small_loads_are_no_falls():
    """A load of 0.2 V under a noise of 0.05 V is below what counts."""
    vehicle = Vehicle(loads=(Load(start_s=5.0, end_s=8.0, amps=28.0),), length_s=12)
    assert falls(battery(vehicle, noise_V=0.05), scale=1.0) == ()


def test_a_fall_without_recovery():
    """A recording that ends in the crank says so."""
    (found,) = falls(battery(Vehicle(turns=(Turn(start_s=5.0, length_s=20.0),), length_s=8)), scale=1.0)
    assert not found.recovered
    assert found.end_s == pytest.approx(7.998, abs=0.01)


def test_nothing_of_nothing():
    """An empty line, or one of two samples, has no falls."""
    assert falls(Line(array("d"), array("d")), scale=1.0) == ()
    assert falls(Line(array("d", [0, 1]), array("d", [12, 12])), scale=1.0) == ()
