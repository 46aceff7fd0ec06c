"""Wires that switch with the starter speak for a crank; wires that should have and did not, against one."""

import pytest
from tests.samples.waveforms import Logger, Turn, Vehicle, record

from backprobe.stages.probe.recording.crank_wires import add_wires, refined
from backprobe.stages.probe.recording.evidence import Candidate, Evidence
from backprobe.stages.probe.recording.falls import Fall
from backprobe.stages.probe.recording.scene import scene_of
from backprobe.stages.probe.recording.signs import Sign

VEHICLE = Vehicle(turns=(Turn(start_s=6.0, length_s=1.0),))


def seen(wires, *spans):
    """The evidence that `wires` give on candidates at these times, with the scene."""
    scene = scene_of(record(VEHICLE, ("battery", *wires), logger=Logger(rate_Hz=200.0)), system_V=12)
    found = [(Candidate(from_s, to_s), Evidence()) for from_s, to_s in spans]
    add_wires(scene, found)
    return [evidence for _, evidence in found]


@pytest.mark.parametrize(
    ("wire", "sign"),
    [
        ("accessory", Sign.WIRE_DROPS),
        ("ignition_not_in_crank", Sign.WIRE_DROPS),
        ("start", Sign.WIRE_LIVE),
    ],
)
def test_wires_that_switch_with_the_starter(wire, sign):
    """Dead, or live, for just that time; a moment earlier or later will do."""
    (found,) = seen([wire], (6.02, 6.95))
    assert found.signs == [sign]


@pytest.mark.parametrize("wire", ["constant", "ignition", "running_only", "dead"])
def test_wires_that_do_not(wire):
    """Nothing is said of wires that do not follow the starter."""
    (found,) = seen([wire], (6.0, 7.0))
    assert found.signs == []


def test_a_wire_that_stays_speaks_against_a_crank():
    """The accessory is dead in the crank at 6 s, but not in a fall at 10 s: that one was no crank."""
    crank, load = seen(["accessory"], (6.0, 7.0), (10.0, 11.0))
    assert crank.signs == [Sign.WIRE_DROPS]
    assert load.signs == [Sign.WIRE_STAYS]
    assert load.figures["staying"] == "accessory"


def test_an_accessory_before_the_crank_is_no_start_wire():
    """It is live from key-on to the crank, for 4 s; a load in just that time is not confirmed by it."""
    (found,) = seen(["accessory"], (2.0, 6.0))
    assert Sign.WIRE_LIVE not in found.signs


def fall_from(start_s):
    """A fall that a load began before the starter turned."""
    return Fall(
        start_s=start_s,
        end_s=7.0,
        before_V=12.5,
        trough_V=10.0,
        plateau_V=11.0,
        fall_s=0.01,
        step_s=0.005,
        recovered=True,
    )


@pytest.mark.parametrize("wire", ["accessory", "start"])
def test_a_wire_tells_when_the_starter_turned(wire):
    """A load from 3 s hides the crank in the level; the wire says 6 s."""
    scene = scene_of(record(VEHICLE, ("battery", wire), logger=Logger(rate_Hz=200.0)), system_V=12)
    assert refined(scene, Candidate(3.0, 7.0, fall_from(3.0))).start_s == pytest.approx(6.0, abs=0.01)


def test_nothing_is_refined_without_need():
    """A crank that begins when the wire does, or one seen on wires only, is left as it is."""
    scene = scene_of(record(VEHICLE, ("battery", "accessory"), logger=Logger(rate_Hz=200.0)), system_V=12)
    for candidate in (Candidate(5.99, 7.0, fall_from(5.99)), Candidate(3.0, 7.0)):
        assert refined(scene, candidate) is candidate
