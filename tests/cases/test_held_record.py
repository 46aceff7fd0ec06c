"""The server sets the same record as the terminal, with the journal inside, and opens nothing that a sheet names."""

from __future__ import annotations

import hashlib
import io
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.cases.test_held_job import hand_in
from tests.samples.demo_jobs import DEMO, DemoJob, demo_job
from tests.samples.journals import JOB, Phone
from tests.samples.stores import ORGANISATION

from backprobe.cases.held_record import held_record
from backprobe.cases.may import Caller, Role
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)


def test_the_record_holds_the_journal_and_the_photos(sqlite_yard: Yard, ines: Caller, tmp_path: Path) -> None:
    """The demo's job: a PDF with every entry inside, and the words of its findings and photos on the page."""
    job = demo_job(tmp_path, "truck-07")
    hand_in(sqlite_yard, ines, job)
    reader = PdfReader(io.BytesIO(held_record(sqlite_yard, LEAD, job_id=job.id)))
    [journal] = reader.attachments["journal.jsonl"]
    lines = journal.decode().splitlines()
    assert set(job.texts) <= set(lines)
    assert {line for line in lines if '"device":"server"' not in line} == set(job.texts)
    page = " ".join(text for each in reader.pages for text in each.extract_text().split())
    assert "LY 07" in page
    assert "LN2-00417 held to the VIN plate" in page


def test_a_sheet_leads_nowhere(sqlite_yard: Yard, ines: Caller) -> None:
    """Photos called by a path, and a sheet that names files of the machine: nothing of it is in the record."""
    phone = Phone()
    unit = (DEMO / "unit.toml").read_bytes()
    sheet = b'[vehicle]\nsystem_V = 12\n[unit]\nsheet = "/etc/hostname"\n[[photo]]\nfile = "/etc/hostname"\n'
    digests = {hashlib.sha256(content).hexdigest(): content for content in (sheet, unit)}
    (of_sheet, of_unit) = digests
    said = [
        phone.say("job", {"file": "job.toml", "sha256": of_sheet, "bytes": len(sheet)}, blobs=(of_sheet,)),
        phone.say("unit_sheet", {"file": "/etc/hostname", "sha256": of_unit, "bytes": len(unit)}, blobs=(of_unit,)),
    ]
    names = ("../../../etc/hostname", "/etc/hostname", "photos/../x", "photos/.x", "photos/" + "x" * 300)
    photo = {"sha256": of_unit, "bytes": 3, "stored": True}
    said += [phone.say("photo", {**photo, "file": name}) for name in names]
    hand_in(sqlite_yard, ines, DemoJob(JOB, [entry.raw.decode() for entry in said], digests, Path()))
    record = held_record(sqlite_yard, LEAD, job_id=JOB)
    assert record.startswith(b"%PDF")
    text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(record)).pages)
    assert Path("/etc/hostname").read_text(encoding="utf-8").strip() not in text


def test_without_sheets_there_is_no_record(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """And it is said why; nor is there one of jobs that are not there or not the phone's, or for withdrawn phones."""
    withdrawn = Caller(role=Role.WITHDRAWN_PHONE, organisation=ORGANISATION, person="ines", phone=ines.phone)
    hand_in(sqlite_yard, ines, DemoJob(JOB, [Phone().reads("Red", "on", "1").raw.decode()], {}, Path()))
    asked = [(LEAD, JOB, "unreadable"), (LEAD, "none", "not_found"), (ines, JOB, "unreadable")]
    asked += [(marta, JOB, "not_found"), (withdrawn, JOB, "phone_withdrawn")]
    for caller, job, code in asked:
        with pytest.raises(RefusedError) as refusal:
            held_record(sqlite_yard, caller, job_id=job)
        assert refusal.value.code == code
