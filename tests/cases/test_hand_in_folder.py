"""A job folder given to the store: the same entries and files, once, as often as one likes."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from tests.samples.demo_jobs import DEMO

from backprobe.cases.desk_jobs import one_job
from backprobe.cases.hand_in_folder import hand_in_folder
from backprobe.cases.may import Caller, Role
from backprobe.cases.yard import Yard, open_yard
from backprobe.errors import JournalError, RefusedError
from backprobe.files.blobs import BLOBS
from backprobe.store import entries


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """The demo's folders, without journals."""
    shutil.copytree(DEMO, tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    return tmp_path / "demo"


@pytest.fixture
def yard(tmp_path: Path) -> Yard:
    """A store with nothing in it."""
    return open_yard(tmp_path / "data", name="Linden Yard")


@pytest.fixture
def lead(yard: Yard) -> Caller:
    """Whoever sits at the desk."""
    return Caller(role=Role.LEAD, organisation=yard.organisation)


def test_the_store_holds_what_the_folder_holds(yard: Yard, lead: Caller, demo: Path) -> None:
    """Every entry byte for byte, and the desk's answer has the folder's findings."""
    done = hand_in_folder(yard, lead, folder=demo / "truck-12")
    with yard.store.reading() as connection:
        kept = entries.of_job(connection, yard.organisation, job_id=done.job)
    written = (demo / "truck-12" / "journal.jsonl").read_bytes().splitlines()
    assert set(written) <= set(kept)
    assert done.new_entries == len(written)
    assert done.new_files == len(list((demo / "truck-12" / BLOBS).iterdir()))
    answer = one_job(yard, lead, job_id=done.job)
    assert answer["answer"] is not None
    assert answer["answer"]["verdict"] == "fails"
    yard.store.close()


def test_handing_in_again_adds_nothing(yard: Yard, lead: Caller, demo: Path) -> None:
    """The second time: no entry, no file."""
    hand_in_folder(yard, lead, folder=demo / "truck-07")
    again = hand_in_folder(yard, lead, folder=demo / "truck-07")
    assert (again.new_entries, again.new_files) == (0, 0)
    yard.store.close()


def test_what_was_added_to_the_folder_follows(yard: Yard, lead: Caller, demo: Path) -> None:
    """One reading more in the table: its entry and the table's new file, nothing else."""
    hand_in_folder(yard, lead, folder=demo / "truck-07")
    table = demo / "truck-07" / "readings.csv"
    lines = table.read_text(encoding="utf-8").splitlines()
    table.write_text("\n".join([*lines, lines[-1]]) + "\n", encoding="utf-8")
    again = hand_in_folder(yard, lead, folder=demo / "truck-07")
    assert again.new_files == 1
    assert again.new_entries >= 1
    yard.store.close()


def test_only_who_may_make_jobs_hands_folders_in(yard: Yard, demo: Path) -> None:
    """An installer's call is refused, and the folder stays without a journal."""
    with pytest.raises(RefusedError):
        hand_in_folder(yard, Caller(role=Role.PHONE, organisation=yard.organisation), folder=demo / "truck-07")
    assert not (demo / "truck-07" / "journal.jsonl").exists()
    yard.store.close()


def test_a_person_who_is_not_there_gets_no_job(yard: Yard, lead: Caller, demo: Path) -> None:
    """An unknown id: refused, and no entry is in the store."""
    with pytest.raises(RefusedError, match="no such person"):
        hand_in_folder(yard, lead, folder=demo / "truck-07", people_ids=["nobody"])
    with yard.store.reading() as connection:
        assert entries.newest(connection, yard.organisation) == 0
    yard.store.close()


def test_a_file_that_is_not_what_it_was_is_not_taken(yard: Yard, lead: Caller, demo: Path) -> None:
    """A blob of the folder with a changed byte: refused by its digest, nothing of it is kept."""
    hand_in_folder(yard, lead, folder=demo / "truck-07")
    fresh = open_yard(demo / "another", name="Another")
    blob = next(path for path in (demo / "truck-07" / BLOBS).iterdir() if path.stat().st_size)
    content = blob.read_bytes()
    blob.chmod(0o644)
    blob.write_bytes(bytes([content[0] ^ 1]) + content[1:])
    with pytest.raises(JournalError, match=r"digest|bytes"):
        hand_in_folder(fresh, Caller(role=Role.LEAD, organisation=fresh.organisation), folder=demo / "truck-07")
    assert fresh.blobs.path(blob.name) is None
    yard.store.close()
    fresh.store.close()
