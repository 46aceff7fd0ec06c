"""What is wrong with script, reports or photos of a job folder is said in plain words, and nothing is lost."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from tests.samples.jobs import demo_job
from tests.samples.photos import bomb

from backprobe.cli.main import main

Printed = pytest.CaptureFixture[str]
SCRIPT, REPORTS = "key-script.csv", "reports.csv"
HEADER = "unit_id,t,received_at,ignition,event"
ROWS = 100_000


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The demo job that went well."""
    return demo_job(tmp_path, "truck-07")


def judged(job: Path, printed: Printed) -> tuple[int, dict[str, Any]]:
    """Exit code and answer; nothing else is printed, no file is touched, and the journal only grows."""
    before = {path: path.read_bytes() for path in job.rglob("*") if path.is_file()}
    code = main(["judge", str(job), "--json"])
    out, err = printed.readouterr()
    assert err == ""
    assert [path for path, content in before.items() if not path.read_bytes().startswith(content)] == []
    changed_files = [path.name for path, content in before.items() if path.read_bytes() != content]
    assert changed_files in ([], ["journal.jsonl"] if code != 2 else [])
    return code, json.loads(out)


def found(answer: dict[str, Any], name: str) -> dict[str, Any]:
    """The one finding of that id."""
    (one,) = (each for each in answer["findings"] if each["id"] == name)
    return dict(one)


def changed(name: str, change: Callable[[str], str]) -> Callable[[Path], None]:
    """Something that changes a file of the folder."""

    def spoil(job: Path) -> None:
        text = change((job / name).read_text(encoding="utf-8"))
        (job / name).write_text(text, encoding="utf-8")

    return spoil


WITHOUT_OFF = "t,key\n2026-03-31T14:13:22Z,on\n2026-03-31T14:17:14Z,running\n"
OPEN: dict[str, tuple[Callable[[Path], None], str, str]] = {
    "a script with no off": (
        changed(SCRIPT, lambda _: WITHOUT_OFF),
        "prove_missing",
        "a script in which the key is turned off",
    ),
    "a script without a row": (changed(SCRIPT, lambda _: "t,key\n"), "prove_missing", "rows beneath the header"),
    "no script": (lambda job: (job / SCRIPT).unlink(), "prove_missing", "there is no key-script.csv"),
    "reports of another unit": (
        changed(REPORTS, lambda text: "\n".join(row for row in text.splitlines() if "LN2-00417" not in row)),
        "prove_reports",
        "LN2-00422",
    ),
    "no reports": (lambda job: (job / REPORTS).unlink(), "prove_reports", "there is no reports.csv"),
    "an export without a report": (changed(REPORTS, lambda _: f"{HEADER}\n"), "prove_reports", "holds no report"),
}


@pytest.mark.parametrize("defect", OPEN)
def test_what_is_not_there_yet_leaves_the_proof_open(job: Path, capsys: Printed, defect: str):
    """Exit 1, one open finding that says what is missing and what to do; the other stages are judged as ever."""
    spoil, name, words = OPEN[defect]
    _, good = judged(job, capsys)
    spoil(job)
    code, answer = judged(job, capsys)
    assert (code, answer["ok"], answer["verdict"], answer["prove"]) == (1, True, "open", None)
    one = found(answer, name)
    assert one["verdict"] == "open"
    assert words in one["because"]
    assert one["next"]
    others = [[each for each in said["findings"] if each["stage"] in ("probe", "join")] for said in (good, answer)]
    assert others[0] == others[1]


REFUSED: dict[str, tuple[Callable[[Path], None], str]] = {
    "a photo as the script": (lambda job: (job / SCRIPT).write_bytes(b"\xff\xd8\xff\xe0" + bytes(99)), "a text file"),
    "a bomb as the reports": (lambda job: (job / REPORTS).write_bytes(bomb()), "a text file"),
    "an empty file": (lambda job: (job / REPORTS).write_bytes(b""), "this one is empty"),
    "no table": (changed(REPORTS, lambda _: "to whom it may concern\n"), "a header line with t"),
    "rows of which none can be read": (changed(SCRIPT, lambda _: "t,key\nnoon,on\n"), "not one of 1 rows can be read"),
    "slashed dates": (
        changed(SCRIPT, lambda text: text.replace("2026-03-31T", "03/31/2026 ")),
        "not one of 8 rows can be read",
    ),
}


@pytest.mark.parametrize("defect", REFUSED)
def test_what_is_no_such_table_is_refused(job: Path, capsys: Printed, defect: str):
    """Exit 2 with the file and what was expected; the journal is what it was."""
    judged(job, capsys)
    spoil, words = REFUSED[defect]
    spoil(job)
    code, answer = judged(job, capsys)
    assert (code, answer["code"]) == (2, "unreadable")
    assert words in answer["error"]
    assert answer["place"]["file"] in (SCRIPT, REPORTS)


def test_times_without_a_zone_are_taken_as_utc_and_that_is_said(job: Path, capsys: Printed):
    """Script and reports alike: the same proof, with a note on each."""
    _, good = judged(job, capsys)
    for name in (SCRIPT, REPORTS):
        changed(name, lambda text: text.replace("Z,", ","))(job)
    code, answer = judged(job, capsys)
    assert code == 0
    assert {
        "Times of the script without a zone were taken as UTC.",
        "Times of the reports without a zone were taken as UTC.",
    } <= set(answer["notes"])
    for key in ("on_delay_s", "off_delay_s", "position"):
        assert answer["prove"][key] == good["prove"][key]


def test_a_backlog_of_100_000_rows(job: Path, capsys: Printed):
    """All of them arrive in one second: the backlog is named, open, and the turns are read by the unit's own stamps."""
    start = datetime(2026, 3, 31, tzinfo=UTC)
    on_s, off_s = (14 * 3600 + 13 * 60 + 24, 14 * 3600 + 20 * 60 + 57)
    events = {on_s: "ignition_on", off_s: "ignition_off"}
    stamps = ((s, (start + timedelta(seconds=s)).isoformat()) for s in range(ROWS))
    rows = (f"LN2-00417,{at},2026-04-02T08:00:00Z,{int(on_s <= s < off_s)},{events.get(s, '')}" for s, at in stamps)
    (job / REPORTS).write_text("\n".join([HEADER, *rows]) + "\n", encoding="utf-8")
    code, answer = judged(job, capsys)
    assert code == 1
    assert found(answer, "prove_backlog")["verdict"] == "open"
    assert [turn["state"] for turn in answer["prove"]["turns"]] == ["matched"] * 8


def test_a_photo_that_is_none_and_a_bomb(job: Path, capsys: Printed):
    """Among the photos of the job: each said in a note; the job holds as before."""
    (job / "photos" / "letter.jpg").write_text("to whom it may concern", encoding="utf-8")
    (job / "photos" / "bomb.png").write_bytes(bomb())
    code, answer = judged(job, capsys)
    assert code == 0
    assert [note.split(";")[0] for note in answer["notes"]] == [
        "photos/bomb.png cannot be shown",
        "photos/letter.jpg cannot be shown",
    ]


@pytest.mark.parametrize("share", [0.2, 0.6, 0.98])
def test_a_truncated_record_is_said_to_be_one(job: Path, tmp_path: Path, capsys: Printed, share: float):
    """Cut off anywhere: exit 2, in plain words."""
    record = tmp_path / "record.pdf"
    main(["judge", str(job), "--record", str(record), "--json"])
    whole = record.read_bytes()
    record.write_bytes(whole[: int(len(whole) * share)])
    capsys.readouterr()
    assert main(["verify", str(record), "--json"]) == 2
    answer = json.loads(capsys.readouterr().out)
    assert answer["ok"] is False
    assert "record.pdf" in answer["error"]
