"""Errors say what was found, where, and what was expected."""

from __future__ import annotations

import pytest

from backprobe import errors
from backprobe.errors import BackprobeError, InputError, JournalError, Place, Skipped, UnreadableError, shortened


def test_a_place_names_file_line_and_text() -> None:
    """As much of the place as is known is said."""
    assert str(Place("readings.csv")) == "readings.csv"
    assert str(Place("readings.csv", 3)) == "readings.csv, line 3"
    assert str(Place("readings.csv", 3, "red,onn,12.4")) == "readings.csv, line 3: red,onn,12.4"


def test_an_unreadable_place_says_what_was_expected() -> None:
    """The message holds the place on its first line and the expectation on its second."""
    error = UnreadableError(Place("readings.csv", 3, "red,onn,12.4"), "a key position")
    assert error.message == "readings.csv, line 3: red,onn,12.4\nexpected: a key position"
    assert str(error) == error.message
    assert error.place.line == 3


def test_a_skipped_line_says_what_was_expected() -> None:
    """The same two things, on one line."""
    assert str(Skipped(Place("a.csv", 2, "x"), "volts")) == "a.csv, line 2: x (volts)"


def test_long_and_torn_text_is_shown_on_one_short_line() -> None:
    """Control characters become spaces; a text of 81 characters is cut to 79 and an ellipsis: 80 in all."""
    assert shortened("red\x00\n12.4\n") == "red  12.4"
    assert shortened("x" * 80) == "x" * 80
    assert shortened("x" * 81) == "x" * 79 + "…"


def test_every_kind_is_caught_as_one_of_ours() -> None:
    """Whoever catches BackprobeError catches all; codes tell them apart."""
    kinds = [kind for kind in vars(errors).values() if isinstance(kind, type) and issubclass(kind, BackprobeError)]
    assert len({kind.code for kind in kinds}) == len(kinds)
    assert not issubclass(JournalError, InputError)
    with pytest.raises(BackprobeError):
        raise UnreadableError(Place("a"), "b")
