"""Moments as servers and people write them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.instants import read_instant, written_value

EIGHT = 1774944000.0  # 31 March 2026, 08:00 UTC: 20,543 days × 86,400 s + 8 × 3,600 s


@pytest.mark.parametrize(
    ("text", "seconds", "zoned"),
    [
        ("2026-03-31T08:00:00Z", EIGHT, True),
        ("2026-03-31T08:00Z", EIGHT, True),
        ("2026-03-31 08:00:00", EIGHT, False),
        ("2026-03-31T10:00:00+02:00", EIGHT, True),
        ("2026-03-31T13:45:00.250+0545", EIGHT + 0.25, True),
        ("2026-03-31 08:00:00,5", EIGHT + 0.5, False),
        ("2026/03/31 08:00:00", EIGHT, False),
        ("31.03.2026 08:00:00", EIGHT, False),
        ("31.3.2026, 08:00", EIGHT, False),
        ("2026-03-31 08:00:00 UTC", EIGHT, True),
        ("1774944000", EIGHT, True),
        ("1774944000.5", EIGHT + 0.5, True),
        ("1774944000,5", EIGHT + 0.5, True),
        ("1774944000250", EIGHT + 0.25, True),
        ("1774944000250000", EIGHT + 0.25, True),
        ("1774944000250000000", EIGHT + 0.25, True),
        ("17.8", 17.8, True),
        ("1980-01-06T00:00:00Z", 315964800.0, True),
    ],
)
def test_moments_are_read(text, seconds, zoned):
    """Dates with and without zone, counts from 1970 in every unit; the expected value is the same moment."""
    assert read_instant(text) == (seconds, zoned)


def test_a_leap_second_is_the_next_second():
    """23:59:60 is a moment that clocks show."""
    assert read_instant("2016-12-31T23:59:60Z") == read_instant("2017-01-01T00:00:00Z")


@pytest.mark.parametrize(
    "text",
    [
        "",
        "soon",
        "nan",
        "-5",
        "1e9",
        "2026-02-30T08:00:00Z",
        "2026-03-31",
        "08:00:00",
        "03/31/2026 08:00",
        "1960-01-01T00:00:00Z",
        "2026-03-31T25:00:00Z",
        "9" * 25,
        "2026-03-31T08:00:61Z",
    ],
)
def test_what_is_no_moment_is_not_guessed_at(text):
    """Slashes with the day or month first mean different things in different countries."""
    assert read_instant(text) is None


@given(st.text(max_size=40) | st.from_regex(r"[0-9T:.,Z+ /-]{0,30}", fullmatch=True))
def test_any_text_is_read_or_refused(text):
    """Nothing is raised, and what is read lies after 1970."""
    found = read_instant(text)
    assert found is None or found[0] >= 0


def test_a_moment_is_answered_as_it_was_written():
    """Figures stay figures, dates stay as they are."""
    assert written_value("1774944000") == 1774944000
    assert written_value("17,8") == 17.8
    assert written_value("2026-03-31 08:00:00") == "2026-03-31 08:00:00"
