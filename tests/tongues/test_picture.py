"""The words of pictures in other words."""

from __future__ import annotations

from backprobe.drawings.lettering import letters, text_width, wrapped
from backprobe.drawings.roomy import line_of
from backprobe.drawings.svg import picture
from backprobe.tongues.picture import picture_said

WORDS = {"no value": "sin valor", "one & two three": "uno & dos tres, y algo más", "a": "a", "wide": "w" * 40}


def say(text: str) -> str:
    """A tongue of a few words."""
    return WORDS.get(text, text)


def test_letters_and_what_is_read_aloud_are_said() -> None:
    """Each line of letters, the title and the description are put into other words; the rest of the SVG stays."""
    svg = picture((100, 20), ("no value", "no value"), letters((0, 10), "no value", size=10, fill="#000", bold=True))
    said = picture_said(svg, say)
    assert said == svg.replace("no value", "sin valor")


def test_broken_lines_are_one_sentence() -> None:
    """Lines beneath one another are joined, said, and broken anew into as many lines."""
    lines = wrapped("one & two three", size=10, room=55)
    assert len(lines) == 2
    svg = "".join(letters((0, 12 * at), line, size=10, fill="#000") for at, line in enumerate(lines, 1))
    said = picture_said(svg, say)
    assert said.count("<text") == 2
    assert "uno &amp; dos" in said
    assert "two" not in said


def test_what_is_longer_is_set_smaller() -> None:
    """A line that would need much more room than before is set smaller, to no less than six tenths."""
    said = picture_said(letters((0, 10), "wide", size=10, fill="#000"), say)
    assert 'font-size="6"' in said
    assert text_width("w" * 40, 6) < text_width("w" * 40, 10)


def test_lines_that_are_known_each_stay_lines() -> None:
    """Two lines that can be said each by itself are no one sentence."""
    svg = letters((0, 10), "no value", size=10, fill="#000") + letters((0, 22), "no value", size=10, fill="#000")
    assert picture_said(svg, say) == svg.replace("no value", "sin valor")


def test_a_picture_nobody_says_stays() -> None:
    """Where nothing is put into other words the SVG is the same to the byte."""
    svg = picture((100, 20), ("Title", "Words"), letters((0, 10), "A4 & B", size=10.25, fill="#000"))
    assert picture_said(svg, lambda text: text) == svg


def test_a_line_that_tells_its_room_keeps_its_size_while_it_fits() -> None:
    """A line with room for 40 letters stays as large; what is longer than that is set smaller."""
    line = line_of((0, 10), "wide", room=text_width("w" * 40, 10), fill="#000", size=10)
    assert 'font-size="10"' in picture_said(line, say)
    tight = line_of((0, 10), "wide", room=text_width("w" * 32, 10), fill="#000", size=10)
    assert 'font-size="8"' in picture_said(tight, say)
