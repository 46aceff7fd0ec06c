"""A recording is looked through once for what all looks share."""

import dataclasses

import pytest
from tests.samples.waveforms import Logger, Turn, Vehicle, record, recording_of

from backprobe.stages.probe.recording.scene import scene_of

VEHICLE = Vehicle(turns=(Turn(start_s=5.0),))


def test_roles_of_the_channels():
    """Battery and candidates are told apart; the engine speed is neither."""
    recording = record(VEHICLE, ("battery", "constant"), logger=Logger(rate_Hz=100.0))
    scene = scene_of(recording, system_V=12)
    assert scene.battery.name == "battery"
    assert [channel.name for channel in scene.candidates] == ["constant"]
    assert scene.speed is None


@pytest.mark.parametrize(("system_V", "scale"), [(12, 1.0), (24, 2.0)])
def test_scale(system_V, scale):
    """Figures for 12 V count twice at 24 V."""
    assert scene_of(recording_of([0, 1], {"battery": [12.0, 12.0]}), system_V=system_V).scale == scale


def test_lost_contact_is_not_the_supply():
    """0.2 V on the battery is a lost clip; the line goes on without it, the second's level as well."""
    values = [12.5] * 300 + [0.2] * 100 + [12.4] * 100
    scene = scene_of(recording_of([i / 100 for i in range(500)], {"battery": values}), system_V=12)
    assert min(scene.supply(0, 5).values) == 12.4
    assert scene.supply_levels(0, 4.99) == [12.5, 12.5, 12.5, 12.4]


def test_a_sparse_channel_has_its_own_step():
    """A battery with a value in every tenth row of 100 rows/s is sampled every 0.1 s."""
    values = [12.5 if i % 10 == 0 else float("nan") for i in range(500)]
    scene = scene_of(recording_of([i / 100 for i in range(500)], {"battery": values}), system_V=12)
    assert scene.supply_step_s == pytest.approx(0.1)


def test_no_supply_at_all():
    """Without a channel at battery level there is no line and no level."""
    scene = scene_of(recording_of([0.0, 1.0, 2.0], {"wire": [0.0, 0.1, 0.0]}), system_V=12)
    assert scene.reference is None
    assert len(scene.supply(0, 2)) == 0
    assert scene.supply_levels(0, 2) == []


def test_a_long_recording_is_read_again_in_few_windows():
    """Two minutes at 1000 rows/s with key, load and crank within 15 s: one window holds them all."""
    recording = record(dataclasses.replace(VEHICLE, length_s=120.0), ("battery", "ignition"))
    calls = []

    def fine(from_s, to_s):
        calls.append((from_s, to_s))
        return recording.fine(from_s, to_s)

    scene = scene_of(dataclasses.replace(recording, fine=fine), system_V=12)
    assert len(calls) == 1
    assert calls[0][0] < 2.0 < 6.0 < calls[0][1]
    assert [spell.live for spell in scene.wires["ignition"].spells] == [False, True]
