"""Every channel is described by its own figures."""

import pytest
from tests.samples.waveforms import Logger, Turn, Vehicle, record, recording_of

from backprobe.limits.lookup import meter
from backprobe.stages.probe.recording.channels import channel_view, counted, thresholds_V
from backprobe.stages.probe.recording.cranks import Crank
from backprobe.stages.probe.recording.dip import deeper_V
from backprobe.stages.probe.recording.key_events import Key, Stretch
from backprobe.stages.probe.recording.scene import scene_of
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("service"), cylinders=4, unit_least_V=8.0)


def attempt(start_s, end_s, *, started=True, sure=1.0):
    """An attempt to crank."""
    return Crank(start_s=start_s, end_s=end_s, started=started, sure=sure, why=())


def views(columns, *cranks, running=None, setup=SETUP, rate_Hz=100.0):
    """The view of each channel of a recording of 20 s."""
    times = [i / rate_Hz for i in range(int(20 * rate_Hz))]
    values = {name: [function(t) for t in times] for name, function in columns.items()}
    recording = recording_of(times, values)
    scene = scene_of(recording, system_V=setup.system_V)
    return {
        channel.name: channel_view(scene, channel, setup=setup, cranks=cranks, running=running, hidden_V=deeper_V)
        for channel in recording.channels
    }


def stepped(rest_V, low_V, after_V):
    """A level that falls from 5 to 6 s."""
    return lambda t: rest_V if t < 5 else low_V if t < 6 else after_V


def test_thresholds():
    """10 and 9 V, twice at 24 V, and the unit's own minimum where it is known."""
    assert thresholds_V(SETUP) == (10.0, 9.0, 8.0)
    assert thresholds_V(Setup(system_V=24, meter=meter("basic"))) == (20.0, 18.0)


def test_cranks_that_count():
    """All sure ones; without one the likeliest, unless it is called a load."""
    sure, likely, unsure, load = (attempt(i, i + 1, sure=s) for i, s in enumerate((0.9, 0.6, 0.3, 0.1)))
    assert counted([likely, sure, load]) == (sure,)
    assert counted([unsure, likely]) == (likely,)
    assert counted([unsure, load]) == (unsure,)
    assert counted([load]) == ()


def test_times_spent_low():
    """Down to 8.5 V for a second: so long below 10 and 9 V, never below 8 V; overall as the reader counted."""
    view = views({"battery": stepped(12.5, 8.5, 14.0)}, attempt(5, 6))["battery"]
    seconds = {each.threshold_V: each for each in view.below}
    assert seconds[10.0].seconds_in_crank == pytest.approx(1.0, abs=0.02)
    assert seconds[9.0].seconds_in_crank == pytest.approx(1.0, abs=0.02)
    assert seconds[8.0].seconds_in_crank == 0.0
    assert seconds[9.0].seconds == pytest.approx(1.0, abs=0.02)
    assert seconds[8.0].seconds is None  # the reader was not asked for 8 V


@pytest.mark.parametrize(
    ("wire", "cause", "loss_V"),
    [
        (stepped(12.5, 9.9, 14.0), "battery", 0.1),  # follows the battery at 10.0 V
        (stepped(12.5, 8.0, 14.0), "wire", 2.0),
    ],
)
def test_wire_or_battery(wire, cause, loss_V):
    """A wire that stands more than 0.5 V below the battery has its own fault."""
    view = views({"battery": stepped(12.5, 10.0, 14.0), "wire": wire}, attempt(5, 6))["wire"]
    assert view.cause == cause
    assert view.loss_V == pytest.approx(loss_V)


def test_wire_and_battery():
    """The battery itself is below 9 V, and the wire loses another volt."""
    columns = {"battery": stepped(12.5, 8.5, 14.0), "wire": stepped(12.5, 7.5, 14.0)}
    found = views(columns, attempt(5, 6))
    assert found["wire"].cause == "both"
    assert found["battery"].cause is None


def test_ripple_and_cranking_speed():
    """8 compressions a second of a four-cylinder engine are 240 /min; without a cylinder count there is no speed."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0, length_s=2.0, strokes_Hz=8.0),))
    recording = record(vehicle, logger=Logger(rate_Hz=500.0))
    scene = scene_of(recording, system_V=12)

    def looked(setup):
        cranks = (attempt(5.0, 7.0),)
        return channel_view(scene, recording.channels[0], setup=setup, cranks=cranks, running=None, hidden_V=deeper_V)

    view = looked(SETUP)
    assert view.ripple_Hz == pytest.approx(8.0, abs=0.2)
    assert view.cranking_rpm == pytest.approx(240.0, abs=6.0)
    assert looked(Setup(system_V=12, meter=meter("service"))).cranking_rpm is None


def test_charging_level():
    """The median while the engine runs: 14.1 V, although it began at 12.4."""
    columns = {"battery": lambda t: 12.4 if t < 7 else 14.1}
    view = views(columns, attempt(5, 6), running=Stretch(Key.RUNNING, 6.5, 19.0))["battery"]
    assert view.charging_V == 14.1


def test_without_a_crank():
    """Lowest and pace are told, the rest is not."""
    view = views({"battery": lambda t: 12.5 - (3.0 < t < 3.1)})["battery"]
    assert (view.lowest_V, round(view.lowest_s, 2)) == (11.5, 3.01)
    assert (view.crank_lowest_V, view.rest_V, view.recovery_s, view.charging_V) == (None, None, None, None)
    assert view.sampling.step_s == pytest.approx(0.01)
    assert str(view.dip.verdict) == "open"


def test_the_lowest_of_all_attempts():
    """8.0 V in a failed attempt, 9.5 V in the start: the lowest counts, recovery and level are those of the start."""
    columns = {"battery": lambda t: 8.0 if 5 <= t < 6 else 9.5 if 10 <= t < 11 else 13.9 if t >= 11 else 12.5}
    view = views(columns, attempt(5, 6, started=False), attempt(10, 11))["battery"]
    assert view.crank_lowest_V == 8.0
    assert view.after_1s_V == 13.9
    assert view.recovery_s == pytest.approx(0.0, abs=0.03)


def test_json_is_rounded():
    """Plain values with declared digits; the dip as a finding."""
    shown = views({"battery": stepped(12.5123, 9.5123, 14.0123)}, attempt(5, 6))["battery"].as_json()
    assert shown["crank_lowest_V"] == 9.512
    assert shown["rest_V"] == 12.51
    assert shown["sampled_fast_enough"] is False
    assert shown["sampling"]["limit_s"] == 0.005
    assert shown["dip"]["verdict"] == "thin"
    assert shown["dip"]["value"] == 9.51
