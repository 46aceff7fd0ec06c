"""The engine's door: what goes in and out as JSON text is what a terminal gives for the same folder."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples import corners
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.jobs import CRANK, NAMED, ROWS, VEHICLE, crank_recording, demo_job, parts

from backprobe.cases.judge import judge_folder
from backprobe.errors import JobError
from backprobe.formats.job_toml import read_job
from backprobe.job.answer import judgement_json
from backprobe.job.door import evidence_of, judge_text, meter_for, recording_limits_V

METER = 'name = "bench"\npercent = 0.1\ncounts = 3\n'


PROVE_FILES = ("key-script.csv", "reports.csv", "lights.csv", "corners.txt")


def answer(given: object) -> dict:
    """What the door says to a job."""
    return json.loads(judge_text(json.dumps(given)))


def folder_parts(folder: Path) -> dict[str, object]:
    """A demo job's files as the door takes them."""
    return {
        "job.toml": (folder / "job.toml").read_text(encoding="utf-8"),
        "unit": (folder / ".." / "unit.toml").read_text(encoding="utf-8"),
        "readings.csv": (folder / "readings.csv").read_text(encoding="utf-8"),
        "walkround.toml": (folder / "walkround.toml").read_text(encoding="utf-8"),
        "mount.toml": mount.read_text(encoding="utf-8") if (mount := folder / "mount.toml").is_file() else None,
        **{name: (folder / name).read_text(encoding="utf-8") for name in PROVE_FILES if (folder / name).exists()},
        "recordings": {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob("recordings/*"))},
    }


@pytest.mark.parametrize("truck", ["truck-07", "truck-12"])
def test_the_door_says_what_the_terminal_says(tmp_path: Path, truck: str):
    """The same judgement for a folder on disk and for its files as texts."""
    folder = demo_job(tmp_path, truck)
    assert answer(folder_parts(folder)) == judgement_json(judge_folder(folder).judged)


def test_the_text_is_sorted_and_the_same_each_time():
    """Equal text for equal jobs, keys in order, so that two Pythons can be compared byte for byte."""
    given = json.dumps(parts(recordings={"crank.csv": crank_recording("Red", "Violet", "Grey")}))
    text = judge_text(given)
    assert text == judge_text(given)
    assert text == json.dumps(json.loads(text), ensure_ascii=False, sort_keys=True)


def test_readings_and_recordings_may_be_missing():
    """A job just begun: open, no wire but those of the sheet."""
    given = parts() | {"readings.csv": None, "recordings": None}
    said = answer(given)
    assert (said["verdict"], [wire["wire"] for wire in said["wires"]]) == ("open", ["Red", "Violet"])


@pytest.mark.parametrize(
    ("given", "code", "words"),
    [
        ([], "job", "no JSON object"),
        ({}, "job", "job.toml: a text is expected"),
        (parts() | {"unit": None}, "job", "unit: a text is expected"),
        (parts() | {"job.toml": 3}, "job", "job.toml: a text is expected"),
        (parts() | {"recordings": ["a"]}, "job", "recordings: an object of names and texts"),
        (parts() | {"recordings": {"a.csv": 3}}, "job", "recordings: an object of names and texts"),
        (parts() | {"job.toml": "[vehicle\n"}, "unreadable", "job.toml, line 1"),
        (parts() | {"unit": "name = 3\n"}, "unreadable", "unit.toml\nexpected: at least one [[lead]]"),
        (parts() | {"readings.csv": ""}, "unreadable", "readings.csv"),
        (parts() | {"readings.csv": "wire,key,volts\nRed,onn,12\n"}, "unreadable", "readings.csv, line 2"),
        (parts(recordings={"a.csv": ""}), "unreadable", "a.csv"),
        (parts(recordings={"a.csv": "time_s,battery\nx,y\n"}), "unreadable", "a.csv, line 2"),
        (parts(named=NAMED + '[meter]\nfile = "meter.toml"\n'), "job", "names 'meter.toml'"),
    ],
)
def test_a_refusal_has_the_shape_of_all_errors(given: object, code: str, words: str):
    """It says ok is false, the code is one of the few, and the message names the place."""
    said = answer(given)
    assert (said["ok"], said["code"]) == (False, code)
    assert words in said["error"]


@pytest.mark.parametrize("text", ["", "{", '{"job.toml": }', "[" * 100_000, "nonsense"])
def test_what_is_no_json_is_refused(text: str):
    """Also brackets too deep for the parser."""
    said = json.loads(judge_text(text))
    assert (said["ok"], said["code"]) == (False, "job")


def test_lines_are_parted_as_files_part_them():
    """A form feed inside a cell ends no line: the fault is named at line 14, as in a terminal."""
    rows = ROWS + "Red,o\x0cn,12.3,,,\nBlue,,,,,\n"
    said = answer(parts(rows=rows))
    assert said["skipped"]["count"] == 1
    assert said["skipped"]["first"][0].startswith("readings.csv, line 14: ")
    assert [wire["wire"] for wire in said["wires"]] == ["Red", "Violet", "Blue"]


@pytest.mark.parametrize("end", ["\r\n", "\r"])
def test_line_ends_of_other_machines(end: str):
    """Those of Windows and of old Macs read as the same job."""
    whole = parts(recordings={"crank.csv": CRANK})
    other = whole | {
        "readings.csv": str(whole["readings.csv"]).replace("\n", end),
        "recordings": {"crank.csv": CRANK.replace("\n", end)},
    }
    assert answer(other) == answer(whole)


def test_the_meter_is_the_one_that_the_sheet_names():
    """Its own figures, a class, or the plainest class where none is named."""
    own = read_job(f'[vehicle]\n{VEHICLE}[unit]\nsheet = "u.toml"\n[meter]\nfile = "m.toml"\n', "job.toml")
    classed = read_job(f'[vehicle]\n{VEHICLE}[unit]\nsheet = "u.toml"\n[meter]\nclass = "precise"\n', "job.toml")
    plain = read_job(f'[vehicle]\n{VEHICLE}[unit]\nsheet = "u.toml"\n', "job.toml")
    assert (meter_for(own, METER).name, meter_for(own, METER).percent) == ("bench", 0.1)
    assert meter_for(classed, None).name == "precise"
    assert meter_for(plain, None).name == "basic"
    with pytest.raises(JobError, match=r"m\.toml"):
        meter_for(own, None)


def test_time_is_counted_below_what_is_judged_by():
    """9 V for a supply, 10 V for an ignition, twice that at 24 V, and the unit's own lowest where it is stated."""
    assert recording_limits_V(12, None) == (9.0, 10.0)
    assert recording_limits_V(24, 16.5) == (18.0, 20.0, 16.5)


def test_the_recording_s_name_is_the_one_given():
    """Findings and errors speak of the file by that name."""
    given = evidence_of(parts(recordings={"bay 3/crank.csv": CRANK}))
    assert [recording.name for recording in given.recordings] == ["bay 3/crank.csv"]


@settings(max_examples=100, deadline=None)
@given(
    name=st.sampled_from(["job.toml", "unit", "readings.csv", "recordings"]),
    at=st.integers(0, 400),
    mark=st.sampled_from(["", '"', ",", "\x00", "\ud800", "é", "\n", "9", "[", "\u2028", "=", "x" * 90]),
)
def test_whatever_stands_in_the_texts(name: str, at: int, mark: str):
    """A letter put in or cut off anywhere: a judgement or a refusal, always JSON, never anything else raised."""
    given = parts(recordings={"crank.csv": CRANK[:2000]})
    whole = CRANK[:2000] if name == "recordings" else str(given[name])
    text = whole[:at] + mark + (whole[at:] if mark else "")
    given[name] = {"crank.csv": text} if name == "recordings" else text
    said = json.loads(judge_text(json.dumps(given)))
    assert said["ok"] is True or said["code"] in {"job", "unreadable", "input"}


def test_a_fleets_policy_comes_in_as_text():
    """Its name stands in the answer; one that would loosen a limit is refused with its line."""
    assert answer(parts())["policy"] is None
    assert answer({**parts(), "policy.toml": "[join]\nground_drop_mV = 50\n"})["policy"] == "policy.toml"
    refused = answer({**parts(), "policy.toml": "[join]\nground_drop_mV = 500\n"})
    assert refused["place"] == {"file": "policy.toml", "line": 2, "text": "ground_drop_mV = 500"}


def test_bus_logs_come_in_as_texts() -> None:
    """A log's findings stand among the job's; what is no log is refused with its name."""
    found = answer(parts() | {"bus": {"truck.log": "\n".join(aligned(key_cycle()))}})
    assert "truck.log: key cycle seen from inside" in [each["what"] for each in found["findings"]]
    assert "a.log" in answer(parts() | {"bus": {"a.log": "nothing"}})["error"]


def test_corners_come_in_as_text(tmp_path: Path):
    """They put the unit's own position into words; damaged ones are refused."""
    folder = demo_job(tmp_path, "truck-07")
    found = answer({**folder_parts(folder), "corners.txt": corners.TEXT})
    (position,) = [each for each in found["findings"] if each["id"] == "prove_position"]
    assert position["because"].endswith(corners.SAID)
    assert found["prove"]["position"]["where"]["attribution"] == "© nobody"
    assert answer({**folder_parts(folder), "corners.txt": corners.TEXT[:-9]})["code"] == "unreadable"
