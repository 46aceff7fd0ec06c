"""The bus logs of a job."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from tests.samples.bus_heard import VIN, cycle_heard

from backprobe.evidence.job_sheet import JobSheet, Vehicle
from backprobe.evidence.recording import Recording
from backprobe.findings import Verdict
from backprobe.formats.recording_csv import read_recording
from backprobe.job.bus import bus_findings, buses_of, keyed_by, known_logs, listened, log_body
from backprobe.job.entry import Entry
from backprobe.job.fold import JobState, fold
from backprobe.limits.lookup import meter
from backprobe.stages.bus.heard import Health, SilentNode
from backprobe.stages.probe.setup import Setup

SHA = "ab" * 32
SHEET = JobSheet(vehicle=Vehicle(system_V=12, vin=VIN), unit_sheet="unit.toml")
SETUP = Setup(system_V=12, meter=meter("service"))


def state(**body: Any) -> JobState:
    """A journal with one log."""
    whole = {
        "file": "bus/truck.log",
        "sha256": SHA,
        "bytes": 9,
        "stored": True,
        "heard": log_body(cycle_heard()),
    } | body
    entry = Entry(
        id="31b374ff-6b81-58bb-9b8c-c0559d48bc58", job="J", kind="bus_log", device="folder", seq=1, prev=None,
        engine="0.1.0", body=whole,
    )  # fmt: skip
    return fold([entry])


def recording(*, key: bool = False) -> Recording:
    """A wire and the battery, 100 rows a second: on at 4 s, cranked from 10 to 10.8 s, then charged."""
    lines = ["time_s,battery,red" + (",key" if key else "")]
    for row in range(3000):
        time_s = row / 100
        volts = 12.5 if time_s < 10 else 9.8 if time_s < 10.8 else 14.1
        red = 0.0 if time_s < 4 else volts
        lines.append(f"{time_s:.2f},{volts + row % 3 / 100:.2f},{red:.2f}" + (",on" if key else ""))
    return read_recording(lambda: lines, file="truck.csv", thresholds_V=())


def test_a_log_comes_out_of_the_journal_as_it_was_heard() -> None:
    """Every phone judges by the entry: no file is needed."""
    assert buses_of(state()) == (cycle_heard(),)
    assert known_logs(state()) == {SHA: log_body(cycle_heard())}


def test_what_a_later_version_heard_is_left_out() -> None:
    """And heard anew where the file is at hand."""
    later = state(heard={**log_body(cycle_heard()), "v": 2})
    assert buses_of(later) == ()
    assert known_logs(later) == {}


def test_findings_bear_the_log_s_name_and_leave_the_job_s_own_alone() -> None:
    """A dip that a bus is too slow to prove, or a load that holds, adds nothing to a job."""
    found = bus_findings([cycle_heard()], SHEET, script=None)
    assert [(each.id, each.verdict) for each in found] == [("bus_vin", Verdict.HOLDS), ("bus_key", Verdict.HOLDS)]
    assert all(each.what.startswith("truck.log: ") for each in found)


def test_what_is_wrong_is_said() -> None:
    """Another vehicle, a dip below the limit, a computer that fell silent."""
    heard = replace(
        cycle_heard("1G4AH59H45G118341", lowest_V=8.0), health=Health(nodes=3, silent=(SilentNode(3, 9.0, None),))
    )
    found = {each.id: each.verdict for each in bus_findings([heard], SHEET, script=None)}
    assert (found["bus_vin"], found["bus_dip"], found["bus_silent"]) == (Verdict.FAILS, Verdict.FAILS, Verdict.OPEN)


def test_a_log_without_a_vin_or_a_turn_of_the_key_owes_none() -> None:
    """The job has its own evidence for both."""
    assert bus_findings([cycle_heard(None, on_s=1e9, crank_s=1e9)], SHEET, script=None) == ()


def test_a_recording_without_a_key_column_is_labelled_by_the_log() -> None:
    """The log's crank at 9.0 s is the recording's at 10.0 s: on at 6.0, running at 10.9; off lies beyond its end."""
    [(labelled, answer)] = listened([recording()], SETUP, buses=[cycle_heard()])
    assert [str(mark.key) for mark in labelled.keys] == ["on", "crank", "running"]
    assert abs(labelled.keys[1].time_s - 10.0) < 0.05
    assert answer.view is not None
    assert [crank.sure for crank in answer.view.cranks] == [1.0]


def test_without_a_log_or_with_a_key_column_nothing_is_labelled() -> None:
    """What the hand wrote down goes before."""
    [(alone, _)] = listened([recording()], SETUP, buses=[])
    assert alone.keys == ()
    own = recording(key=True)
    [(kept, answer)] = listened([own], SETUP, buses=[cycle_heard()])
    assert kept is own
    assert keyed_by(own, answer.view, buses=[cycle_heard()]) is None
    assert keyed_by(own, None, buses=[cycle_heard()]) is None


def test_a_log_of_another_start_labels_nothing() -> None:
    """It lasted five seconds longer: the two clocks cannot be held together by it."""
    [(kept, _)] = listened([recording()], SETUP, buses=[cycle_heard(crank_length_s=6.0)])
    assert kept.keys == ()


def test_a_log_of_another_name_was_not_made_with_the_recording() -> None:
    """All starts of a vehicle look alike: only the name says that two files are of one."""
    [(kept, _)] = listened([recording()], SETUP, buses=[replace(cycle_heard(), file="other.log")])
    assert kept.keys == ()
    [(labelled, _)] = listened([recording()], SETUP, buses=[replace(cycle_heard(), file="Truck.candump.log")])
    assert labelled.keys != ()
