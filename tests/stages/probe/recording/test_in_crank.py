"""What one channel did in one crank."""

import pytest
from tests.samples.waveforms import Logger, Turn, Vehicle, record, recording_of

from backprobe.stages.probe.recording.cranks import Crank
from backprobe.stages.probe.recording.in_crank import in_crank, windows
from backprobe.stages.probe.recording.scene import scene_of

VEHICLE = Vehicle(turns=(Turn(start_s=5.0),))
CRANK = Crank(start_s=5.0, end_s=5.9, started=True, sure=1.0, why=())


def seen(name, *wires, rate_Hz=1000.0, noise_V=0.0):
    """Channel `name` in the crank of the vehicle."""
    recording = record(VEHICLE, ("battery", *wires), logger=Logger(rate_Hz=rate_Hz, noise_V=noise_V))
    scene = scene_of(recording, system_V=12)
    return in_crank(scene, recording.channel(name), crank=CRANK)


def stepped(columns, *, crank=(5.0, 6.0), rate_Hz=100.0):
    """Each channel (levels before, in and after the crank) in that crank."""
    start_s, end_s = crank
    times = [i / rate_Hz for i in range(int(10 * rate_Hz))]
    values = {
        name: [levels[0] if t < start_s else levels[1] if t < end_s else levels[2] for t in times]
        for name, levels in columns.items()
    }
    scene = scene_of(recording_of(times, values), system_V=12)
    attempt = Crank(start_s=start_s, end_s=end_s, started=True, sure=1.0, why=())
    return {channel.name: in_crank(scene, channel, crank=attempt) for channel in scene.recording.channels}


def test_the_battery():
    """Level before, trough, recovery and the level a second later are those of the vehicle."""
    found = seen("battery")
    lowest = min(VEHICLE.battery_at(5.0 + i / 1000) for i in range(900))
    assert found.rest_V == pytest.approx(VEHICLE.battery_at(4.7), abs=0.005)
    assert found.lowest_V == pytest.approx(lowest, abs=0.005)
    assert found.reading_V == found.lowest_V
    assert found.after_1s_V == pytest.approx(VEHICLE.battery_at(6.9), abs=0.03)
    assert found.ripple.frequency_Hz == pytest.approx(8.0, abs=0.3)
    assert found.loss_V is None
    assert not found.dead_before


def test_seconds_below():
    """Down to 8 V for the whole second at 100 rows/s: 1.0 s below 9 V, nothing below 8 V."""
    found = stepped({"battery": (12.5, 8.0, 14.0)})["battery"]
    assert found.seconds_below(9.0) == pytest.approx(1.0, abs=0.011)
    assert found.seconds_below(8.0) == 0.0


def test_recovery():
    """A level that comes back within a step, and one that never does."""
    assert stepped({"battery": (12.5, 9.0, 12.45)})["battery"].recovery_s == pytest.approx(0.0, abs=0.03)
    assert stepped({"battery": (12.5, 9.0, 12.0)})["battery"].recovery_s is None


def test_is_it_the_wire_or_the_battery():
    """The battery falls to 10 V; one wire follows, one loses 2 V more; an offset at rest is no loss."""
    found = stepped(
        {
            "battery": (12.5, 10.0, 14.0),
            "follows": (12.4, 9.9, 13.9),
            "loses": (12.5, 8.0, 14.0),
        }
    )
    assert found["follows"].loss_V == pytest.approx(0.0)  # 10.0 - 9.9 - (12.5 - 12.4)
    assert found["loses"].loss_V == pytest.approx(2.0)  # 10.0 - 8.0


def test_a_start_wire_reads_its_level_while_live():
    """Dead before, live in the crank: the reading is the trough, not the zero beside it."""
    found = seen("start", "start")
    assert found.dead_before
    assert found.lowest_V < 0.1
    assert found.reading_V == pytest.approx(seen("battery").lowest_V - 0.02, abs=0.6)
    assert found.recovery_s is None


@pytest.mark.parametrize("wire", ["dead", "running_only"])
def test_a_wire_that_is_dead_in_the_crank(wire):
    """Its reading is zero, although one of them comes alive right after."""
    assert seen(wire, wire).reading_V < 0.1


def test_slow_sampling_leaves_a_dead_wire_open():
    """At 2 rows a second no sample lies in the crank from 5.1 to 5.4 s: nothing is said of a wire that was dead."""
    values = [0.0] * 11 + [12.4] * 9
    recording = recording_of([i / 2 for i in range(20)], {"wire": values, "battery": [12.4] * 20})
    attempt = Crank(start_s=5.1, end_s=5.4, started=True, sure=1.0, why=())
    found = in_crank(scene_of(recording, system_V=12), recording.channels[0], crank=attempt)
    assert found.reading_V is None


def test_a_channel_that_is_empty_in_the_crank():
    """No value, no figures."""
    values = [12.5 if i < 400 or i > 700 else float("nan") for i in range(1000)]
    recording = recording_of([i / 100 for i in range(1000)], {"battery": values})
    found = in_crank(scene_of(recording, system_V=12), recording.channels[0], crank=CRANK)
    assert (found.lowest_V, found.lowest_s, found.ripple) == (None, None, None)


def test_the_rows_asked_for_are_announced():
    """A second before, and five after for the recovery."""
    scene = scene_of(record(VEHICLE, logger=Logger(rate_Hz=100.0)), system_V=12)
    assert windows(scene, [CRANK]) == [(4.0, 10.9)]
