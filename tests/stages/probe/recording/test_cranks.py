"""Cranks are found with their moments, loads are told from them, and both say how sure that is."""

import dataclasses

import pytest
from tests.samples.waveforms import (
    Load,
    Logger,
    Turn,
    Vehicle,
    profile_recording,
    record,
    recording_of,
)

from backprobe.evidence.keys import Key
from backprobe.evidence.recording import KeyMark
from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.physics.starting_profile import StartingProfile
from backprobe.stages.probe.recording.cranks import LIKELY, LISTED, SURE, cranks
from backprobe.stages.probe.recording.scene import scene_of

GLOW_PLUGS = Load(start_s=3.0, end_s=9.0, amps=80.0, inrush_A=60.0, inrush_tau_s=2.0)
HEATER = Load(start_s=3.0, end_s=8.0, amps=110.0)
GRID_HEATER = Load(start_s=3.0, end_s=10.0, amps=190.0)
TAIL_LIFT = Load(start_s=3.0, end_s=9.0, amps=160.0, inrush_A=250.0, pulse_Hz=60.0, pulse=0.08)
LIFTGATE_PUMP = Load(start_s=3.0, end_s=4.3, amps=160.0, inrush_A=400.0, pulse_Hz=45.0, pulse=0.1)
BLOWER = Load(start_s=3.0, end_s=8.0, amps=40.0, inrush_A=60.0, inrush_tau_s=0.3)
LAMPS = Load(start_s=3.0, end_s=10.5, amps=25.0, inrush_A=150.0, inrush_tau_s=0.03)
COMPRESSOR = Load(start_s=3.0, end_s=9.0, amps=70.0, inrush_A=120.0, pulse_Hz=38.0, pulse=0.25)
IMITATORS = {
    "glow plugs": GLOW_PLUGS,
    "heater": HEATER,
    "grid heater": GRID_HEATER,
    "tail-lift": TAIL_LIFT,
    "liftgate pump": LIFTGATE_PUMP,
    "blower": BLOWER,
    "lamps": LAMPS,
    "compressor": COMPRESSOR,
}


def found(vehicle, *wires, rate_Hz=1000.0, key="", noise_V=0.01):
    """What a recording of a vehicle shows, loads left out."""
    recording = record(vehicle, wires or ("battery",), logger=Logger(rate_Hz=rate_Hz, noise_V=noise_V), key=key)
    return [crank for crank in cranks(scene_of(recording, system_V=vehicle.system_V)) if crank.sure >= LISTED]


def moments(attempts):
    """Their beginnings and ends in one list."""
    return [time_s for attempt in attempts for time_s in (attempt.start_s, attempt.end_s)]


def after(load, seconds):
    """The same load, later."""
    return dataclasses.replace(load, start_s=load.start_s + seconds, end_s=load.end_s + seconds)


WEAK = Vehicle(
    rest_V=12.0,
    inner_ohm=0.014,
    turns=(Turn(start_s=5.0, length_s=4.0, strokes_Hz=4.0, amps=220.0, inrush_A=450.0),),
    length_s=20,
)
TRUCK = Vehicle(
    system_V=24, inner_ohm=0.004, turns=(Turn(start_s=6.0, length_s=1.2, amps=350.0, inrush_A=1000.0, strokes_Hz=9.0),)
)


@pytest.mark.parametrize("rate_Hz", [1000.0, 200.0, 100.0])
@pytest.mark.parametrize(
    "vehicle", [Vehicle(turns=(Turn(start_s=5.0),)), WEAK, TRUCK], ids=["good start", "weak battery", "24 V truck"]
)
def test_a_start(vehicle, rate_Hz):
    """One attempt, sure, started, to 50 ms (two steps where that is more)."""
    (crank,) = found(vehicle, rate_Hz=rate_Hz)
    (turn,) = vehicle.turns
    assert moments([crank]) == pytest.approx([turn.start_s, turn.end_s], abs=max(0.05, 2 / rate_Hz))
    assert crank.started
    assert crank.sure >= 0.95


@pytest.mark.parametrize("rate_Hz", [1000.0, 100.0])
def test_a_failed_attempt_and_a_second_one(rate_Hz):
    """Both are listed; only the second started the engine."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, length_s=1.5, fires=False), Turn(start_s=9.0)))
    first, second = found(vehicle, rate_Hz=rate_Hz)
    assert (first.started, second.started) == (False, True)
    assert moments([first, second]) == pytest.approx([5.0, 6.5, 9.0, 9.9], abs=0.05)
    assert first.sure >= LIKELY
    assert second.sure >= SURE


def test_a_stop_at_a_light_and_a_restart():
    """The generator's end is no crank; the restart of 0.4 s is one."""
    vehicle = Vehicle(turns=(Turn(start_s=4.0), Turn(start_s=16.0, length_s=0.4)), stops=(13.0,), length_s=25)
    first, restart = found(vehicle)
    assert moments([first, restart]) == pytest.approx([4.0, 4.9, 16.0, 16.4], abs=0.05)
    assert (first.started, restart.started) == (True, True)
    assert restart.sure >= SURE


def test_a_stall():
    """The engine runs for two seconds, stalls and is started again: both attempts started it."""
    vehicle = Vehicle(turns=(Turn(start_s=4.0), Turn(start_s=10.0)), stops=(7.0,), length_s=18)
    attempts = found(vehicle)
    assert [attempt.started for attempt in attempts] == [True, True]
    assert moments(attempts) == pytest.approx([4.0, 4.9, 10.0, 10.9], abs=0.05)


@pytest.mark.parametrize("rate_Hz", [1000.0, 100.0, 10.0])
@pytest.mark.parametrize("name", IMITATORS)
def test_imitators_alone(name, rate_Hz):
    """Nothing that pulls the battery down for seconds is a likely crank, or started an engine that nobody cranked."""
    vehicle = Vehicle(loads=(IMITATORS[name],), length_s=20)
    assert all(each.sure < LIKELY and not each.started for each in found(vehicle, rate_Hz=rate_Hz))


@pytest.mark.parametrize("rate_Hz", [1000.0, 100.0, 10.0])
@pytest.mark.parametrize("name", IMITATORS)
def test_imitators_before_a_crank(name, rate_Hz):
    """The crank at 12 s is the only likely one, with its own moments."""
    vehicle = Vehicle(loads=(IMITATORS[name],), turns=(Turn(start_s=12.0),), length_s=22)
    likely = [each for each in found(vehicle, rate_Hz=rate_Hz) if each.sure >= LIKELY]
    assert moments(likely) == pytest.approx([12.0, 12.9], abs=max(0.05, 2 / rate_Hz))


@pytest.mark.parametrize("rate_Hz", [1000.0, 100.0, 10.0])
@pytest.mark.parametrize("name", IMITATORS)
def test_imitators_while_the_engine_runs(name, rate_Hz):
    """A load on a running engine is no crank."""
    vehicle = Vehicle(loads=(after(IMITATORS[name], 9.0),), turns=(Turn(start_s=4.0),), length_s=22)
    likely = [each for each in found(vehicle, rate_Hz=rate_Hz) if each.sure >= LIKELY]
    assert moments(likely) == pytest.approx([4.0, 4.9], abs=max(0.05, 2 / rate_Hz))


@pytest.mark.parametrize("rate_Hz", [1000.0, 100.0])
def test_glow_plugs_on_through_the_crank(rate_Hz):
    """They go on at 3 s and off long after the start: the crank is told from them."""
    glow = dataclasses.replace(GLOW_PLUGS, end_s=16.0)
    vehicle = Vehicle(loads=(glow,), turns=(Turn(start_s=8.0),), length_s=22)
    (crank,) = [each for each in found(vehicle, rate_Hz=rate_Hz) if each.sure >= LIKELY]
    assert moments([crank]) == pytest.approx([8.0, 8.9], abs=0.05)


@pytest.mark.parametrize(("system_V", "level"), [(s, level) for s, rows in STARTING_PROFILES.items() for level in rows])
def test_starting_profiles(system_V, level):
    """Each level of the standard is one sure attempt; it goes back to rest, so that no start is claimed."""
    profile = StartingProfile(**STARTING_PROFILES[system_V][level].figures)
    (crank,) = cranks(scene_of(profile_recording(profile), system_V=system_V))
    assert moments([crank]) == pytest.approx([2.0, 2.0 + profile.crank_s], abs=0.01)
    assert crank.sure >= SURE
    assert not crank.started


@pytest.mark.parametrize("rate_Hz", [2.0, 5.0, 10.0, 20.0])
def test_slow_sampling(rate_Hz):
    """From 2 to 20 rows a second the start is found within two steps, and less sure than on a fast recording."""
    vehicle = Vehicle(turns=(Turn(start_s=5.2, length_s=1.6, overrun_s=0.0),))
    (crank,) = found(vehicle, rate_Hz=rate_Hz)
    assert moments([crank]) == pytest.approx([5.2, 6.8], abs=2 / rate_Hz)
    assert crank.started
    assert LIKELY <= crank.sure < 1.0


def test_a_dip_that_was_missed():
    """At 1 row a second no sample fell; the change from rest to charging still tells, and is not sure."""
    vehicle = Vehicle(turns=(Turn(start_s=5.05),))
    (crank,) = found(vehicle, rate_Hz=1.0)
    assert moments([crank]) == pytest.approx([5.05, 5.95], abs=2.0)
    assert (crank.started, crank.sure) == (True, LIKELY)


def test_a_slow_recording_with_engine_speed():
    """The engine speed makes it sure: 0, then 900 /min; the dip was missed."""
    volts = [12.5] * 6 + [12.3] + [14.1] * 10
    speed = [0.0] * 6 + [900.0] * 11
    recording = recording_of([float(i) for i in range(17)], {"module": volts, "engine_speed": speed})
    (crank,) = cranks(scene_of(recording, system_V=12))
    assert crank.started
    assert crank.sure >= SURE
    assert 4.0 <= crank.start_s <= crank.end_s <= 7.0


def test_an_engine_speed_of_zero_is_no_crank():
    """A deep fall during which the engine stands still is another load."""
    values = [12.5] * 50 + [9.5] * 20 + [12.4] * 80
    columns = {"battery": values, "engine_speed": [0.0] * 150}
    (load,) = cranks(scene_of(recording_of([i / 10 for i in range(150)], columns), system_V=12))
    assert load.sure < LISTED


@pytest.mark.parametrize(
    ("wires", "started"),
    [
        (("constant",), True),
        (("ignition", "dead"), True),
        (("accessory",), True),
        (("ignition_not_in_crank", "dead"), True),
        (("start", "accessory"), True),
    ],
)
def test_without_a_battery_channel(wires, started):
    """Any wire that follows the key shows the crank, if not all of it."""
    (crank,) = found(Vehicle(turns=(Turn(start_s=5.0),)), *wires)
    assert moments([crank]) == pytest.approx([5.0, 5.9], abs=0.05)
    assert crank.started is started
    assert crank.sure >= SURE


def test_an_accessory_alone_is_not_sure():
    """Dead for a second and back at rest: a failed attempt, or a key that was turned back and forth."""
    (crank,) = found(Vehicle(turns=(Turn(start_s=5.0, fires=False),)), "accessory")
    assert not crank.started
    assert crank.sure < LIKELY


def test_a_start_wire_alone():
    """It shows when the starter turned, but not whether the engine ran."""
    (crank,) = found(Vehicle(turns=(Turn(start_s=5.0),)), "start")
    assert moments([crank]) == pytest.approx([5.0, 5.9], abs=0.15)
    assert not crank.started


def test_a_wire_makes_a_slow_recording_sure():
    """At 5 rows a second a crank and a lift look alike; an accessory that is dead for just that time tells."""
    failed = Vehicle(turns=(Turn(start_s=5.1, length_s=1.6, fires=False),))
    (alone,) = found(failed, rate_Hz=5.0)
    (with_wire,) = found(failed, "battery", "accessory", rate_Hz=5.0)
    assert alone.sure < LIKELY < SURE <= with_wire.sure


def test_lost_contact_is_no_crank():
    """The clip on the battery falls off for half a second; nothing was cranked."""
    values = [12.5] * 1000 + [0.0] * 500 + [12.5] * 1500
    assert cranks(scene_of(recording_of([i / 1000 for i in range(3000)], {"battery": values}), system_V=12)) == ()


def test_the_recording_ends_too_soon():
    """Half a second after the crank nothing can be said of the engine, and that is said."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, fires=False),), length_s=6.4)
    (crank,) = found(vehicle)
    assert not crank.started
    assert crank.why[-1] == "the recording ends too soon to show whether the engine ran"


@pytest.mark.parametrize("key", ["whole", "falls back"])
def test_the_key_column_is_the_truth(key):
    """Two attempts, the second one started; the column may fall back to 'on' after the crank."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, fires=False), Turn(start_s=9.0)), length_s=16)
    attempts = found(vehicle, key=key, rate_Hz=100.0)
    assert moments(attempts) == pytest.approx([5.0, 5.9, 9.0, 9.9], abs=0.02)
    assert [attempt.started for attempt in attempts] == [False, True]
    assert [attempt.sure for attempt in attempts] == [1.0, 1.0]


def by_column(*marks, values=None):
    """The attempts by a key column on 20 s of a wire at rest, or of `values`, at 10 rows/s."""
    recording = recording_of(
        [i / 10 for i in range(200)],
        {"battery": values or [12.5] * 200},
        keys=tuple(KeyMark(time_s, key) for time_s, key in marks),
    )
    return cranks(scene_of(recording, system_V=12))


def test_a_key_column_without_a_start():
    """The level stays at rest after the only crank: the engine did not run."""
    (crank,) = by_column((0.0, Key.ON), (5.0, Key.CRANK), (6.0, Key.ON))
    assert not crank.started


def test_a_key_column_that_goes_off_after_the_crank():
    """Off at once: not started; off is not the same as ended."""
    (crank,) = by_column((0.0, Key.ON), (5.0, Key.CRANK), (6.0, Key.OFF))
    assert not crank.started


def test_a_key_column_that_ends_in_the_crank():
    """Nobody knows what came of it."""
    (crank,) = by_column((0.0, Key.ON), (5.0, Key.CRANK))
    assert not crank.started
    assert "the recording ends in the crank" in crank.why


def test_a_key_column_on_a_dead_channel():
    """No level to go by: the last attempt is taken for the start, an earlier one not."""
    dead = [0.0] * 200
    marks = ((0.0, Key.ON), (5.0, Key.CRANK), (6.0, Key.ON), (9.0, Key.CRANK), (10.0, Key.ON))
    assert [crank.started for crank in by_column(*marks, values=dead)] == [False, True]
