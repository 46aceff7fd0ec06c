"""The record of a job folder: what stands on it, and the journal inside."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pikepdf
import pypdf
import pytest
from tests.samples.jobs import NAMED, ROWS, demo_job, evidence, without
from tests.samples.photos import as_file, bomb, four_corners, with_notes
from tests.samples.signing import KEY, handed_over, key_folder, sign_job

from backprobe.cases.judge import judge_folder
from backprobe.cases.record import (
    ABANDONED,
    NOT_SIGNED,
    choice_row,
    identity_of,
    left_out,
    meter_text,
    record_of,
    sentence_of,
    tally,
    title_of,
)
from backprobe.evidence.meter import Meter
from backprobe.files.journal_file import load_journal
from backprobe.findings import Verdict
from backprobe.job.judge import judge_job
from backprobe.job.sign_off import fingerprint, grouped, read_sign_off
from backprobe.paper.content import ChoiceRow
from backprobe.stages.probe.slots import SlotName


@pytest.fixture
def good(tmp_path: Path) -> Path:
    """A copy of the demo job that went well."""
    return demo_job(tmp_path, "truck-07")


@pytest.fixture
def wrong(tmp_path: Path) -> Path:
    """A copy of the demo job whose ignition wire is an accessory wire."""
    return demo_job(tmp_path, "truck-12")


def edit(path: Path, before: str, after: str) -> None:
    """Change a text in a file; it must be there."""
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def page_text(record: bytes) -> str:
    """All that a record's metadata says in words."""
    with pikepdf.open(io.BytesIO(record)) as pdf:
        return f"{pdf.docinfo['/Title']} | {pdf.docinfo['/Subject']}"


def printed(record: bytes) -> str:
    """All that is printed on the pages, read with another library (pypdf), words parted by one space."""
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(record)).pages).split())


def test_the_record_is_archival_with_the_journal_inside(good: Path):
    """PDF/A-3 on two to four pages, and inside it journal.jsonl byte for byte as it stands in the folder."""
    record = record_of(judge_folder(good))
    with pikepdf.open(io.BytesIO(record)) as pdf:
        with pdf.open_metadata() as metadata:
            assert (metadata["pdfaid:part"], metadata["pdfaid:conformance"]) == ("3", "A")
        assert 2 <= len(pdf.pages) <= 4
        assert list(pdf.attachments) == ["journal.jsonl"]
        assert pdf.attachments["journal.jsonl"].get_file().read_bytes() == (good / "journal.jsonl").read_bytes()


def test_the_record_depends_on_the_job_and_the_time_alone(good: Path):
    """Twice the same bytes; another time, other bytes."""
    job = judge_folder(good)
    at = "2026-03-31T16:40:00+02:00"
    assert record_of(job, made_at=at) == record_of(job, made_at=at)
    assert record_of(job, made_at=at) != record_of(job, made_at="2026-04-01T16:40:00+02:00")


def test_the_record_says_how_far_it_goes(good: Path):
    """That it is not the end of the job, what is not covered, and that nobody has signed."""
    told = page_text(record_of(judge_folder(good)))
    assert told.startswith("Installation record so far | holds")
    text = printed(record_of(judge_folder(good)))
    assert "Not in this record: " not in text
    sheet = (good / "job.toml").read_text(encoding="utf-8")
    (good / "job.toml").write_text(sheet.partition("[[joint]]")[0], encoding="utf-8")
    assert "Not in this record: joints" in printed(record_of(judge_folder(good)))
    assert NOT_SIGNED in text


def test_the_findings_are_counted_by_verdict(good: Path):
    """At a glance: all hold, or how many do not; one is spoken of as one."""
    held = judge_folder(good).judged.findings[0]
    failed, waiting = (replace(held, verdict=verdict) for verdict in (Verdict.FAILS, Verdict.OPEN))
    assert tally((held, held)) == "All 2 findings hold."
    assert tally((held, failed, waiting, waiting)) == "Of 4 findings 1 fails, 2 are open, 1 holds."
    assert tally((held, held, replace(held, id="sign_off"))) == "All 2 findings hold."


def test_identity_holds_what_is_known(good: Path):
    """Who, what, where and when, with the meter's accuracy; what nobody wrote down is left out."""
    rows = {row.label: row.value for row in identity_of(judge_folder(good))}
    assert rows == {
        "Job": "LY-2026-07",
        "VIN": "5ZLDR7HV5KR200417",
        "Fleet number": "07",
        "Plate": "LY 07",
        "Vehicle": "Harrow & Vale Drover 7 2019, 12 V",
        "Unit": "Lantern 2 LN2-00417",
        "Yard": "Linden Yard, bay 3",
        "Technician": "Ines Okafor",
        "Date of the work": "2026-03-31",
        "Meter": "basic ±(0.5 % + 2)",
    }
    edit(good / "job.toml", 'technician = "Ines Okafor"\n', "")
    assert "Technician" not in {row.label for row in identity_of(judge_folder(good))}


def test_a_meter_is_named_with_its_accuracy():
    """Percent of the reading and counts, as data sheets write it."""
    assert meter_text(Meter(name="bench", percent=0.05, counts=3)) == "bench ±(0.05 % + 3)"


def test_what_was_passed_over_is_counted_on_the_record(good: Path):
    """One mistyped line of the table and one torn row of the recording."""
    edit(good / "readings.csv", "X12/9 VT,on,12.37", "X12/9 VT,onn,12.37")
    edit(good / "recordings" / "crank.csv", "0.012,12.631,12.580,0.027,0.016\n", "0.012,oops\n")
    assert left_out(judge_folder(good).judged) == [
        "readings.csv: 1 of its lines could not be read",
        "crank.csv: 1 of its lines could not be read",
    ]


def test_a_chosen_wire_is_shown_with_its_place(good: Path):
    """Connector, cavity, colour and size, as far as the sheet says them."""
    judged = judge_folder(good).judged
    assert choice_row(judged, SlotName.SUPPLY) == ChoiceRow(
        lead="supply", wire="X12/4 RD", place="X12, cavity 4, RD, 2.5 mm2"
    )


def test_where_no_wire_is_chosen_the_record_says_why(wrong: Path):
    """What fails comes before what is open."""
    judged = judge_folder(wrong).judged
    supply, ignition = (choice_row(judged, slot) for slot in SlotName)
    assert (supply.wire, supply.note) == (None, "X12/4 RD: drop under load: no reading under load yet")
    assert (ignition.note or "").startswith("Ignition wire: X12/6 GY: reads as accessory")


def test_a_thin_wire_that_is_not_chosen_says_why():
    """9.60 V by a MIN hold reaches too far below 9 V to be chosen, and nothing on the slot fails or is open."""
    rows = without(ROWS, "Red,crank") + "Red,crank,9.60,min,,\n"
    row = choice_row(judge_job(evidence(rows=rows, named=NAMED)), SlotName.SUPPLY)
    assert row.wire is None
    assert (row.note or "").startswith("Red: while the engine cranks: MIN hold of 100 ms")


@pytest.fixture
def signed(tmp_path: Path) -> Path:
    """A job that was handed over provisionally and signed."""
    job = handed_over(tmp_path)
    sign_job(job, key_folder(tmp_path / "keys"))
    return job


def test_a_signed_record_says_by_whom_and_how_it_ended(signed: Path):
    """Read with another library (pypdf): who, when, what is missing, with which key; not that nobody has signed."""
    text = printed(record_of(judge_folder(signed)))
    assert text.startswith("Installation record: handed over as provisional made at")
    assert "Handed over as provisional" in text
    assert "What is still missing, and who owes it Missing Owed by Until" in text
    assert "one parked night the yard office 2026-04-07" in text
    assert text.count("call the yard before the batteries are changed") == 1
    assert "What the driver was told" in text
    assert "Signed by Ines Okafor, 2026-04-01 08:15:00 UTC by the signing device's clock" in text
    assert grouped(fingerprint(KEY)) in text
    assert NOT_SIGNED not in text


def test_an_abandoned_job_is_not_said_to_be_handed_over(tmp_path: Path):
    """The demo's truck 23 was given up: title and sentence say so, whatever its verdict."""
    judged = judge_folder(demo_job(tmp_path, "truck-23")).judged
    assert judged.verdict is Verdict.FAILS
    assert sentence_of(judged) == ABANDONED
    assert title_of("abandoned") == "Record of an installation that was abandoned"


def test_what_was_signed_travels_with_the_record(signed: Path):
    """The journal with the sign-off, and what the sign-off was made over, byte for byte."""
    reader = pypdf.PdfReader(io.BytesIO(record_of(judge_folder(signed))))
    inside = {name: content[0] for name, content in reader.attachments.items()}
    assert inside.pop("journal.jsonl") == (signed / "journal.jsonl").read_bytes()
    last = read_sign_off(load_journal(signed).entries[-1])
    assert inside == {name: (signed / "blobs" / sha256).read_bytes() for name, sha256 in last.blobs.items()}


def test_a_record_made_after_later_evidence_does_not_pass_for_signed(signed: Path):
    """The sign-off is open again, the page says that nobody has signed this; what was signed is still inside."""
    edit(signed / "readings.csv", "12.58", "12.57")
    reader = pypdf.PdfReader(io.BytesIO(record_of(judge_folder(signed))))
    text = " ".join(" ".join(page.extract_text() for page in reader.pages).split())
    assert "Handed over as" not in text
    assert "signed off before 2 entries came" in text
    assert NOT_SIGNED in text
    assert "signed-findings.json" in reader.attachments


def test_the_sign_off_is_not_told_twice(signed: Path):
    """Its findings stand in the sign-off itself and not among the others."""
    reader = pypdf.PdfReader(io.BytesIO(record_of(judge_folder(signed))))
    text = " ".join(page.extract_text() for page in reader.pages)
    assert "How the job ends" not in text
    assert " ".join(text.split()).count("one parked night the yard office") == 1


def test_what_was_built_stands_in_the_record(good: Path):
    """The wiring drawing, the readings, how each joint is undone, the photos with what they show."""
    text = printed(record_of(judge_folder(good)))
    for words in (
        *("As built", "X12/4 RD, 2.5 mm²", "fuse 3 A", "power, RD 0.75 mm², 1.8 m", "BK black, RD red"),
        *("Readings, as they were written down", "12.29 V at 1.5 A", "12.58 V after 12 min", "V recorded"),
        *("What was joined, and how to undo it", "take the ring off", "nothing of the vehicle was touched"),
        *("Photos", "The unit's serial with the VIN", "LN2-00417 held to the VIN plate", "photos/ground.jpg"),
    ):
        assert words in text.replace("’", "'"), words


def test_what_fails_stands_first(wrong: Path):
    """Among all findings of a job that was not done well."""
    text = printed(record_of(judge_folder(wrong)))
    failing, waiting, well = (
        text.index(words) for words in ("in accessory it must be dead", "write the load as load_A", "lowest at key on")
    )
    assert failing < waiting < well


def test_a_small_job_has_no_empty_parts(wrong: Path):
    """Nothing was joined, photographed or handed over: no headings for that, and one page or two."""
    sheet = (wrong / "job.toml").read_text(encoding="utf-8")
    (wrong / "job.toml").write_text(sheet.partition("[[joint]]")[0], encoding="utf-8")
    text = printed(record_of(judge_folder(wrong)))
    for part in ("As built", "What was joined", "Photos", "What the driver was told", "Handed over as"):
        assert part not in text


def test_odd_photos_and_names_cost_nothing(good: Path):
    """A bomb, a text, a line of a photo, Cyrillic and Chinese names, an emoji: the record comes and tells of them."""
    (good / "photos" / "bomb.png").write_bytes(bomb())
    (good / "photos" / "letter.jpg").write_bytes(b"to whom it may concern")
    (good / "photos" / "line.png").write_bytes(as_file(four_corners(700, 1), "PNG"))
    edit(good / "job.toml", '"Ines Okafor"', '"Інес Окафор"')
    edit(good / "job.toml", '"bolt of the pedal bracket"', '"болт педалі 🔩 漢字"')
    edit(good / "job.toml", '"150 mm behind connector X12"', '"за роз’ємом X12 漢字"')
    job = judge_folder(good)
    record = record_of(job)
    text = printed(record)
    with pikepdf.open(io.BytesIO(record)) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
    for words in ("Інес Окафор", "болт педалі", "U+6F22 U+5B57", "U+1F529", "photos/line.png"):
        assert words in text, words
    assert [note.split(";")[0] for note in job.notes] == [
        "photos/bomb.png cannot be shown",
        "photos/letter.jpg cannot be shown",
    ]
    assert job.judged.verdict is Verdict.HOLDS
    for note in job.notes:
        assert note in text


def test_no_name_of_a_camera_s_owner_reaches_the_record(good: Path):
    """What a camera wrote into a photo stays in the photo's own file."""
    (good / "photos" / "owner.jpg").write_bytes(with_notes(artist="Maud Linden of Linden Yard"))
    assert b"Maud Linden of" not in record_of(judge_folder(good))


def test_the_record_shows_how_long_the_vehicle_can_stand(good: Path, wrong: Path):
    """Truck 7's battery was written down, truck 12's was not: a curve under its own heading on the one alone."""
    assert "How long it can stand" in printed(record_of(judge_folder(good)))
    assert "How long it can stand" not in printed(record_of(judge_folder(wrong)))
