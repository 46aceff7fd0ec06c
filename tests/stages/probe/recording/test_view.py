"""A whole recording in one look, and what must not change the answer."""

import dataclasses
import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.waveforms import Load, Logger, Turn, Vehicle, record, recording_of

from backprobe.evidence.keys import Key
from backprobe.evidence.recording import KeyMark
from backprobe.findings import Verdict
from backprobe.limits.lookup import meter
from backprobe.stages.probe.recording import trace
from backprobe.stages.probe.recording.cranks import LIKELY
from backprobe.stages.probe.recording.view import look, readings_from
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("service"), cylinders=4)
WIRES = ("battery", "constant", "ignition", "accessory")


@st.composite
def vehicles(draw):
    """Vehicles with a load before the crank, perhaps a failed attempt, and a start; 12 V."""
    failed = draw(st.booleans())
    load_s = draw(st.floats(2.2, 3.0))
    loads = (Load(start_s=load_s, end_s=load_s + 1.5, amps=draw(st.floats(20.0, 150.0))),)
    options = {"strokes_Hz": draw(st.floats(5.0, 14.0)), "swing": draw(st.floats(0.2, 0.4))}
    first = Turn(start_s=6.0, length_s=draw(st.floats(0.6, 1.4)), fires=not failed, **options)
    turns = (first, Turn(start_s=9.5, length_s=0.8, **options)) if failed else (first,)
    return Vehicle(inner_ohm=draw(st.floats(0.005, 0.008)), loads=loads, turns=turns, length_s=16)


@dataclasses.dataclass(frozen=True)
class Made:
    """A recording with the times and columns that it was made of."""

    times: list
    columns: dict

    def recording(self):
        """The recording."""
        return recording_of(self.times, self.columns)


def made(vehicle, *, rate_Hz=250.0):
    """A recording of a vehicle that can be made again with changes."""
    recording = record(vehicle, WIRES, logger=Logger(rate_Hz=rate_Hz))
    window = recording.fine(-1.0, 1e9)
    return Made(list(window.time_s), {name: list(values) for name, values in window.values.items()})


def plain(view):
    """Events and attempts as rounded figures."""
    shown = view.as_json()
    return shown["events"], shown["cranks"]


def test_json_of_a_start():
    """Every part is there, and it is plain JSON."""
    view = look(record(Vehicle(turns=(Turn(start_s=5.0),)), WIRES), SETUP)
    shown = json.loads(json.dumps(view.as_json()))
    assert set(shown) == {"events", "time_known", "cranks", "channels", "notes"}
    assert shown["events"]["key_on_s"] == pytest.approx(2.0, abs=0.05)
    assert shown["events"]["crank_start_s"] == pytest.approx(5.0, abs=0.05)
    assert shown["events"]["crank_end_s"] == pytest.approx(5.9, abs=0.05)
    (crank,) = shown["cranks"]
    assert set(crank) == {"start_s", "end_s", "started", "sure", "why"}
    assert [channel["channel"] for channel in shown["channels"]] == list(WIRES)
    assert shown["channels"][0]["cranking_rpm"] == pytest.approx(240, abs=10)


def test_a_load_is_noted_not_listed():
    """The heater at 3 s stands in the notes with its reason."""
    vehicle = Vehicle(loads=(Load(start_s=3.0, end_s=5.0, amps=110.0),), turns=(Turn(start_s=8.0),))
    view = look(record(vehicle), SETUP)
    assert len(view.cranks) == 1
    assert any(note.startswith("a load from 3.00 to 5.00 s is not taken for a crank:") for note in view.notes)


def test_notes_on_the_reference():
    """Who stood in for the battery, and that its clip fell off."""
    vehicle = Vehicle(turns=(Turn(start_s=5.0),))
    assert look(record(vehicle, ("constant",)), SETUP).notes[0] == (
        "no battery channel: cranks were looked for on constant"
    )
    battery = made(vehicle).columns["battery"]
    loose = [0.0 if 100 < i < 120 else volts for i, volts in enumerate(battery)]
    times = [i / 250 for i in range(len(battery))]
    view = look(recording_of(times, {"battery": loose}), SETUP)
    assert "taken for lost contact" in view.notes[0]
    assert view.events.crank_start_s == pytest.approx(5.0, abs=0.05)
    dead = look(recording_of(times, {"battery": [0.0] * len(times), "constant": battery}), SETUP)
    assert dead.notes[0] == "the battery channel does not show a battery: cranks were looked for on constant"
    assert look(recording_of(times, {"red": [0.0] * len(times)}), SETUP).notes == (
        "no channel stands at the level of a supply",
        "no crank was found",
    )


def test_a_clock_that_stands_still():
    """Times are estimates, and that is said; nothing is proven."""
    recording = record(Vehicle(turns=(Turn(start_s=5.0),)))
    stopped = dataclasses.replace(recording, time_known=False, time_note="the time column stands at 0")
    view = look(stopped, SETUP)
    assert view.notes[0] == "the time column stands at 0"
    assert not view.as_json()["time_known"]
    assert not view.channels[0].sampling.fast_enough
    nameless = dataclasses.replace(stopped, time_note=None)
    assert "estimates" in look(nameless, SETUP).notes[0]


def test_dropouts():
    """Empty cells in every third row, and a second without rows: the crank is found, the pace is told honestly."""
    whole = made(Vehicle(turns=(Turn(start_s=5.0),)), rate_Hz=500.0)
    rows = [(t, v) for t, v in zip(whole.times, whole.columns["battery"], strict=True) if not 8.0 < t < 9.0]
    values = [float("nan") if i % 3 == 0 else v for i, (_, v) in enumerate(rows)]
    view = look(recording_of([t for t, _ in rows], {"battery": values}), SETUP)
    assert view.events.crank_start_s == pytest.approx(5.0, abs=0.05)
    assert view.channels[0].sampling.fast_enough  # 4 ms at the most between two values


def test_tiny_recordings():
    """One row, two rows, nothing but a key column's marks: an answer, no error."""
    for times in ([0.0], [0.0, 1.0], [0.0, 0.0]):
        view = look(recording_of(times, {"battery": [12.5] * len(times)}), SETUP)
        assert view.cranks == ()
        assert view.channels[0].dip.verdict is Verdict.OPEN
        assert readings_from(view) == ()


def test_a_model_of_what_is_hidden_can_be_given():
    """It is asked with the lowest value shown and the level before."""
    asked = []

    def hidden_V(shown_V, rest_V):
        asked.append((shown_V, rest_V))
        return 0.0

    vehicle = Vehicle(turns=(Turn(start_s=5.0, inrush_A=300.0),))
    view = look(record(vehicle, ("battery", "accessory"), logger=Logger(rate_Hz=20.0)), SETUP, hidden_V=hidden_V)
    assert view.channels[0].dip.verdict is Verdict.HOLDS
    assert asked[0][0] == view.channels[0].crank_lowest_V
    assert asked[0][1] == pytest.approx(12.54, abs=0.03)


def test_a_long_recording_gives_the_same_answer_as_a_short_one():
    """Three minutes at 1000 rows/s around the same crank: the envelope and a few windows are enough."""
    vehicle = Vehicle(key_on_s=92.0, turns=(Turn(start_s=95.0),), length_s=180.0)
    near = Vehicle(turns=(Turn(start_s=5.0),), length_s=15.0)
    far, short = look(record(vehicle, WIRES), SETUP), look(record(near, WIRES), SETUP)
    assert far.events.key_on_s == pytest.approx(short.events.key_on_s + 90, abs=0.01)
    assert far.events.crank_start_s == pytest.approx(short.events.crank_start_s + 90, abs=0.01)
    assert far.events.crank_end_s == pytest.approx(short.events.crank_end_s + 90, abs=0.01)
    assert [each.dip.verdict for each in far.channels] == [each.dip.verdict for each in short.channels]
    assert {(r.wire, r.key) for r in far.readings} == {(r.wire, r.key) for r in short.readings}


@settings(max_examples=15, deadline=None)
@given(vehicles())
def test_the_start_is_found(vehicle):
    """Whatever the vehicle: the last turn started it, its moments within 50 ms, no load is a likely crank."""
    view = look(made(vehicle, rate_Hz=500.0).recording(), SETUP)
    turn = vehicle.turns[-1]
    assert view.events.key_on_s == pytest.approx(2.0, abs=0.05)
    assert view.events.crank_start_s == pytest.approx(turn.start_s, abs=0.05)
    assert view.events.crank_end_s == pytest.approx(turn.end_s, abs=0.05)
    assert len([crank for crank in view.cranks if crank.sure >= LIKELY]) == len(vehicle.turns)


@settings(max_examples=10, deadline=None)
@given(vehicles())
def test_twice_the_voltage_is_the_same_story(vehicle):
    """A 24 V vehicle with all volts doubled has the same events and attempts, and twice the volts."""
    whole = made(vehicle)
    doubled = recording_of(whole.times, {name: [2 * v for v in values] for name, values in whole.columns.items()})
    view_12, view_24 = look(whole.recording(), SETUP), look(doubled, dataclasses.replace(SETUP, system_V=24))
    assert view_24.events == view_12.events
    assert [(c.start_s, c.end_s, c.started, c.sure) for c in view_24.cranks] == [
        (c.start_s, c.end_s, c.started, c.sure) for c in view_12.cranks
    ]
    for at_24, at_12 in zip(view_24.channels, view_12.channels, strict=True):
        assert at_24.crank_lowest_V == pytest.approx(2 * at_12.crank_lowest_V)
        assert at_24.rest_V == pytest.approx(2 * at_12.rest_V)


@settings(max_examples=10, deadline=None)
@given(vehicles(), st.sampled_from(["first", "last"]))
def test_a_dead_channel_changes_nothing(vehicle, place):
    """A wire at 0 V among the others adds its own row and leaves all else as it was."""
    whole = made(vehicle)
    dead = {"dead": [0.0] * len(whole.times)}
    columns = dead | whole.columns if place == "first" else whole.columns | dead
    view, more = look(whole.recording(), SETUP), look(recording_of(whole.times, columns), SETUP)
    assert plain(more) == plain(view)
    assert [c.as_json() for c in more.channels if c.channel != "dead"] == [c.as_json() for c in view.channels]
    assert [r for r in more.readings if r.wire != "dead"] == list(view.readings)


@settings(max_examples=10, deadline=None)
@given(vehicles(), st.floats(-50.0, 5000.0))
def test_another_zero_of_time_shifts_the_events_only(vehicle, shift_s):
    """A recording that begins at another time says the same, later."""
    whole = made(vehicle)
    later = recording_of([t + shift_s for t in whole.times], whole.columns)
    view, moved = look(whole.recording(), SETUP), look(later, SETUP)
    for name in ("key_on_s", "crank_start_s", "crank_end_s"):
        assert getattr(moved.events, name) == pytest.approx(getattr(view.events, name) + shift_s, abs=0.01)
    assert [c.started for c in moved.cranks] == [c.started for c in view.cranks]
    assert [c.dip.verdict for c in moved.channels] == [c.dip.verdict for c in view.channels]
    assert [c.crank_lowest_V for c in moved.channels] == [c.crank_lowest_V for c in view.channels]


@settings(max_examples=150, deadline=None)
@given(
    st.lists(st.tuples(st.floats(0.0, 0.5), st.floats(-1.0, 32.0) | st.just(float("nan"))), min_size=1, max_size=120),
    st.lists(st.sampled_from(Key), max_size=6),
    st.sampled_from([(12, 40_000), (24, 40_000), (12, 10), (24, 10)]),
)
def test_any_recording_gets_an_answer(steps, keys, case):
    """Noise, gaps, steps of no length, keys in any order, whole or in windows: no error."""
    system_V, whole_rows = case
    times, values = [0.0], [12.0]
    for step_s, volts in steps:
        times.append(times[-1] + step_s)
        values.append(volts)
    marks = tuple(KeyMark(times[-1] * i / len(keys), key) for i, key in enumerate(keys))
    recording = recording_of(times, {"battery": values, "wire": values[::-1]}, keys=marks, bucket_rows=3)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(trace, "WHOLE_ROWS", whole_rows)
        view = look(recording, Setup(system_V=system_V, meter=meter("basic"), cylinders=6, unit_least_V=9.0))
    json.dumps(view.as_json(), allow_nan=False)
    assert all(0.0 <= crank.sure <= 1.0 and crank.start_s <= crank.end_s for crank in view.cranks)
