"""The probe's answer as JSON."""

from __future__ import annotations

import json
from dataclasses import replace

from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, rows, table

from backprobe.evidence.keys import Key
from backprobe.formats.recording_csv import read_recording
from backprobe.stages.probe.answer import answer_recording, answer_table, without_absent


def test_the_keys_of_the_answer():
    """What a script relies on."""
    answer = answer_table(table(*rows("Red", SUPPLY), *rows("Violet", IGNITION)), SETUP).as_json()
    assert set(answer) == {"ok", "system_V", "wires", "choice", "next", "skipped"}
    assert set(answer["wires"][0]) == {"wire", "role", "probability", "verdict", "tap", "reasons"}
    assert answer["choice"] == {"supply": "Red", "ignition": "Violet"}
    assert json.loads(json.dumps(answer)) == answer


def test_what_is_asked_next_has_its_four_words():
    """Wire, key, capture, why; the wire is null for any not yet in the table."""
    upcoming = answer_table(table(), SETUP).as_json()["next"]
    assert set(upcoming) == {"wire", "key", "capture", "why"}
    assert upcoming["wire"] is None


def test_positions_that_the_table_says_are_absent_are_never_asked():
    """'na' at accessory is as good as --no-accessory."""
    fitted = without_absent(SETUP, frozenset({Key.ACCESSORY}))
    assert not fitted.has_accessory
    assert fitted.has_crank
    red = replace(table(*rows("Red", SUPPLY, without="accessory")), absent_keys=frozenset({Key.ACCESSORY}))
    assert answer_table(red, SETUP).result.supply == "Red"


def test_a_recording_adds_its_events_and_channels():
    """A flat recording: no crank, one candidate, the battery beside it."""
    lines = ["time_s,battery,Red", *(f"{i / 100:.2f},12.50,12.45" for i in range(400))]
    answer = answer_recording(read_recording(lambda: lines, file="flat.csv", thresholds_V=[9.0, 10.0]), SETUP)
    shown = answer.as_json()
    assert shown["events"] == {"key_on_s": None, "crank_start_s": None, "crank_end_s": None}
    assert [channel["channel"] for channel in shown["channels"]] == ["battery", "Red"]
    assert [wire["wire"] for wire in shown["wires"]] == ["Red"]


def test_a_slow_recording_is_no_better_than_a_slow_hold():
    """However quick the meter's own hold is, a recording's steps decide what it hid."""
    quick = replace(SETUP, meter=replace(SETUP.meter, min_capture_ms=1.0))
    lines = ["time_s,battery,Red", *(f"{i / 20:.2f},12.50,12.45" for i in range(100))]
    answer = answer_recording(read_recording(lambda: lines, file="slow.csv", thresholds_V=[9.0, 10.0]), quick)
    assert answer.result.setup.meter.min_capture_ms == 100.0
