"""Verifying a record and a job folder: nothing changes unseen, and nothing is claimed that was not looked at."""

from __future__ import annotations

import io
import json
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.signing import KEY, OTHER_KEY, SEEDS, copied, handed_over, key_folder, sign_job

from backprobe.cases.import_folder import import_folder
from backprobe.cases.judge import judge_folder
from backprobe.cases.record import record_of
from backprobe.cases.verify import Verification, verify
from backprobe.errors import InputError, UnreadableError
from backprobe.files.journal_file import held_journal, load_journal
from backprobe.job.journal import Draft, continued
from backprobe.job.verified import Result

KNOWN = {KEY: "Ines"}
NAMES = ["journal.jsonl", "signed-entries.txt", "signed-findings.json", "signed-hand-over.json"]


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a signed job and its record, never changed."""
    return tmp_path_factory.mktemp("signed")


@pytest.fixture(scope="module")
def signed(place: Path) -> Path:
    """A signed job folder, never changed."""
    folder = handed_over(place)
    sign_job(folder, key_folder(place / "keys"))
    return folder


@pytest.fixture(scope="module")
def record(place: Path, signed: Path) -> bytes:
    """Its record."""
    return record_of(judge_folder(signed), made_at="2026-04-01T10:20:00+02:00")


@pytest.fixture
def job(signed: Path, tmp_path: Path) -> Path:
    """A copy of the signed job folder, to be changed."""
    return copied(signed, tmp_path / "copy")


def of(content: bytes, tmp_path: Path) -> Verification:
    """The verification of a PDF with this content."""
    path = tmp_path / "record.pdf"
    path.write_bytes(content)
    return verify(path, KNOWN)


def outcome(content: bytes, tmp_path: Path) -> Result | None:
    """What verification comes to; None where it was refused in the project's own words."""
    path = tmp_path / "record.pdf"
    path.write_bytes(content)
    return result_or_none(path)


def attached(record: bytes) -> dict[str, bytes]:
    """A record's attachments."""
    with pikepdf.open(io.BytesIO(record)) as pdf:
        return {name: pdf.attachments[name].get_file().read_bytes() for name in pdf.attachments}


def with_attachments(record: bytes, files: dict[str, bytes]) -> bytes:
    """The record with other attachments: what a forger with a PDF editor makes of it."""
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(record)) as pdf:
        for name in list(pdf.attachments):
            del pdf.attachments[name]
        if "/AF" in pdf.Root:
            del pdf.Root.AF
        for name, content in files.items():
            pdf.attachments[name] = pikepdf.AttachedFileSpec(pdf, content, filename=name)
        pdf.save(out)
    return out.getvalue()


def test_a_record_is_intact(record: bytes, signed: Path, tmp_path: Path):
    """Signed with a known key: what was signed is read back from the PDF alone."""
    done = of(record, tmp_path)
    assert (done.verified.result, done.verified.faults, done.is_pdf) == (Result.INTACT, (), True)
    assert sorted(attached(record)) == NAMES
    assert attached(record)["journal.jsonl"] == (signed / "journal.jsonl").read_bytes()
    assert isinstance(done.findings, dict)
    assert isinstance(done.hand_over, dict)
    assert (done.findings["verdict"], done.hand_over["end"]) == ("open", "provisional")
    # person, job sheet, unit sheet, readings, recordings are named only; the three things that were signed are there
    named = {blob for entry in load_journal(signed).entries for blob in entry.blobs}
    assert (done.only_named, done.beside) == (len(named) - 3, ())


def test_a_folder_is_intact(signed: Path):
    """Journal, files and what lies beside them."""
    done = verify(signed, KNOWN)
    assert (done.verified.result, done.verified.faults, done.is_pdf) == (Result.INTACT, (), False)


def test_verifying_changes_nothing(signed: Path):
    """No byte, no file, no time."""
    before = {path: path.stat().st_mtime_ns for path in signed.rglob("*")}
    verify(signed, KNOWN)
    assert {path: path.stat().st_mtime_ns for path in signed.rglob("*")} == before


def test_a_key_that_is_not_known(record: bytes, signed: Path, tmp_path: Path):
    """Nothing is altered, and that is not enough."""
    (tmp_path / "record.pdf").write_bytes(record)
    for path in (tmp_path / "record.pdf", signed):
        for names in ({}, {OTHER_KEY: "Tam"}):
            assert verify(path, names).verified.result is Result.KEY_UNKNOWN


@pytest.mark.parametrize("name", NAMES)
def test_every_attachment_is_held_to_what_was_signed(record: bytes, tmp_path: Path, name: str):
    """A byte changed, put in, lost at many places; emptied; taken away: found, and named on a line with its entry."""
    files = attached(record)
    content = files[name]
    step = max(1, len(content) // 12)
    for at in range(0, len(content), step):
        changes = [bytes([content[at] ^ 1]), b"", content[at : at + 1] * 2]
        for change in changes:
            changed = content[:at] + change + content[at + 1 :]
            done = of(with_attachments(record, {**files, name: changed}), tmp_path).verified
            assert done.result is not Result.INTACT, (name, at)
    assert outcome(with_attachments(record, {**files, name: b""}), tmp_path) not in (Result.INTACT,)
    without = with_attachments(record, {other: each for other, each in files.items() if other != name})
    assert outcome(without, tmp_path) is (None if name == "journal.jsonl" else Result.ALTERED)


def test_the_first_altered_entry_is_named(record: bytes, signed: Path, tmp_path: Path):
    """A figure in the record's journal made better: its line and its id."""
    files = attached(record)
    forged = files["journal.jsonl"].replace(b'"12.58"', b'"12.85"')
    done = of(with_attachments(record, {**files, "journal.jsonl": forged}), tmp_path).verified
    entry = next(entry for entry in load_journal(signed).entries if entry.body.get("volts") == "12.58")
    number = load_journal(signed).entries.index(entry) + 1
    assert [(fault.line, fault.entry) for fault in done.faults] == [(number, entry.id)]


@pytest.mark.parametrize(
    "change",
    [
        lambda lines: lines[:-1],
        lambda lines: lines[1:],
        lambda lines: [*lines[:-2], lines[-1], lines[-2]],
        lambda lines: [*lines[:-2], lines[-1]],
        lambda lines: [lines[1], lines[0], *lines[2:]],
        lambda lines: [*lines, lines[3]],
        lambda lines: lines[-1:],
    ],
)
def test_lines_taken_away_swapped_or_doubled(record: bytes, tmp_path: Path, change: Callable[[list[bytes]], object]):
    """The sign-off gone, the first gone, the last two swapped, the last evidence gone, one twice, only the sign-off."""
    files = attached(record)
    lines = change(files["journal.jsonl"].splitlines(keepends=True))
    assert isinstance(lines, list)
    done = of(with_attachments(record, {**files, "journal.jsonl": b"".join(lines)}), tmp_path)
    assert done.verified.result is Result.ALTERED


def test_a_record_made_before_anybody_signed(tmp_path: Path):
    """Never signed; a stray list of findings does not make it so."""
    folder = handed_over(tmp_path)
    content = record_of(judge_folder(folder))
    assert of(content, tmp_path).verified.result is Result.NEVER_SIGNED
    stray = with_attachments(content, {**attached(content), "signed-findings.json": b"{}"})
    done = of(stray, tmp_path).verified
    assert done.result is Result.ALTERED
    assert done.faults[0].what == "signed-findings.json is attached, but nobody has signed"


def test_another_file_beside_is_named(record: bytes, tmp_path: Path):
    """It takes nothing away from what was signed."""
    done = of(with_attachments(record, {**attached(record), "invoice.txt": b"12"}), tmp_path)
    assert (done.verified.result, done.beside) == (Result.INTACT, ("invoice.txt",))


def test_a_record_of_which_later_evidence_is_part(job: Path, tmp_path: Path):
    """A reading corrected after signing: the record made then is not wholly covered, and says what is not."""
    edit(job / "readings.csv", "12.58", "12.57")
    done = of(record_of(judge_folder(job)), tmp_path).verified
    assert (done.result, done.faults) == (Result.NOT_COVERED, ())
    assert [line.entry.kind for line in done.late] == ["correction", "correction"]


def test_a_record_signed_again(job: Path, tmp_path: Path, place: Path):
    """Twice signed, with evidence between: intact, and with what was signed last inside."""
    edit(job / "readings.csv", "12.58", "12.57")
    last = sign_job(job, key_folder(tmp_path / "keys"), number=2).entry
    content = record_of(judge_folder(job))
    done = of(content, tmp_path)
    assert (done.verified.result, len(done.verified.signed)) == (Result.INTACT, 2)
    assert done.verified.counts is not None
    assert done.verified.counts.sign_off.entry == last
    # with the last sign-off taken away the first stands, but what is attached is not what that one signed
    files = attached(content)
    shorter = b"".join(files["journal.jsonl"].splitlines(keepends=True)[:-1])
    assert outcome(with_attachments(content, {**files, "journal.jsonl": shorter}), tmp_path) is Result.ALTERED


def edit(path: Path, before: str, after: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def stream_places(record: bytes) -> list[tuple[str, int, int]]:
    """Where in the PDF the packed bytes of each attachment stand."""
    places = []
    with pikepdf.open(io.BytesIO(record)) as pdf:
        for name in pdf.attachments:
            raw = pdf.attachments[name].get_file().obj.read_raw_bytes()
            assert record.count(raw) == 1
            places.append((name, record.index(raw), len(raw)))
    return places


def test_packed_bytes_do_not_change_unseen(record: bytes, tmp_path: Path):
    """Bytes of the packed attachments as they stand in the file: found, unless what is unpacked stays as it was.

    That can be: the last byte of a packed stream may hold bits that mean nothing (RFC 1951).
    """
    silent = 0
    before = attached(record)
    for _, start, length in stream_places(record):
        for at in {*range(start, start + length, max(1, length // 60)), *range(start + length - 8, start + length)}:
            content = record[:at] + bytes([record[at] ^ 4]) + record[at + 1 :]
            if outcome(content, tmp_path) is Result.INTACT:
                assert attached(content) == before
                silent += 1
    assert silent <= len(NAMES)


@given(data=st.data())
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=200, deadline=None)
def test_a_damaged_pdf_is_never_a_traceback(record: bytes, tmp_path: Path, data: st.DataObject):
    """Bytes changed, lost or put in anywhere; cut off anywhere: verified or refused, and never another journal."""
    content = bytearray(record)
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(content) - 1))
        if data.draw(st.booleans()):
            content[at] = data.draw(st.integers(0, 255))
        else:
            content[at : at + data.draw(st.integers(0, 3))] = data.draw(st.binary(max_size=3))
    if data.draw(st.booleans()):
        content = content[: data.draw(st.integers(0, len(content)))]
    if outcome(bytes(content), tmp_path) is Result.INTACT:
        assert attached(bytes(content)) == attached(record)


@pytest.mark.parametrize("part", [0.0, 0.01, 0.3, 0.7, 0.95, 0.999])
def test_a_torn_pdf_is_refused(record: bytes, tmp_path: Path, part: float):
    """Cut off after any part, the last few bytes included."""
    with pytest.raises(UnreadableError):
        of(record[: int(len(record) * part)], tmp_path)


def test_a_pdf_without_a_journal_is_refused(record: bytes, tmp_path: Path):
    """Any other PDF, with other attachments or with none."""
    for files in ({}, {"invoice.txt": b"12"}):
        with pytest.raises(UnreadableError, match="a record made by backprobe"):
            of(with_attachments(record, files), tmp_path)


@pytest.mark.parametrize("content", [b"", b"\n", b"\n\n\n", b"{}\n", b"not a journal", b"\x00" * 100])
def test_a_journal_that_is_none_is_refused(record: bytes, tmp_path: Path, content: bytes):
    """In a PDF and in a folder: not one line is an entry."""
    files = {**attached(record), "journal.jsonl": content}
    with pytest.raises(InputError):
        of(with_attachments(record, files), tmp_path)
    (tmp_path / "journal.jsonl").write_bytes(content)
    with pytest.raises(InputError):
        verify(tmp_path, KNOWN)


def test_places_without_a_journal(tmp_path: Path):
    """An empty folder, a folder of something else, paths that lead nowhere, a text file, a pipe that nobody fills."""
    (tmp_path / "holiday").mkdir()
    (tmp_path / "holiday" / "beach.jpg").write_bytes(b"\xff\xd8")
    (tmp_path / "notes.txt").write_text("hello", encoding="utf-8")
    os.mkfifo(tmp_path / "pipe")
    for name in ("", "holiday", "nowhere", "notes.txt", "notes.txt/deeper", "bad\0name", "n" * 5000, "pipe"):
        with pytest.raises(InputError):
            verify(tmp_path / name, KNOWN)


def test_every_blob_of_a_folder_is_looked_at(job: Path):
    """Each in turn altered, then missing: named with the entry that names it."""
    for path in sorted((job / "blobs").iterdir()):
        content = path.read_bytes()
        path.write_bytes(content[:-1] + bytes([content[-1] ^ 1]))
        altered = verify(job, KNOWN).verified
        path.unlink()
        missing = verify(job, KNOWN).verified
        path.write_bytes(content)
        for done, word in ((altered, "was altered"), (missing, "is missing")):
            assert done.result is Result.ALTERED
            (fault,) = done.faults
            assert f"blobs/{path.name} {word}" in fault.what
            assert path.name in next(line.entry.blobs for line in done.rows.journal.lines if line.number == fault.line)
    assert verify(job, KNOWN).verified.result is Result.INTACT


def erase(job: Path, name: bytes) -> None:
    """Delete what holds a name, and say so in the journal."""
    holding = [path for path in (job / "blobs").iterdir() if name in path.read_bytes()]
    for path in holding:
        path.unlink()
    with held_journal(job) as held:
        draft = Draft(
            id="01890000-0000-7000-8000-000000000001",
            kind="erased",
            body={"blobs": sorted(path.name for path in holding), "why": "asked for"},
        )
        entry = continued(held.journal, [draft], job="LY-2026-07", device="desk", engine="0.1.0")
        held.append(entry)


def test_what_was_erased_on_purpose_is_not_missed(job: Path, tmp_path: Path):
    """But the erasing itself must be signed, or anybody could take evidence away by saying so."""
    erase(job, b"Okafor")
    done = verify(job, KNOWN).verified
    assert (done.result, done.faults) == (Result.NOT_COVERED, ())
    assert [line.entry.kind for line in done.late] == ["erased"]
    sign_job(job, key_folder(tmp_path / "keys"), number=2)
    assert verify(job, KNOWN).verified.result is Result.INTACT


def test_an_erased_hand_over_may_be_missing_from_the_record(job: Path, tmp_path: Path):
    """Who owes what is a blob of its own: erased and signed again, the record is intact without the first one."""
    erase(job, b'"owed_by":"the yard office"')
    edit(job / "job.toml", "the yard office", "the fleet desk")
    import_folder(job)
    sign_job(job, key_folder(tmp_path / "keys"), number=2)
    assert of(record_of(judge_folder(job)), tmp_path).verified.result is Result.INTACT


@pytest.mark.parametrize(
    ("change", "name"),
    [
        (lambda job: edit(job / "readings.csv", "12.58", "12.57"), "readings.csv"),
        (lambda job: edit(job / "job.toml", "bay 3", "bay 4"), "job.toml"),
        (lambda job: edit(job / ".." / "unit.toml", "8.0", "8.1"), "../unit.toml"),
        (lambda job: edit(job / "walkround.toml", "Maud Linden", "Dov Castellan"), "walkround.toml"),
        (lambda job: edit(job / "mount.toml", "away_mm = 160", "away_mm = 150"), "mount.toml"),
        (lambda job: (job / "recordings" / "crank.csv").write_text("time_s,x\n0,1\n"), "recordings/crank.csv"),
        (lambda job: (job / "recordings" / "more.csv").write_text("time_s,x\n0,1\n"), "recordings/more.csv"),
        (lambda job: (job / "photos" / "ground.jpg").write_bytes(b"another"), "photos/ground.jpg"),
        (lambda job: (job / "photos" / "more.jpg").write_bytes(b"one more"), "photos/more.jpg"),
    ],
)
def test_files_changed_since_are_named(job: Path, change: Callable[[Path], object], name: str):
    """What the folder holds and its journal does not yet: not covered by any sign-off."""
    change(job)
    done = verify(job, KNOWN).verified
    assert done.result is Result.NOT_COVERED
    (words,) = done.pending
    assert words.startswith(f"{name} was changed, or added")


def test_a_folder_without_its_working_files_is_whole(job: Path):
    """The evidence is the journal and its blobs; tables and recordings beside it are copies of those."""
    for name in ("readings.csv", "job.toml", "recordings"):
        path = job / name
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    assert verify(job, KNOWN).verified.result is Result.INTACT


def test_a_phone_s_entry_that_arrives_later(job: Path):
    """Merged after the sign-off: not covered, and named with its device."""
    with held_journal(job) as held:
        draft = Draft(id="01890000-0000-7000-8000-000000000002", kind="absent_key", body={"key": "charging"})
        held.append(continued(held.journal, [draft], job="LY-2026-07", device="phone-a", engine="0.1.0"))
    done = verify(job, KNOWN).verified
    assert (done.result, [line.entry.device for line in done.late]) == (Result.NOT_COVERED, ["phone-a"])


def test_two_signers_one_known(job: Path, tmp_path: Path):
    """The second covers the first: known, it is intact; if only the first is known, the second is not covered."""
    sign_job(job, key_folder(tmp_path / "other", "tam", SEEDS[1]), number=2)
    assert verify(job, {OTHER_KEY: "Tam"}).verified.result is Result.INTACT
    assert verify(job, {KEY: "Ines", OTHER_KEY: "Tam"}).verified.result is Result.INTACT
    assert verify(job, KNOWN).verified.result is Result.NOT_COVERED


@given(content=st.binary(max_size=400), at=st.integers(0, 20_000))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=100, deadline=None)
def test_whatever_stands_in_a_folder_s_journal(signed: Path, tmp_path: Path, content: bytes, at: int):
    """Any bytes in place of any part: verified or refused in the project's own words, never intact unless the same."""
    folder = tmp_path / "folder"
    if not folder.exists():
        shutil.copytree(signed.parent, folder)
    journal = (signed / "journal.jsonl").read_bytes()
    at %= len(journal)
    changed = journal[:at] + content + journal[at + len(content) :]
    (folder / signed.name / "journal.jsonl").write_bytes(changed)
    assert (result_or_none(folder / signed.name) is Result.INTACT) == (changed == journal)


def result_or_none(path: Path) -> Result | None:
    """What verification comes to; None where it was refused in the project's own words."""
    try:
        return verify(path, KNOWN).verified.result
    except InputError:
        return None


def test_a_journal_of_hostile_names_is_only_looked_at(tmp_path: Path, job: Path):
    """File names that lead out of the folder, or are none: no error, and nothing told of what they hold."""
    outside = tmp_path / "secret.txt"
    outside.write_text("12", encoding="utf-8")
    journal = (job / "journal.jsonl").read_bytes()
    for name in (str(outside), "../../secret.txt", "bad\\u0000name", "/dev/zero", "x" * 5000):
        (job / "journal.jsonl").write_bytes(journal.replace(b'"readings.csv"', json.dumps(name).encode()))
        assert verify(job, KNOWN).verified.result is Result.ALTERED
