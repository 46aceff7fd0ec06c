"""A recording is turned into readings of what it shows with certainty."""

from array import array

import pytest
from tests.samples.waveforms import WIRE_LIVE, Logger, Turn, Vehicle, record, recording_of

from backprobe.evidence.keys import Capture, Key
from backprobe.limits.lookup import meter
from backprobe.stages.probe.recording.readings import display_V
from backprobe.stages.probe.recording.trace import Line
from backprobe.stages.probe.recording.view import look, readings_from
from backprobe.stages.probe.setup import Setup

VEHICLE = Vehicle(accessory_s=1.0, key_on_s=2.0, turns=(Turn(start_s=6.0),), length_s=20)
WIRES = ("constant", "ignition", "accessory", "ignition_not_in_crank", "start", "running_only", "dead")


def readings(*wires, vehicle=VEHICLE, rate_Hz=1000.0, key="", digits=3):
    """The readings in a recording, by wire and key."""
    logger = Logger(rate_Hz=rate_Hz, digits=digits)
    recording = record(vehicle, wires, logger=logger, key=key)
    view = look(recording, Setup(system_V=vehicle.system_V, meter=meter("service")))
    return {(each.wire, each.key): each for each in readings_from(view)}


@pytest.mark.parametrize("system_V", [12, 24])
def test_every_wire_reads_as_it_is(system_V):
    """Off, on, crank and running of seven kinds of wires: live where they are live, dead where they are dead."""
    vehicle = Vehicle(system_V=system_V, accessory_s=1.0, turns=(Turn(start_s=6.0, inrush_A=500.0),), length_s=20)
    found = readings("battery", *WIRES, vehicle=vehicle)
    assert {key for _, key in found} == {Key.OFF, Key.ON, Key.CRANK, Key.RUNNING}
    assert len(found) == 4 * len(WIRES)
    for (wire, key), reading in found.items():
        assert (reading.volts > system_V / 3) is (key in WIRE_LIVE[wire]), (wire, key)


def test_neither_battery_nor_speed_is_a_candidate():
    """They are references."""
    times = [i / 100 for i in range(1000)]
    recording = recording_of(times, {"Battery": [12.5] * 1000, "engine_speed": [0.0] * 1000, "red": [12.4] * 1000})
    view = look(recording, Setup(system_V=12, meter=meter("service")))
    assert {reading.wire for reading in readings_from(view)} <= {"red"}


@pytest.mark.parametrize(
    ("rate_Hz", "capture"), [(1000.0, Capture.LOGGED), (20.0, Capture.MIN), (2.0, Capture.DISPLAY)]
)
def test_the_capture_of_a_crank_is_as_good_as_the_sampling(rate_Hz, capture):
    """Fast enough for the trough, for the plateau, or for neither."""
    vehicle = Vehicle(turns=(Turn(start_s=6.2, length_s=1.6),), length_s=20)
    assert (
        readings("battery", "ignition", "accessory", vehicle=vehicle, rate_Hz=rate_Hz)["ignition", Key.CRANK].capture
        is capture
    )


def test_figures_have_the_files_digits():
    """A file with two decimals gives '12.54' and a count of 0.01 V; no reading is '-0.00'."""
    found = readings("battery", "constant", "dead", digits=2)
    for reading in found.values():
        assert reading.typed == f"{reading.volts:.2f}"
        assert reading.typed != "-0.00"
        assert reading.count_V == pytest.approx(0.01)
    assert found["constant", Key.RUNNING].volts == pytest.approx(14.08, abs=0.03)


def test_only_a_sure_crank_is_read():
    """A failed attempt on a recording of 10 rows/s is not sure enough to be evidence."""
    vehicle = Vehicle(turns=(Turn(start_s=6.0, fires=False),), length_s=16)
    assert all(key is not Key.CRANK for _, key in readings("battery", "constant", vehicle=vehicle, rate_Hz=10.0))


def test_the_key_column_gives_accessory():
    """Said by the column; the waveforms alone never give it."""
    assert ("accessory", Key.ACCESSORY) in readings("battery", "accessory", key="whole", rate_Hz=100.0)
    assert ("accessory", Key.ACCESSORY) not in readings("battery", "accessory", rate_Hz=100.0)


def test_running_after_a_column_that_falls_back():
    """'on' after the start reads as running: 14.1 V."""
    found = readings("battery", "constant", key="falls back", rate_Hz=100.0)
    assert found["constant", Key.RUNNING].volts == pytest.approx(14.08, abs=0.05)
    assert found["constant", Key.ON].volts == pytest.approx(12.53, abs=0.05)


def test_a_display_shows_the_mean_of_what_is_pulsed():
    """A lamp dimmed to 60 %: 7.2 V of 12; a steady wire with one glitch shows its median."""
    pulsed = [12.0] * 60 + [0.0] * 40
    glitch = [12.0] * 99 + [0.0]
    times = array("d", range(100))
    assert display_V(Line(times, array("d", pulsed)), system_V=12) == pytest.approx(7.2)
    assert display_V(Line(times, array("d", glitch)), system_V=12) == 12.0
    assert display_V(Line(array("d"), array("d")), system_V=12) is None
