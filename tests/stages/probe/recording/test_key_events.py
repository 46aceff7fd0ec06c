"""Where the key stood: by its column, or as far as wires prove it."""

import pytest
from tests.samples.waveforms import Logger, Turn, Vehicle, record, recording_of

from backprobe.evidence.keys import Key
from backprobe.evidence.recording import KeyMark
from backprobe.stages.probe.recording.cranks import cranks
from backprobe.stages.probe.recording.key_events import events, key_off_s, starting_crank, stretches
from backprobe.stages.probe.recording.scene import scene_of

VEHICLE = Vehicle(accessory_s=1.0, key_on_s=2.0, turns=(Turn(start_s=6.0),), length_s=16)


def looked(vehicle, *wires, rate_Hz=200.0, key=""):
    """Events and stretches by key (first and last moment) of a recording."""
    scene = scene_of(record(vehicle, wires, logger=Logger(rate_Hz=rate_Hz), key=key), system_V=vehicle.system_V)
    found = cranks(scene)
    turns = events(scene, found)
    return turns, {each.key: (each.from_s, each.to_s) for each in stretches(scene, found, found=turns)}


def by_marks(*marks, length_s=2000.0, values=None):
    """Events and stretches of a recording at 1 row/s with a key column."""
    times = [float(i) for i in range(int(length_s))]
    keys = tuple(KeyMark(time_s, key) for time_s, key in marks)
    recording = recording_of(times, {"battery": values or [12.5] * len(times)}, keys=keys)
    scene = scene_of(recording, system_V=12)
    found = cranks(scene)
    turns = events(scene, found)
    return turns, stretches(scene, found, found=turns)


def test_all_events_from_the_waveforms():
    """Key-on by the ignition wire, the crank by the battery."""
    turns, _ = looked(VEHICLE, "battery", "ignition", "accessory")
    assert turns.key_on_s == pytest.approx(2.0, abs=0.05)
    assert turns.crank_start_s == pytest.approx(6.0, abs=0.05)
    assert turns.crank_end_s == pytest.approx(6.9, abs=0.05)


def test_key_on_without_a_true_ignition():
    """Accessory at 1 s, ignition that drops out in the crank at 2 s: the later one is key-on."""
    turns, stood = looked(VEHICLE, "battery", "accessory", "ignition_not_in_crank")
    assert turns.key_on_s == pytest.approx(2.0, abs=0.05)
    assert Key.ON not in stood  # what is dead in the crank proves no 'on'


def test_no_wire_no_key_on():
    """The battery alone does not show the key."""
    turns, stood = looked(VEHICLE, "battery")
    assert turns.key_on_s is None
    assert turns.crank_start_s is not None
    assert set(stood) == {Key.RUNNING}


def test_a_recording_that_begins_with_key_on():
    """Key-on was before: unknown."""
    vehicle = Vehicle(key_on_s=-1.0, turns=(Turn(start_s=4.0),))
    turns, stood = looked(vehicle, "battery", "ignition")
    assert turns.key_on_s is None
    assert Key.OFF not in stood


def test_the_key_of_the_second_turn():
    """Key-on is the last one before the crank that started the engine, by the column."""
    marks = (
        (0.0, Key.OFF),
        (100.0, Key.ON),
        (200.0, Key.OFF),
        (300.0, Key.ON),
        (310.0, Key.CRANK),
        (311.0, Key.RUNNING),
    )
    turns, _ = by_marks(*marks)
    assert (turns.key_on_s, turns.crank_start_s, turns.crank_end_s) == (300.0, 310.0, 311.0)


def test_no_start_no_crank_events():
    """A failed attempt alone leaves the crank's events empty; key-on is still shown."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, fires=False),))
    turns, _ = looked(vehicle, "battery", "ignition")
    assert (turns.crank_start_s, turns.crank_end_s) == (None, None)
    assert turns.key_on_s == pytest.approx(2.0, abs=0.05)


def test_key_on_without_any_crank():
    """Only the key was turned on."""
    turns, stood = looked(Vehicle(), "battery", "ignition", "accessory")
    assert turns.key_on_s == pytest.approx(2.0, abs=0.05)
    assert stood == {}


def test_stretches_that_wires_prove():
    """Off until the first wire moves, on until the crank, running from 2 s after it; accessory is never claimed."""
    _, stood = looked(VEHICLE, "battery", "ignition", "accessory")
    assert set(stood) == {Key.OFF, Key.ON, Key.RUNNING}
    assert stood[Key.OFF] == pytest.approx((0.0, 0.9), abs=0.02)
    assert stood[Key.ON] == pytest.approx((2.1, 5.9), abs=0.02)
    assert stood[Key.RUNNING][0] == pytest.approx(8.9, abs=0.02)


def test_an_accessory_that_is_live_from_the_beginning():
    """The key stood in accessory, not in off."""
    vehicle = Vehicle(accessory_s=-1.0, key_on_s=2.0, turns=(Turn(start_s=6.0),))
    _, stood = looked(vehicle, "battery", "ignition", "accessory")
    assert Key.OFF not in stood
    assert Key.ON in stood


def test_on_ends_with_the_first_attempt():
    """Between two attempts nobody knows where the key stood."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, fires=False), Turn(start_s=9.0)), length_s=18)
    _, stood = looked(vehicle, "battery", "ignition", rate_Hz=1000.0)
    assert stood[Key.ON][1] == pytest.approx(4.9, abs=0.02)


def test_running_ends_with_the_key():
    """The ignition goes dead 4 s after the crank: running is not claimed beyond."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0),), key_off_s=10.0, length_s=20)
    scene = scene_of(record(vehicle, ("battery", "ignition"), logger=Logger(rate_Hz=200.0)), system_V=12)
    found = cranks(scene)
    assert key_off_s(scene, found[0]) == pytest.approx(10.0, abs=0.02)
    stood = stretches(scene, found, found=events(scene, found))
    assert all(each.to_s <= 10.01 for each in stood if each.key is Key.RUNNING)


def test_the_column_names_all_positions():
    """Each word of the column is a stretch; of an off only the first minute counts."""
    marks = (
        (0.0, Key.OFF),
        (300.0, Key.ACCESSORY),
        (320.0, Key.ON),
        (340.0, Key.CRANK),
        (342.0, Key.RUNNING),
        (400.0, Key.OFF),
    )
    _, stood = by_marks(*marks, length_s=800)
    spans = [(each.key, each.from_s, each.to_s) for each in stood]
    assert spans == [
        (Key.OFF, 0.0, 60.0),
        (Key.ACCESSORY, 300.0, 320.0),
        (Key.ON, 320.0, 340.0),
        (Key.RUNNING, 342.0, 400.0),
        (Key.OFF, 400.0, 460.0),
    ]


def test_after_ten_minutes_of_off():
    """Off for 20 minutes: 'after' from 10 min on, its middle 15 min after key-off."""
    _, stood = by_marks((0.0, Key.ON), (100.0, Key.OFF), length_s=1301)
    (after,) = [each for each in stood if each.key is Key.AFTER]
    assert (after.from_s, after.to_s) == (700.0, 1300.0)
    assert after.after_min == pytest.approx(15.0)


def test_the_word_after():
    """Said by the column; the minutes are known where the key-off is in the recording."""
    _, stood = by_marks((0.0, Key.OFF), (30.0, Key.AFTER), (660.0, Key.ON), length_s=700)
    (after,) = [each for each in stood if each.key is Key.AFTER]
    assert after.after_min == pytest.approx(5.75)  # (30 + 660) / 2 / 60
    _, stood = by_marks((0.0, Key.AFTER), length_s=100)
    assert stood[0].after_min is None


def test_the_column_falls_back_to_on():
    """After a start 'on' counts as running; after a failed attempt as nothing."""
    marks = ((0.0, Key.ON), (50.0, Key.CRANK), (52.0, Key.ON))
    started = [12.5] * 52 + [14.0] * 48
    _, stood = by_marks(*marks, length_s=100, values=started)
    assert [(each.key, each.from_s) for each in stood] == [(Key.ON, 0.0), (Key.RUNNING, 54.0)]
    _, stood = by_marks(*marks, length_s=100)
    assert [each.key for each in stood] == [Key.ON]


def test_the_first_start_counts():
    """Of two starts (a stop at a light between) the first is the crank that started the engine."""
    vehicle = Vehicle(turns=(Turn(start_s=4.0), Turn(start_s=16.0, length_s=0.4)), stops=(13.0,), length_s=25)
    scene = scene_of(record(vehicle, logger=Logger(rate_Hz=1000.0)), system_V=12)
    assert starting_crank(cranks(scene)).start_s == pytest.approx(4.0, abs=0.05)


def test_a_column_that_begins_further_down_begins_with_a_turn():
    """Where nothing was written at first, the first word 'on' is the turn; at the first row it says how it stood."""
    late, _ = by_marks((20.0, Key.ON), (30.0, Key.CRANK), (31.0, Key.RUNNING), length_s=60.0)
    first, _ = by_marks((0.0, Key.ON), (30.0, Key.CRANK), (31.0, Key.RUNNING), length_s=60.0)
    assert (late.key_on_s, first.key_on_s) == (20.0, None)
