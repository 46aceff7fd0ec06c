"""The photos of a job folder."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.samples.jobs import demo_job
from tests.samples.journals import uuid7
from tests.samples.photos import as_file, bomb, four_corners

from backprobe.cases.import_folder import import_folder
from backprobe.cases.photos import Photos, photos_of
from backprobe.evidence.photo import NamedPhoto, Shows
from backprobe.files.blobs import BLOBS
from backprobe.files.journal_file import held_journal
from backprobe.job.entry import digest
from backprobe.job.journal import Draft, continued

GROUND = as_file(four_corners())


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """The demo job whose ignition is wrong, with an empty folder for photos."""
    folder = demo_job(tmp_path, "truck-12")
    (folder / "photos").mkdir()
    return folder


def looked_at(folder: Path, *, said: str = "", **files: bytes) -> Photos:
    """What photos come to, given as name and content, and what the sheet says of them."""
    for name, content in files.items():
        (folder / "photos" / f"{name}.jpg").write_bytes(content)
    with (folder / "job.toml").open("a", encoding="utf-8") as sheet:
        sheet.write(said)
    return photos_of(import_folder(folder))


def test_a_job_without_photos(tmp_path: Path):
    """Nothing is shown and nothing is missed."""
    assert photos_of(import_folder(demo_job(tmp_path, "truck-12"))) == Photos()


def test_photos_stand_in_the_order_of_the_sheet(place: Path):
    """Those that it names first; the others follow by name, as photos of something else."""
    said = '[[photo]]\nfile = "photos/c.jpg"\nshows = "mount"\n[[photo]]\nfile = "photos/a.jpg"\nnote = "left"\n'
    found = looked_at(place, said=said, a=GROUND, b=GROUND, c=GROUND)
    assert [photo.named for photo in found.shown] == [
        NamedPhoto(file="photos/c.jpg", shows=Shows.MOUNT),
        NamedPhoto(file="photos/a.jpg", note="left"),
        NamedPhoto(file="photos/b.jpg"),
    ]
    assert {photo.sha256 for photo in found.shown} == {digest(GROUND)}
    assert found.notes == ()


def test_what_cannot_be_shown_is_told_and_kept(place: Path):
    """A bomb, a text, half a photo: the others are shown, and each file lies in the journal's keeping."""
    odd = {"bomb": bomb(), "text": b"time_s,battery\n", "half": GROUND[: len(GROUND) // 2]}
    found = looked_at(place, good=GROUND, **odd)
    assert [photo.named.file for photo in found.shown] == ["photos/good.jpg"]
    assert [note.split(";")[0] for note in found.notes] == [
        "photos/bomb.jpg cannot be shown",
        "photos/half.jpg cannot be shown",
        "photos/text.jpg cannot be shown",
    ]
    for content in odd.values():
        assert (place / BLOBS / digest(content)).read_bytes() == content


def test_a_photo_that_is_named_and_not_there(place: Path):
    """A slip in the sheet is said; the photo itself is shown under its own name."""
    found = looked_at(place, said='[[photo]]\nfile = "photos/grund.jpg"\nshows = "ground"\n', ground=GROUND)
    assert found.notes == ("job.toml names photos/grund.jpg: there is no such photo",)
    assert [photo.named.shows for photo in found.shown] == [Shows.OTHER]


def test_an_erased_photo_is_not_shown(place: Path):
    """It lies in the folder still; what was erased from the journal does not come back by way of the record."""
    job = import_folder(place).job
    looked_at(place, ground=GROUND)
    (place / BLOBS / digest(GROUND)).unlink()
    with held_journal(place) as held:
        draft = Draft(id=uuid7(1), kind="erased", body={"blobs": [digest(GROUND)]})
        held.append(continued(held.journal, [draft], job=job, device="desk", engine="0.1.0"))
    found = looked_at(place)
    assert found.shown == ()
    assert found.notes == ("photos/ground.jpg was erased from the journal on purpose: it is not shown",)
    assert not (place / BLOBS / digest(GROUND)).exists()


def test_a_name_of_another_encoding(place: Path):
    """A name that is not UTF-8, as old cards bring, is taken in and shown like any other."""
    (place / "photos" / "gr\udcfcn.jpg").write_bytes(GROUND)
    found = looked_at(place)
    assert len(found.shown) == 1
    assert found.shown[0].sha256 == digest(GROUND)
