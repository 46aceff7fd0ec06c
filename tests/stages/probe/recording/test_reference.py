"""The channel in whose level cranks are looked for."""

from tests.samples.waveforms import Logger, Turn, Vehicle, record, recording_of

from backprobe.stages.probe.recording.reference import battery, is_battery, steadiest
from backprobe.stages.probe.recording.scene import scene_of

VEHICLE = Vehicle(turns=(Turn(start_s=5.0),))


def chosen(*wires, system_V=12):
    """The name of the reference among some wires."""
    found = scene_of(record(VEHICLE, wires, logger=Logger(rate_Hz=100.0)), system_V=system_V).reference
    return found.name if found else None


def test_the_battery_by_its_name():
    """'battery' in any case, with blanks around it; no other name."""
    channels = recording_of([0, 1], {" Battery ": [12.0, 12.0], "battery 2": [12.0, 12.0]}).channels
    assert [is_battery(channel) for channel in channels] == [True, False]
    assert battery(channels) is channels[0]
    assert battery(channels[1:]) is None


def test_the_battery_comes_first():
    """Where there is a battery channel it is the reference."""
    assert chosen("ignition", "constant", "battery") == "battery"


def test_without_a_battery_the_steadiest_wire():
    """A constant before an ignition, an ignition before what is dead in the crank, that before a start wire."""
    assert chosen("accessory", "ignition", "constant") == "constant"
    assert chosen("accessory", "ignition", "start") == "ignition"
    assert chosen("start", "accessory") == "accessory"


def test_nothing_at_the_level_of_a_supply():
    """A dead wire is no reference; nor is a 12 V wire in a 24 V vehicle."""
    assert chosen("dead") is None
    assert chosen("battery", system_V=24) is None


def test_the_first_guess_is_the_highest_mean():
    """Before anything is known of the wires, the channel with the highest mean."""
    recording = recording_of([0, 1], {"a": [0.0, 12.0], "b": [12.0, 12.0]})
    assert steadiest(recording).name == "b"
    assert steadiest(recording_of([0, 1], {"engine_speed": [0.0, 0.0]})) is None
