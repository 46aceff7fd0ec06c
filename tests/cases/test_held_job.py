"""The server judges a job by its entries and files as a terminal judges its folder."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest
from tests.samples.demo_jobs import DemoJob, demo_job
from tests.samples.journals import JOB, Phone
from tests.samples.signing import signed_off
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.hand_in_file import begin_file, finish_file, hand_in_piece
from backprobe.cases.held_job import has_begun, held_job, sheets_of, text_file
from backprobe.cases.judge import judge_folder
from backprobe.cases.may import Caller
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.findings import Verdict
from backprobe.job.signed import sign_off_finding, sign_offs
from backprobe.keys.ed25519 import signature_holds


def hand_in(yard: Yard, caller: Caller, job: DemoJob) -> None:
    """Everything of a job."""
    take_batch(yard, job.texts, caller=caller, at=AT)
    for sha256, content in job.files.items():
        begin_file(yard, caller, sha256=sha256, offset=None, total_bytes=None)
        hand_in_piece(yard, caller, sha256=sha256, offset=0, piece=content)
        finish_file(yard, caller, sha256=sha256, at=AT)


@pytest.mark.parametrize("name", ["truck-07", "truck-12"])
def test_the_server_says_what_the_terminal_says(sqlite_yard: Yard, ines: Caller, tmp_path: Path, name: str) -> None:
    """Each finding on the wires of the demo's jobs: the same verdict and the same figures."""
    job = demo_job(tmp_path, name)
    hand_in(sqlite_yard, ines, job)
    there = judge_folder(job.folder).judged
    with sqlite_yard.store.reading() as connection:
        here = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=job.id)
        sheets = sheets_of(sqlite_yard, connection, organisation=ORGANISATION, job_id=job.id)
    assert here.fault is None
    assert here.judged is not None
    assert [each.as_json() for each in here.judged.findings] == [each.as_json() for each in there.findings]
    assert sheets["unit.toml"].encode() == (job.folder.parent / "unit.toml").read_bytes()
    assert has_begun(here)
    assert here.journal.faults == ()


def test_a_job_without_sheets_is_open_and_says_why(sqlite_yard: Yard, ines: Caller) -> None:
    """One reading and nothing else."""
    take_batch(sqlite_yard, [Phone().reads("Red", "on", "12.3").raw.decode()], caller=ines, at=AT)
    with sqlite_yard.store.reading() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=JOB)
        assert sheets_of(sqlite_yard, connection, organisation=ORGANISATION, job_id=JOB) == {}
        assert text_file(sqlite_yard, connection, organisation=ORGANISATION, sha256="ab" * 32) is None
    assert (held.judged, held.verdict, held.end) == (None, Verdict.OPEN, None)
    assert held.fault == "the journal names no file of the kind 'job'"


def test_no_sheet_reaches_into_the_server_s_own_files(sqlite_yard: Yard, ines: Caller) -> None:
    """A sheet that names /etc/passwd as its unit's sheet and meter: only what was handed in is ever read."""
    phone = Phone()
    sheet = b'[vehicle]\nsystem_V = 12\n[unit]\nsheet = "/etc/passwd"\n[meter]\nfile = "../../etc/passwd"\n'
    sha256 = hashlib.sha256(sheet).hexdigest()
    body = {"file": "job.toml", "sha256": sha256, "bytes": len(sheet), "vin": None, "serial": None}
    hand_in(
        sqlite_yard,
        ines,
        DemoJob(JOB, [phone.say("job", body, blobs=(sha256,)).raw.decode()], {sha256: sheet}, Path()),
    )
    with sqlite_yard.store.reading() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=JOB)
    assert held.judged is None
    assert held.fault == "the journal names no file of the kind 'unit_sheet'"


def test_a_day_without_signal_ends_signed(sqlite_yard: Yard, ines: Caller) -> None:
    """Claim, reading and sign-off arrive together: what the server notes of the unit afterwards unsigns nothing."""
    phone = Phone()
    phone.claims("serial", "LN2-1")
    phone.reads("Red", "on", "12.3")
    texts = [entry.raw.decode() for entry in (*phone.entries, signed_off(phone.entries))]
    take_batch(sqlite_yard, texts, caller=ines, at=AT)
    with sqlite_yard.store.reading() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=JOB)
    assert [entry.kind for entry in held.entries if entry.device == "server"] == ["unit_claimed"]
    assert held.end == "proven"
    finding = sign_off_finding(held.journal.lines, sign_offs(held.journal.lines, signature_holds), wanted=True)
    assert finding is not None
    assert finding.verdict is Verdict.HOLDS


def test_a_fault_of_the_engine_hides_nothing_that_was_said(
    sqlite_yard: Yard, ines: Caller, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """The entries are there, the job is open, and the log says why."""

    def broken(asked: object) -> object:
        raise ZeroDivisionError

    monkeypatch.setattr("backprobe.cases.held_job.evidence_of", broken)
    take_batch(sqlite_yard, [Phone().reads("Red", "on", "12.3").raw.decode()], caller=ines, at=AT)
    with sqlite_yard.store.reading() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=JOB)
    assert (len(held.entries), held.verdict) == (1, Verdict.OPEN)
    assert held.fault == "this job could not be judged: the server's log says why"
    assert "ZeroDivisionError" in caplog.text
