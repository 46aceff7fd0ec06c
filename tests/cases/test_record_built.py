"""What a record says of the work itself."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.as_built import JOINTS, UNIT
from tests.samples.jobs import NAMED, evidence
from tests.samples.photos import as_file, four_corners

from backprobe.cases.photos import JobPhoto, Photos
from backprobe.cases.record_built import (
    MOST_PHOTOS,
    joined_rows,
    more_photos,
    not_covered,
    owed_rows,
    shown_photos,
    told_driver,
)
from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.evidence.photo import NamedPhoto, Shows
from backprobe.files.photos import PaperPhoto
from backprobe.findings import Stage
from backprobe.job.judge import judge_job
from backprobe.paper.content import JoinedRow

PICTURE = PaperPhoto(as_file(four_corners()), 120, 80)
NAMED_PHOTO = NamedPhoto(file="photos/a.jpg", shows=Shows.GROUND, note="bolt of the pedal bracket")
PHOTO = JobPhoto(named=NAMED_PHOTO, picture=PICTURE, sha256="5834a2835a2b21a8" + "0" * 48)


def test_a_photo_says_what_it_shows_and_which_file_it_is():
    """The digest ties it to the journal."""
    (shown,) = shown_photos(Photos((PHOTO,)))
    assert (shown.shows, shown.note) == ("The ground point", "bolt of the pedal bracket")
    assert shown.source == "photos/a.jpg, sha256 5834a2835a2b21a8…"
    assert shown.alt == "The ground point: bolt of the pedal bracket"
    assert (shown.jpeg, shown.width_px, shown.height_px) == (PICTURE.jpeg, 120, 80)


def test_a_photo_of_which_nothing_is_said():
    """It has a name all the same, and words for those who cannot see it."""
    (shown,) = shown_photos(Photos((replace(PHOTO, named=NamedPhoto(file="photos/b.jpg"), sha256=""),)))
    assert (shown.shows, shown.note, shown.source) == ("Photo", None, "photos/b.jpg, not in the journal")
    assert shown.alt == "Photo, without a note: photos/b.jpg"


def test_a_note_that_fills_a_page_is_cut_short():
    """On paper it ends in …; whoever listens hears all of it."""
    (shown,) = shown_photos(Photos((replace(PHOTO, named=replace(NAMED_PHOTO, note="a" * 5000)),)))
    assert shown.note == "a" * 239 + "…"
    assert shown.alt.count("a") >= 5000


def test_no_more_than_two_pages_of_photos():
    """The rest is counted in a note."""
    assert len(shown_photos(Photos((PHOTO,) * 20))) == MOST_PHOTOS == 12
    assert more_photos(Photos((PHOTO,) * 20)) == ["8 more photos are in the job folder and in the journal's keeping"]
    assert more_photos(Photos((PHOTO,) * 12)) == []


def test_each_joint_says_what_was_done_and_how_it_is_undone():
    """Joined, grounded, not used; an undo that nobody wrote down stays None."""
    assert joined_rows(judge_job(evidence(named=NAMED + JOINTS, unit=UNIT))) == (
        JoinedRow(
            lead="power",
            joined="to Red, soldered sleeve, behind connector X12, behind a fuse of 3 A",
            undo="cut the sleeve out, close Red with a butt connector",
        ),
        JoinedRow(
            lead="ground",
            joined="to the frame, ring terminal, bolt of the pedal bracket",
            undo="take the ring off, tighten the bolt again",
        ),
        JoinedRow(lead="ignition", joined="to Violet, fuse tap, behind a fuse of 1 A", undo=None),
        JoinedRow(
            lead="door", joined="not used: capped 60 mm from the unit", undo="nothing of the vehicle was touched"
        ),
    )


def test_a_joint_that_says_nothing_says_so():
    """Where it went was not told; that nothing was touched is not claimed of it."""
    (row,) = joined_rows(judge_job(evidence(named=NAMED + '[[joint]]\nlead = "door"\n', unit=UNIT)))
    assert row == JoinedRow(lead="door", joined="not told where it went", undo=None)


def test_what_the_driver_was_told_belongs_to_a_hand_over():
    """None before; an empty tuple where it was handed over without a word."""
    assert told_driver(None) is None
    assert told_driver(HandOver(end=End.PROVEN)) == ()


def test_what_is_not_covered_is_named_by_stage():
    """A job with joints lacks mounting and the test; one with all stages lacks nothing."""
    judged = judge_job(evidence(named=NAMED + JOINTS, unit=UNIT))
    joint = next(each for each in judged.findings if each.stage is Stage.JOIN)
    without = [each for each in judged.findings if not each.id.startswith("mount_")]
    assert not_covered(without) == ["Not in this record: mounting."]
    mounted = replace(joint, id="mount_place")
    assert not_covered([*without, mounted]) == []
    unproven = [each for each in without if each.stage is not Stage.PROVE]
    assert not_covered([*unproven, mounted]) == ["Not in this record: a test of the unit."]
    assert not_covered([replace(joint, stage=stage) for stage in Stage]) == []


def test_what_is_owed_comes_in_words():
    """A named lack with what it means, anything else as it was written; nothing where nobody has ended the job."""
    night = Missing(what="parked night", owed_by="the yard office", until="2026-04-07")
    rows = owed_rows(HandOver(end=End.PROVISIONAL, missing=(night, Missing(what="a new fuse"))))
    assert rows[0].what == "parked night: the reports do not cover one night with the vehicle parked"
    assert (rows[0].owed_by, rows[0].until) == ("the yard office", "2026-04-07")
    assert (rows[1].what, rows[1].owed_by, rows[1].until) == ("a new fuse", None, None)
    assert owed_rows(None) == ()
