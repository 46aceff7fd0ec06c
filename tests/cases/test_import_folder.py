"""A job folder into its journal: all of it once, then what changed, and nothing twice."""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.journals import uuid7

from backprobe.cases import import_folder as importing
from backprobe.cases.import_folder import import_folder, named_photos
from backprobe.errors import BackprobeError, InputError, JobError, JournalError
from backprobe.files import blobs
from backprobe.files.blobs import blob_faults
from backprobe.files.journal_file import held_journal, load_journal
from backprobe.job.fold import JobState, fold
from backprobe.job.journal import Draft, continued

JOB = """
[vehicle]
system_V = 12
vin = "1M8GDM9AXKP042788"
[unit]
sheet = "unit.toml"
serial = "LN2-00417"
[job]
id = "2026-031"
technician = "Ines Okafor"
"""
UNIT = """
name = "Lantern 2"
[supply]
least_V = 8.0
most_V = 32
[[lead]]
name = "power"
purpose = "supply"
[[lead]]
name = "ground"
purpose = "ground"
"""
READINGS = """wire,key,volts,capture,after_min,load_A,circuit,marks,note
Red,off,12.61,,,,F14,,behind the fuse panel
Red,crank,10.12,min,,1.5,,,
Violet,on,350 mV,,,,,twisted,
Violet,onn,12.31,,,,,,
Orange,accessory,na,,,,,,
Grey,,,,,,,,
"""
CRANK = b"time_s,battery,Red\n0,12.61,12.60\n0.1,9.80,9.70\n"

IMPORT = """
import sys
from pathlib import Path
from backprobe.cases.import_folder import import_folder
import_folder(Path(sys.argv[1]))
"""


def one_byte_other(text: str, at: int, byte: int) -> bytes:
    """A file with one byte changed."""
    return text.encode()[:at] + bytes([byte]) + text.encode()[at + 1 :]


contents = st.binary(max_size=200) | st.builds(
    one_byte_other, st.sampled_from((JOB, UNIT, READINGS)), st.integers(0, 150), st.integers(0, 255)
)


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A job folder with a sheet, a unit, readings and one recording."""
    folder = tmp_path / "truck-204"
    (folder / "recordings").mkdir(parents=True)
    (folder / "job.toml").write_text(JOB, encoding="utf-8")
    (folder / "unit.toml").write_text(UNIT, encoding="utf-8")
    (folder / "readings.csv").write_text(READINGS, encoding="utf-8")
    (folder / "recordings" / "crank.csv").write_bytes(CRANK)
    return folder


def edit(path: Path, before: str, after: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def journal_bytes(folder: Path) -> bytes:
    return (folder / "journal.jsonl").read_bytes()


def test_all_of_a_folder_is_taken_in(place: Path):
    """Sheets, table, rows, the line that was passed over, the recording: each its entry; the state gives them back."""
    done = import_folder(place)
    assert done.added == {
        "person": 1,
        "job": 1,
        "unit_sheet": 1,
        "readings_file": 1,
        "wire_declared": 4,
        "circuit": 2,
        "reading": 3,
        "absent_key": 1,
        "skipped_line": 1,
        "recording": 1,
    }
    assert done.state.table == done.table
    assert done.state.settled
    assert (done.job, done.state.job, done.state.slots["serial"].value) == ("2026-031", "2026-031", "LN2-00417")
    assert done.notes == ()
    assert (done.sheet.technician, done.unit.name) == ("Ines Okafor", "Lantern 2")


def test_entries_follow_the_house_rules(place: Path):
    """All by the device 'folder', with no time; every entry after the person's own is by that person."""
    entries = import_folder(place).journal.entries
    assert {(entry.device, entry.at, entry.engine) for entry in entries} == {("folder", None, importing.__version__)}
    person = entries[0]
    assert (person.kind, person.by) == ("person", None)
    assert {entry.by for entry in entries[1:]} == {person.id}


def test_a_name_stands_in_blobs_only(place: Path):
    """The technician's name is in no entry; it is in the person's blob and in the job sheet's."""
    import_folder(place)
    assert b"Okafor" not in journal_bytes(place)
    holding = [path for path in (place / "blobs").iterdir() if b"Okafor" in path.read_bytes()]
    assert len(holding) == 2


def test_photos_are_taken_in_like_recordings(place: Path):
    """What it shows stands in the entry, what is said of it in words does not; what is no photo is kept as well."""
    (place / "photos").mkdir()
    (place / "photos" / "ground.jpg").write_bytes(b"\xff\xd8\xff")
    (place / "photos" / "a letter.txt").write_bytes(b"to whom it may concern")
    edit(
        place / "job.toml", "[job]", '[[photo]]\nfile = "photos/ground.jpg"\nshows = "ground"\nnote = "by Ines"\n[job]'
    )
    done = import_folder(place)
    letter, ground = (entry for entry in done.journal.entries if entry.kind == "photo")
    assert (ground.body["file"], ground.body["shows"], ground.body["bytes"]) == ("photos/ground.jpg", "ground", 3)
    assert (letter.body["file"], letter.body["shows"], letter.body["stored"]) == ("photos/a letter.txt", None, True)
    assert b"by Ines" not in journal_bytes(place)
    for entry, content in ((ground, b"\xff\xd8\xff"), (letter, b"to whom it may concern")):
        assert entry.blobs == (hashlib.sha256(content).hexdigest(),)
        assert (place / "blobs" / entry.blobs[0]).read_bytes() == content
    assert import_folder(place).added == {}


def test_a_photo_that_shows_something_else_is_corrected(place: Path):
    """The same file under another word: one correction, nothing else but the sheet's own."""
    (place / "photos").mkdir()
    (place / "photos" / "a.jpg").write_bytes(b"\xff\xd8\xff")
    import_folder(place)
    edit(place / "job.toml", "[job]", '[[photo]]\nfile = "photos/a.jpg"\nshows = "mount"\n[job]')
    done = import_folder(place)
    assert done.added == {"correction": 2}
    (photo,) = done.state.of_kind("photo")
    assert photo.body["shows"] == "mount"


WALKROUND = '[authority]\nwork_by = "Maud Linden"\n'


def test_a_walkround_is_taken_in_and_its_changes_are_corrections(place: Path):
    """One entry with its digest, no name in it; a change corrects it, and without the file it is withdrawn."""
    import_folder(place)
    (place / "walkround.toml").write_text(WALKROUND, encoding="utf-8")
    done = import_folder(place)
    assert done.added == {"walkround": 1}
    assert done.walkround is not None
    assert done.walkround.authority.work_by == "Maud Linden"
    (entry,) = (entry for entry in done.journal.entries if entry.kind == "walkround")
    digest = hashlib.sha256(WALKROUND.encode()).hexdigest()
    assert entry.body == {"file": "walkround.toml", "sha256": digest, "bytes": len(WALKROUND)}
    assert b"Maud" not in journal_bytes(place)
    assert (place / "blobs" / digest).read_text(encoding="utf-8") == WALKROUND
    edit(place / "walkround.toml", "Maud Linden", "Dov Castellan")
    assert import_folder(place).added == {"correction": 1}
    (place / "walkround.toml").unlink()
    gone = import_folder(place)
    assert (gone.added, gone.walkround, gone.state.of_kind("walkround")) == ({"withdrawn": 1}, None, ())


def test_a_mount_sheet_is_taken_in_and_its_changes_are_corrections(place: Path):
    """One entry with its digest; another place chosen corrects it, and without the file it is withdrawn."""
    import_folder(place)
    text = '[[place]]\nname = "on the dash"\n'
    (place / "mount.toml").write_text(text, encoding="utf-8")
    done = import_folder(place)
    assert done.added == {"mount": 1}
    assert done.mount is not None
    assert done.mount.places[0].name == "on the dash"
    edit(place / "mount.toml", "on the dash", "on the roof")
    assert import_folder(place).added == {"correction": 1}
    (place / "mount.toml").unlink()
    gone = import_folder(place)
    assert (gone.added, gone.mount, gone.state.of_kind("mount")) == ({"withdrawn": 1}, None, ())


def test_photos_are_named_by_the_sheet_first_and_by_the_walkround_where_it_is_silent(place: Path):
    """The sheet calls ground.jpg a ground, the walkround another thing; lamps.jpg is named by the walkround alone."""
    (place / "photos").mkdir()
    for name in ("ground.jpg", "lamps.jpg"):
        (place / "photos" / name).write_bytes(name.encode())
    edit(place / "job.toml", "[job]", '[[photo]]\nfile = "photos/ground.jpg"\nshows = "ground"\n[job]')
    of_walk = (("ground", "before"), ("lamps", "dash_lamps"))
    text = "".join(f'[[photo]]\nfile = "photos/{name}.jpg"\nshows = "{shows}"\n' for name, shows in of_walk)
    (place / "walkround.toml").write_text(text, encoding="utf-8")
    done = import_folder(place)
    assert [photo.body["shows"] for photo in done.state.of_kind("photo")] == ["ground", "dash_lamps"]
    assert [photo.file for photo in named_photos(done.sheet, done.walkround)] == [
        "photos/ground.jpg",
        "photos/lamps.jpg",
    ]


def test_every_file_is_kept_by_its_digest(place: Path):
    """Job sheet, unit sheet, table and recording byte for byte, and the person's name."""
    done = import_folder(place)
    kept = {path.name: path.read_bytes() for path in (place / "blobs").iterdir()}
    assert all(hashlib.sha256(content).hexdigest() == name for name, content in kept.items())
    files = [place / "job.toml", place / "unit.toml", place / "readings.csv", place / "recordings" / "crank.csv"]
    assert {path.read_bytes() for path in files} <= set(kept.values())
    assert {blob for entry in done.journal.entries for blob in entry.blobs} == set(kept)
    assert blob_faults(place, kept) == ()


def test_a_second_import_changes_no_byte(place: Path):
    """Nothing new, nothing written; not even the file's time."""
    import_folder(place)
    before, time = journal_bytes(place), (place / "journal.jsonl").stat().st_mtime_ns
    again = import_folder(place)
    assert again.added == {}
    assert (journal_bytes(place), (place / "journal.jsonl").stat().st_mtime_ns) == (before, time)


def test_another_version_of_the_engine_writes_nothing_again(place: Path, monkeypatch: pytest.MonkeyPatch):
    """Unchanged rows keep the entries they have, with the version that wrote them; a new row bears the new version."""
    import_folder(place)
    before = journal_bytes(place)
    monkeypatch.setattr(importing, "__version__", "9.9.9")
    assert import_folder(place).added == {}
    edit(place / "readings.csv", "Grey,,,,,,,,", "Grey,on,0.02,,,,,,")
    import_folder(place)
    assert journal_bytes(place).startswith(before)
    new = load_journal(place).entries[before.count(b"\n") :]
    assert {entry.engine for entry in new} == {"9.9.9"}
    assert {entry.engine for entry in load_journal(place).entries[: before.count(b"\n")]} == {"0.1.0"}


def test_the_same_folder_elsewhere_makes_the_same_journal(place: Path, tmp_path: Path):
    """On another machine, under another name: the same bytes."""
    shutil.copytree(place, tmp_path / "elsewhere")
    import_folder(place)
    import_folder(tmp_path / "elsewhere")
    assert journal_bytes(place) == journal_bytes(tmp_path / "elsewhere")


@pytest.mark.parametrize(
    ("change", "added"),
    [
        # a table that changed is itself a correction, beside what changed in it
        (lambda at: edit(at / "readings.csv", "12.61", "12.16"), {"correction": 2}),
        (
            lambda at: edit(at / "readings.csv", "Red,crank,10.12,min,,1.5,,,\n", "\n"),
            {"correction": 1, "withdrawn": 1},
        ),
        (
            lambda at: edit(at / "readings.csv", "Violet,onn", "Violet,on"),
            {"correction": 1, "reading": 1, "withdrawn": 1},
        ),
        (lambda at: edit(at / "readings.csv", "F14", "F15"), {"correction": 2}),
        (lambda at: edit(at / "readings.csv", "behind", "beside"), {"correction": 1}),
        (lambda at: edit(at / "job.toml", "LN2-00417", "LN2-00471"), {"correction": 1}),
        (lambda at: edit(at / "job.toml", "Ines Okafor", "Tam Orrel"), {"correction": 1, "person": 1, "withdrawn": 1}),
        (lambda at: edit(at / "unit.toml", "8.0", "9.0"), {"correction": 1}),
        (lambda at: (at / "recordings" / "crank.csv").write_bytes(CRANK + b"0.2,12,12\n"), {"correction": 1}),
        (lambda at: (at / "recordings" / "more.csv").write_bytes(CRANK + b"0.2,12,12\n"), {"recording": 1}),
        (lambda at: (at / "recordings" / "crank.csv").unlink(), {"withdrawn": 1}),
    ],
)
def test_an_edit_adds_what_changed(place: Path, change: Callable[[Path], object], added: dict[str, int]):
    """Each edit adds these entries behind the others, and the state is that of a folder never seen before."""
    import_folder(place)
    before = journal_bytes(place)
    change(place)
    done = import_folder(place)
    assert done.added == added
    assert journal_bytes(place).startswith(before)
    assert done.state.table == done.table
    assert done.state.settled
    assert import_folder(place).added == {}


def test_what_the_technician_wrote_is_kept(place: Path):
    """Figures as typed, lines that were passed over, and columns that are not known, through any number of edits."""
    import_folder(place)
    edit(place / "readings.csv", "350 mV", "0.350")
    edit(place / "readings.csv", "Violet,onn,12.31,,,,,,\n", "")
    edit(place / "readings.csv", "behind the fuse panel", "")
    import_folder(place)
    said = [entry.body for entry in load_journal(place).entries]
    assert [body["volts"] for body in said if "volts" in body] == ["12.61", "10.12", "350 mV"]
    (skipped,) = (body for body in said if "expected" in body)
    assert (skipped["line"], skipped["text"]) == (5, "Violet,onn,12.31,,,,,,")
    assert any(b"behind the fuse panel" in path.read_bytes() for path in (place / "blobs").iterdir())


def test_a_phone_s_correction_stands_until_the_folder_contradicts_it(place: Path):
    """The unchanged row of the folder does not overrule the phone; a changed one makes a dispute."""
    first = import_folder(place)
    reading = next(entry for entry in first.journal.entries if entry.body.get("volts") == "12.61")
    body = {"replaces": reading.id, "kind": "reading", "body": reading.body | {"volts": "12.66"}}
    with held_journal(place) as held:
        draft = Draft(id=uuid7(1), kind="correction", body=body)
        held.append(continued(held.journal, [draft], job=first.job, device="phone-a", engine="0.1.0"))
    again = import_folder(place)
    assert again.added == {}
    assert "12.66" in [found.typed for found in again.state.table.readings]
    edit(place / "readings.csv", "12.61", "12.16")
    disputed = import_folder(place).state
    assert [dispute.about for dispute in disputed.disputes] == [reading.id]
    assert ("Red", "off") in disputed.table.unread


def test_a_journal_that_was_damaged_is_named_and_left_alone(place: Path):
    """An altered figure: the line is named, what to do is said, nothing is written, blobs neither."""
    import_folder(place)
    damaged = journal_bytes(place).replace(b'"12.61"', b'"12.91"')
    (place / "journal.jsonl").write_bytes(damaged)
    edit(place / "readings.csv", "10.12", "10.21")
    kept = sorted((place / "blobs").iterdir())
    with pytest.raises(JournalError, match=r"(?s)journal line \d+: altered after writing: .*nothing was written\. Put"):
        import_folder(place)
    assert journal_bytes(place) == damaged
    assert sorted((place / "blobs").iterdir()) == kept


def test_a_torn_end_is_mended_and_what_it_said_is_said_again(place: Path):
    """The last entry torn by a power cut: set aside, noted, and written anew under the same id."""
    import_folder(place)
    whole = journal_bytes(place)
    (place / "journal.jsonl").write_bytes(whole[:-50])
    done = import_folder(place)
    assert [note.split(":")[0] for note in done.notes] == ["journal.jsonl"]
    assert done.added == {"skipped_line": 1}
    assert journal_bytes(place) == whole
    assert (place / "journal.jsonl.torn-1").exists()


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("job.toml", "[vehicle\n"),
        ("job.toml", ""),
        ("unit.toml", "name = 3"),
        ("walkround.toml", "[authority]\nwork = 3\n"),
        ("mount.toml", '[[place]]\nname = "x"\ncover = "tin"\n'),
        ("readings.csv", "no,header\n1,2\n"),
        ("readings.csv", "wire,key,volts\nRed,onn,12\n"),
        ("readings.csv", ""),
        ("readings.csv", "wire,key,volts,circuit\nRed,on,12.3," + "fuse " * 1000),
        ("job.toml", JOB + '[meter]\nfile = "none.toml"\n'),
        ("job.toml", JOB.replace("LN2-00417", "LN2-" + "0" * 3000)),
    ],
)
def test_bad_input_leaves_no_trace(place: Path, name: str, content: str):
    """Nothing is written where something cannot be read."""
    (place / name).write_text(content, encoding="utf-8")
    with pytest.raises(InputError):
        import_folder(place)
    assert not (place / "journal.jsonl").exists()
    assert not (place / "blobs").exists()


def test_a_job_just_begun(place: Path):
    """Neither readings nor recordings nor a technician: two sheets, an empty table."""
    (place / "readings.csv").unlink()
    shutil.rmtree(place / "recordings")
    edit(place / "job.toml", 'technician = "Ines Okafor"\n', "")
    done = import_folder(place)
    assert done.added == {"job": 1, "unit_sheet": 1}
    assert {entry.by for entry in done.journal.entries} == {None}
    assert done.table.readings == ()


def test_the_meter_s_own_figures_are_kept(place: Path):
    """A meter file named by the sheet is an entry and a blob."""
    (place / "meter.toml").write_text("percent = 0.5\ncounts = 2\n", encoding="utf-8")
    (place / "job.toml").write_text(JOB + '[meter]\nfile = "meter.toml"\n', encoding="utf-8")
    assert import_folder(place).added["meter_sheet"] == 1


def test_a_job_without_an_id_keeps_the_one_it_got(place: Path, tmp_path: Path):
    """Made of the folder's name and the sheet, and kept by the journal when the sheet changes or the folder moves."""
    edit(place / "job.toml", 'id = "2026-031"\n', "")
    first = import_folder(place).job
    assert len(first) == 36
    edit(place / "job.toml", "Ines Okafor", "Tam Orrel")
    moved = tmp_path / "moved"
    place.rename(moved)
    assert import_folder(moved).job == first


def test_a_copied_folder_is_not_mixed_with_the_job_it_was_copied_from(place: Path):
    """The sheet says another job than the journal: said, with what to do."""
    import_folder(place)
    before = journal_bytes(place)
    edit(place / "job.toml", "2026-031", "2026-032")
    with pytest.raises(JobError, match=r"is that of job '2026-031', job\.toml says '2026-032'"):
        import_folder(place)
    assert journal_bytes(place) == before


def test_a_recording_too_large_to_keep(place: Path, monkeypatch: pytest.MonkeyPatch):
    """Above the limit (here 20 bytes) it is known by name, size and digest, said so, and not copied."""
    (place / "recordings" / "crank.csv").unlink()
    (place / "recordings" / "long.csv").write_bytes(CRANK)
    monkeypatch.setattr(importing, "MOST_BLOB_BYTES", 20)
    monkeypatch.setattr(blobs.put_file, "__kwdefaults__", blobs.put_file.__kwdefaults__ | {"most_bytes": 20})
    done = import_folder(place)
    (recording,) = done.state.of_kind("recording")
    digest = hashlib.sha256(CRANK).hexdigest()
    assert (recording.body["sha256"], recording.body["bytes"], recording.body["stored"]) == (digest, len(CRANK), False)
    assert recording.entry.blobs == ()
    assert not (place / "blobs" / digest).exists()
    assert any(note.startswith("recordings/long.csv is larger than") for note in done.notes)


def test_the_limit_is_512_MB():
    """As the page on the journal says."""
    assert blobs.MOST_BLOB_BYTES == importing.MOST_BLOB_BYTES == 512_000_000


def test_missing_blobs_are_named_or_put_back(place: Path):
    """One whose file is still in the folder comes back, one whose file has changed is missed; both are said."""
    import_folder(place)
    crank = hashlib.sha256(CRANK).hexdigest()
    table = hashlib.sha256(READINGS.encode()).hexdigest()
    (place / "blobs" / crank).unlink()
    (place / "blobs" / table).unlink()
    edit(place / "readings.csv", "12.61", "12.16")
    notes = import_folder(place).notes
    assert notes[0] == f"blobs/{crank} was missing and is back (recordings/crank.csv)"
    assert notes[1].startswith(f"blobs/{table} is missing; entry ")
    assert len(notes) == 2


def test_what_was_erased_stays_erased(place: Path):
    """A person asked to be forgotten: the blobs go, an entry says so, no import brings them back or misses them."""
    first = import_folder(place)
    holding = [path.name for path in (place / "blobs").iterdir() if b"Okafor" in path.read_bytes()]
    for name in holding:
        (place / "blobs" / name).unlink()
    with held_journal(place) as held:
        draft = Draft(id=uuid7(1), kind="erased", body={"blobs": sorted(holding), "why": "asked for"})
        held.append(continued(held.journal, [draft], job=first.job, device="phone-a", engine="0.1.0"))
    again = import_folder(place)
    assert (again.added, again.notes) == ({}, ())
    assert not any((place / "blobs" / name).exists() for name in holding)
    assert load_journal(place).faults == ()


def test_files_that_are_no_recordings_are_named(place: Path):
    """Hidden files and folders among the recordings are passed over, and that is said."""
    (place / "recordings" / "old").mkdir()
    assert import_folder(place).notes == ("recordings/old was passed over: not a plain file",)


def test_a_file_name_that_is_no_text(place: Path):
    """A name in another encoding is written out and does not stop anything."""
    (place / "recordings" / "crank.csv").rename(place / "recordings" / os.fsdecode(b"cr\xe4nk.csv"))
    (recording,) = import_folder(place).state.of_kind("recording")
    assert recording.body["file"] == "recordings/cr\\udce4nk.csv"
    assert import_folder(place).added == {}


def test_two_imports_at_once_write_one_journal(place: Path, tmp_path: Path):
    """Four processes at the same folder: the journal is that of a single import."""
    shutil.copytree(place, tmp_path / "alone")
    import_folder(tmp_path / "alone")
    source = str(Path(importing.__file__).parents[2])
    command = [sys.executable, "-c", IMPORT, str(place)]
    running = [subprocess.Popen(command, env={**os.environ, "PYTHONPATH": source}) for _ in range(4)]
    assert [one.wait(60) for one in running] == [0, 0, 0, 0]
    assert journal_bytes(place) == journal_bytes(tmp_path / "alone")


def test_ten_thousand_rows(place: Path):
    """The longest table that is read: each row its entry, and a second import adds nothing."""
    rows = "".join(f"W{at // 8},on,12.{at % 100:02},,,,,,\n" for at in range(10_000))
    (place / "readings.csv").write_text(READINGS.splitlines()[0] + "\n" + rows, encoding="utf-8")
    assert import_folder(place).added["reading"] == 10_000
    assert import_folder(place).added == {}


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)
@given(name=st.sampled_from(("job.toml", "unit.toml", "readings.csv", "journal.jsonl")), content=contents)
def test_whatever_stands_in_the_files(place: Path, name: str, content: bytes):
    """Any bytes in any file: imported, or refused with the project's own error; the journal's bytes are never lost."""
    begin_again(place)
    (place / name).write_bytes(content)
    state = state_or_none(place)
    if name == "journal.jsonl":
        assert content.rstrip(b"\n") in b"".join(path.read_bytes() for path in sorted(place.glob("journal.jsonl*")))
    assert state is None or state == fold(load_journal(place).entries)


def begin_again(place: Path) -> None:
    """The folder as it was before anything was imported."""
    shutil.rmtree(place / "blobs", ignore_errors=True)
    for path in place.glob("journal.jsonl*"):
        path.unlink()
    for file, text in (("job.toml", JOB), ("unit.toml", UNIT), ("readings.csv", READINGS)):
        (place / file).write_text(text, encoding="utf-8")


def state_or_none(place: Path) -> JobState | None:
    """What the import came to, None where it was refused in the project's own words."""
    try:
        return import_folder(place).state
    except BackprobeError:
        return None


SCRIPT = "t,key\n2026-03-31T08:00:00Z,off\n2026-03-31T08:03:00Z,on\n2026-03-31T08:09:00Z,off\nlater,off\n"
REPORTS = "unit_id,t,event\nL1,2026-03-31T08:03:02Z,ignition_on\nL9,2026-03-31T08:04:00Z,\n"
LIGHTS = "light,pattern,after_s\nnetwork,one flash a second,41\n"


def with_proof(place: Path) -> Path:
    """The folder with what a proof rests on."""
    for name, text in (("key-script.csv", SCRIPT), ("reports.csv", REPORTS), ("lights.csv", LIGHTS)):
        (place / name).write_text(text, encoding="utf-8")
    return place


def test_what_a_proof_rests_on_is_imported(place: Path):
    """Turns and lights row by row, the reports as a file in the blobs; a second import adds nothing."""
    first = import_folder(with_proof(place))
    for kind, count in (("key_turn", 3), ("light_seen", 1), ("script_file", 1), ("lights_file", 1), ("reports", 1)):
        assert first.added[kind] == count, kind
    (reports,) = first.state.of_kind("reports")
    kept = place / "blobs" / str(reports.body["sha256"])
    assert kept.read_text(encoding="utf-8") == REPORTS
    assert [str(turn.key) for turn in first.state.script.turns] == ["off", "on", "off"]
    assert [each.place.line for each in first.state.script.skipped] == [5]
    assert import_folder(place).added == {}


def test_the_same_files_make_the_same_ids(place: Path, tmp_path: Path):
    """A copy of the folder, imported elsewhere: entry for entry the same."""
    shutil.copytree(with_proof(place), tmp_path / "elsewhere")
    ids = [[entry.id for entry in import_folder(at).journal.entries] for at in (place, tmp_path / "elsewhere")]
    assert ids[0] == ids[1]


@pytest.mark.parametrize(("before", "after"), [("08:03:00Z,on", "08:03:09Z,on"), ("08:03:00Z,on", "08:03:00Z,crank")])
def test_a_changed_turn_becomes_a_correction(place: Path, before: str, after: str):
    """Its moment or its key: one correction of that turn, the file again, and nothing withdrawn."""
    import_folder(with_proof(place))
    (place / "key-script.csv").write_text(SCRIPT.replace(before, after), encoding="utf-8")
    later = import_folder(place)
    assert later.added == {"correction": 2}
    assert [turn.written + "," + turn.key for turn in later.state.script.turns][1].endswith(after)


def test_a_turn_that_is_new_or_gone(place: Path):
    """One entry more; one withdrawn; the rows that only moved are noted as moved."""
    import_folder(with_proof(place))
    row = "2026-03-31T08:01:00Z,accessory\n"
    (place / "key-script.csv").write_text(
        SCRIPT.replace("2026-03-31T08:03", row + "2026-03-31T08:03"), encoding="utf-8"
    )
    assert import_folder(place).added == {"key_turn": 1, "correction": 1, "rows_moved": 1}
    (place / "key-script.csv").write_text(SCRIPT, encoding="utf-8")
    again = import_folder(place)
    assert again.added["withdrawn"] == 1
    assert [str(turn.key) for turn in again.state.script.turns] == ["off", "on", "off"]


def test_other_reports_are_a_correction(place: Path):
    """Fetched again the next day: the new file in place of the old one, both kept."""
    import_folder(with_proof(place))
    (place / "reports.csv").write_text(REPORTS + "L1,2026-03-31T08:09:20Z,ignition_off\n", encoding="utf-8")
    assert import_folder(place).added == {"correction": 1}


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("key-script.csv", "key\non\n", "a header line t,key"),
        ("key-script.csv", "t,key\nsoon,onn\n", "not one of 1 rows can be read"),
        ("reports.csv", "a,b\n1,2\n", "a header line with t"),
        ("reports.csv", "unit_id,t\nL1,soon\n", "not one of 1 rows can be read"),
        ("reports.csv", "", "this one is empty"),
        ("lights.csv", "a,b\n", "a header line: light,pattern,after_s"),
    ],
)
def test_a_file_of_the_proof_that_is_no_table(place: Path, name: str, text: str, words: str):
    """Refused in words, and the journal is what it was."""
    import_folder(place)
    before = (place / "journal.jsonl").read_bytes()
    (place / name).write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=words):
        import_folder(place)
    assert (place / "journal.jsonl").read_bytes() == before


def test_a_script_in_the_middle_of_the_work(place: Path):
    """No off yet, an export without a report: taken as they are."""
    (place / "key-script.csv").write_text("t,key\n2026-03-31T08:00:00Z,on\n", encoding="utf-8")
    (place / "reports.csv").write_text("unit_id,t\n", encoding="utf-8")
    found = import_folder(place)
    assert found.added["key_turn"] == 1
    assert found.prove.reports.reports == ()
