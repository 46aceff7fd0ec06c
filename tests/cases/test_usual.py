"""The day brings how the last vehicle of each type was finished."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

from tests.cases.test_held_job import hand_in
from tests.samples.demo_jobs import DEMO, DemoJob, demo_job
from tests.samples.journals import Phone
from tests.samples.signing import key_folder, sign_job
from tests.samples.stores import ORGANISATION

from backprobe.cases.day import day_of
from backprobe.cases.held_job import held_job
from backprobe.cases.import_folder import import_folder
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, make_job
from backprobe.cases.usual import may_be_usual
from backprobe.cases.yard import Yard
from backprobe.files.blobs import BLOBS
from backprobe.findings import Stage, Verdict
from backprobe.store import jobs

UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
TYPE = "Harrow & Vale Drover 7 2019"
SHEET = """[vehicle]
plate = "LY 09"
maker = "Harrow & Vale"
model = "Drover 7"
model_year = 2019
system_V = 12
[unit]
sheet = "unit.toml"
[job]
id = "next"
"""


def finished(folder: Path) -> DemoJob:
    """The demo's truck 7, signed off as proven."""
    job = demo_job(folder, "truck-07")
    sign_job(job.folder, key_folder(folder / "keys"))
    texts = [entry.raw.decode() for entry in import_folder(job.folder).journal.entries]
    files = {path.name: path.read_bytes() for path in (job.folder / BLOBS).iterdir()}
    return replace(job, texts=texts, files=files)


def given(yard: Yard, caller: Caller, *, sheet: str = SHEET) -> None:
    """A new job for whoever holds the phone."""
    make_job(yard, LEAD, new=NewJob(sheet, UNIT, people=(caller.person or "",)))


def usual(yard: Yard, caller: Caller) -> list[dict[str, Any]]:
    """What the day of somebody brings of finished vehicles."""
    found = day_of(yard, caller)["usual"]
    assert isinstance(found, list)
    return found


def test_the_last_of_the_type_that_was_finished(yard: Yard, ines: Caller, marta: Caller, tmp_path: Path) -> None:
    """Marta finished truck 7: the next of its type on Ines's phone has its joints, wires and places."""
    job = finished(tmp_path / "a")
    hand_in(yard, marta, job)
    given(yard, ines)
    assert usual(yard, ines) == []  # nobody has looked at truck 7 yet
    judge_again(yard, ORGANISATION, job_id=job.id)
    [found] = usual(yard, ines)
    assert (found["type"], found["from"], set(found)) == (TYPE, "LY 07", {"type", "from", "job", "walkround", "mount"})
    sheet = tomllib.loads(found["job"])
    assert [joint["lead"] for joint in sheet["joint"]] == ["power", "ground", "ignition", "door"]
    assert {wire["name"]: wire["lead"] for wire in sheet["wire"]} == {"X12/4 RD": "supply", "X12/9 VT": "ignition"}
    assert "fuse F12" in sheet["wire"][0]["circuit"]
    assert tomllib.loads(found["walkround"])["unit"]["firmware_wanted"] == "4.2.1"
    assert tomllib.loads(found["mount"])["chosen"] == "on the overhead shelf"
    assert usual(yard, marta) == []  # she has nothing to do: nothing is usual for her


def test_nothing_of_another_type(sqlite_yard: Yard, ines: Caller, marta: Caller, tmp_path: Path) -> None:
    """A year later the maker has another loom."""
    job = finished(tmp_path / "a")
    hand_in(sqlite_yard, marta, job)
    judge_again(sqlite_yard, ORGANISATION, job_id=job.id)
    given(sqlite_yard, ines, sheet=SHEET.replace("2019", "2020"))
    assert usual(sqlite_yard, ines) == []


def test_only_what_was_finished_and_whose_joints_hold(sqlite_yard: Yard, ines: Caller, tmp_path: Path) -> None:
    """Not while it is in work; not with a joint that fails; one that is thin or open may be followed."""
    job = finished(tmp_path / "a")
    hand_in(sqlite_yard, ines, job)
    with sqlite_yard.store.reading() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=job.id)
    assert held.judged is not None
    assert may_be_usual(held)
    assert not may_be_usual(replace(held, end=None))
    assert not may_be_usual(replace(held, end="abandoned"))
    assert not may_be_usual(replace(held, judged=None))
    for verdict, may in ((Verdict.FAILS, False), (Verdict.THIN, True), (Verdict.OPEN, True)):
        joints = [one for one in held.judged.findings if one.stage is Stage.JOIN]
        findings = [replace(one, verdict=verdict) if one is joints[0] else one for one in held.judged.findings]
        assert may_be_usual(replace(held, judged=replace(held.judged, findings=tuple(findings)))) is may


def test_wires_of_the_journal(sqlite_yard: Yard, ines: Caller, marta: Caller, tmp_path: Path) -> None:
    """A wire declared, placed and chosen on a phone, of which the sheet says nothing."""
    job = demo_job(tmp_path / "b", "truck-07")
    sheet = (job.folder / "job.toml").read_text(encoding="utf-8")
    head, _, rest = sheet.partition("[[wire]]")
    (job.folder / "job.toml").write_text(head + "[[joint]]" + rest.partition("[[joint]]")[2], encoding="utf-8")
    imported = import_folder(job.folder)
    files = {path.name: path.read_bytes() for path in (job.folder / BLOBS).iterdir()}
    texts = [entry.raw.decode() for entry in imported.journal.entries]
    phone = Phone("phone-b", job=job.id)
    wire = {"file": None, "wire": "X12/4 RD"}
    said = [
        phone.say("wire_declared", {**wire, "connector": "X12", "cavity": "4", "colour": "RD", "order": 0}),
        phone.say("circuit", {**wire, "circuit": "permanent supply, fuse F12", "marks": [], "order": 0}),
        phone.claims("tap_supply", "X12/4 RD"),
    ]
    hand_in(sqlite_yard, marta, replace(job, texts=[*texts, *(one.raw.decode() for one in said)], files=files))
    judge_again(sqlite_yard, ORGANISATION, job_id=job.id)
    with sqlite_yard.store.writing() as connection:  # as if it had been signed off
        jobs.describe(connection, ORGANISATION, job_id=job.id, values={"usual": True})
    given(sqlite_yard, ines)
    [found] = usual(sqlite_yard, ines)
    [wire_told] = [one for one in tomllib.loads(found["job"])["wire"] if one.get("lead") == "supply"]
    assert wire_told == {
        "name": "X12/4 RD",
        "lead": "supply",
        "circuit": "permanent supply, fuse F12",
        "connector": "X12",
        "cavity": "4",
        "colour": "RD",
    }


def test_a_sheet_that_was_erased_brings_nothing(sqlite_yard: Yard, ines: Caller, marta: Caller, tmp_path: Path) -> None:
    """The row still says that others may follow; the day goes on without."""
    job = finished(tmp_path / "a")
    hand_in(sqlite_yard, marta, job)
    judge_again(sqlite_yard, ORGANISATION, job_id=job.id)
    given(sqlite_yard, ines)
    assert len(usual(sqlite_yard, ines)) == 1
    sheet = (job.folder / "job.toml").read_bytes()
    for sha256, content in job.files.items():
        if content == sheet:
            path = sqlite_yard.blobs.path(sha256)
            assert path is not None
            path.unlink()
    assert usual(sqlite_yard, ines) == []
