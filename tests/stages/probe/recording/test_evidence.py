"""What is seen of a possible crank becomes signs."""

import pytest
from tests.samples.waveforms import Load, Logger, Turn, Vehicle, record, recording_of

from backprobe.stages.probe.recording.evidence import Candidate, Evidence, add_afterwards, rest_V, shape_of
from backprobe.stages.probe.recording.falls import falls
from backprobe.stages.probe.recording.scene import scene_of
from backprobe.stages.probe.recording.signs import Sign


def seen(vehicle, *, rate_Hz=1000.0, at=0):
    """Scene and candidate of the fall number `at` of a vehicle's battery."""
    scene = scene_of(record(vehicle, logger=Logger(rate_Hz=rate_Hz)), system_V=vehicle.system_V)
    fall = falls(scene.supply(0, vehicle.length_s), scale=scene.scale)[at]
    return scene, Candidate(fall.start_s, fall.end_s, fall)


def afterwards(scene, candidate, *, until_s=100.0):
    """The evidence of what came before and after."""
    found = Evidence()
    add_afterwards(found, scene, candidate=candidate, until_s=until_s)
    return found


def test_a_starter_has_all_its_signs():
    """Very deep (a trough of 5.7 V counts as a plateau of 2.3 V), steep, an inrush, a ripple of 8 Hz."""
    found = shape_of(*seen(Vehicle(turns=(Turn(start_s=5.0, strokes_Hz=8.0),))))
    assert set(found.signs) == {Sign.VERY_DEEP, Sign.STEEP, Sign.INRUSH, Sign.RIPPLE}
    assert found.figures["ripple_Hz"] == pytest.approx(8.0, abs=0.3)


def test_a_heater_has_none_of_them():
    """A resistor: a steep fall, but neither inrush nor ripple."""
    found = shape_of(*seen(Vehicle(loads=(Load(start_s=5.0, end_s=8.0, amps=110.0),))))
    assert set(found.signs) == {Sign.MIDDLING, Sign.STEEP, Sign.NO_INRUSH, Sign.NO_RIPPLE}


def test_a_soft_start_is_slow():
    """A motor whose current is run up within 150 ms."""
    found = shape_of(*seen(Vehicle(loads=(Load(start_s=5.0, end_s=8.0, amps=200.0, edge_s=0.15),))))
    assert Sign.SLOW_FALL in found.signs


@pytest.mark.parametrize(
    ("length_s", "sign"), [(0.1, Sign.BRIEF), (7.0, Sign.LONGISH), (15.0, Sign.LONGER), (40.0, Sign.LONG)]
)
def test_lengths(length_s, sign):
    """Starters turn for some tenths of a second to some seconds."""
    scene, usual = seen(Vehicle(turns=(Turn(start_s=5.0),)), rate_Hz=500.0)
    assert not {Sign.BRIEF, Sign.LONGISH, Sign.LONGER, Sign.LONG} & set(shape_of(scene, usual).signs)
    assert sign in shape_of(scene, Candidate(usual.start_s, usual.start_s + length_s, usual.fall)).signs


def test_on_slow_recordings_roughness_takes_the_ripples_place():
    """At 10 rows a second the plateau of a crank is unsteady, that of a heater steady."""
    crank = Vehicle(turns=(Turn(start_s=5.03, length_s=2.0),))
    heater = Vehicle(loads=(Load(start_s=5.03, end_s=7.0, amps=150.0),))
    assert Sign.ROUGH in shape_of(*seen(crank, rate_Hz=10.0)).signs
    assert Sign.SMOOTH in shape_of(*seen(heater, rate_Hz=10.0)).signs


def test_charging_afterwards_means_started():
    """14.1 V after the crank; after a failed attempt no more than rest."""
    started = afterwards(*seen(Vehicle(turns=(Turn(start_s=5.0),))))
    failed = afterwards(*seen(Vehicle(turns=(Turn(start_s=5.0, fires=False),))))
    assert (started.started, Sign.CHARGES in started.signs) == (True, True)
    assert (failed.started, Sign.STAYS_AT_REST in failed.signs) == (False, True)


def test_what_comes_later_belongs_to_another():
    """The level of the second attempt's start does not count for the first one."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, fires=False), Turn(start_s=8.0)))
    assert not afterwards(*seen(vehicle), until_s=8.0).started
    assert afterwards(*seen(vehicle), until_s=20.0).started


def test_a_load_while_the_engine_runs():
    """14 V before and after alike: nobody cranked."""
    vehicle = Vehicle(
        charge_V=14.1, turns=(Turn(start_s=3.0),), loads=(Load(start_s=12.0, end_s=15.0, amps=400.0),), length_s=20
    )
    found = afterwards(*seen(vehicle, at=1))
    assert found.signs == [Sign.RAN_BEFORE]
    assert not found.started


def test_a_warm_battery_is_no_running_engine():
    """A lift pump on a battery that rests at 12.6 V goes back to rest."""
    vehicle = Vehicle(loads=(Load(start_s=5.0, end_s=8.0, amps=160.0, inrush_A=200.0),))
    assert afterwards(*seen(vehicle)).signs == [Sign.STAYS_AT_REST]


def test_rest_is_the_highest_level_before_that_is_no_charging():
    """12.6 V before a heater pulled it down to 12.0; 14.2 V half a minute ago was a generator."""
    values = [14.2] * 100 + [12.6] * 100 + [12.0] * 100
    scene = scene_of(recording_of([i / 10 for i in range(300)], {"battery": values}), system_V=12)
    assert rest_V(scene, 29.0) == 12.6


@pytest.mark.parametrize(
    ("speeds", "sign", "started"),
    [
        ([0] * 50 + [200] * 10 + [800] * 90, Sign.SPEED_RUNS, True),
        ([0] * 50 + [200] * 10 + [0] * 90, Sign.SPEED_TURNS, False),
        ([0] * 150, Sign.SPEED_STANDS, False),
        ([800] * 150, Sign.SPEED_RAN, False),
    ],
)
def test_engine_speed(speeds, sign, started):
    """The speed decides whether the engine stood, was turned, came to run or ran already."""
    columns = {"battery": [12.5] * 50 + [10.0] * 10 + [12.4] * 90, "engine_speed": [float(rpm) for rpm in speeds]}
    scene = scene_of(recording_of([i / 10 for i in range(150)], columns), system_V=12)
    found = afterwards(scene, Candidate(5.0, 6.0, None, "key"))
    assert sign in found.signs
    assert found.started is started
