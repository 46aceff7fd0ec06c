"""What is said of photos."""

from __future__ import annotations

from backprobe.evidence.photo import NamedPhoto, Shows


def test_what_photos_show_are_the_words_of_job_sheets():
    """Job sheets, records and scripts rely on these."""
    assert [str(shows) for shows in Shows] == [
        *("serial_with_vin", "bare_joint", "ground", "dash_lamps", "mount", "before", "after", "other"),
    ]


def test_each_is_said_in_words_of_its_own():
    """No two read alike, and none shows its id."""
    said = {shows.words for shows in Shows}
    assert len(said) == len(Shows)
    assert not any("_" in words for words in said)


def test_a_photo_of_which_nothing_is_said():
    """It is kept and shown as 'other', without a note."""
    assert NamedPhoto(file="photos/a.jpg") == NamedPhoto(file="photos/a.jpg", shows=Shows.OTHER, note=None)
