"""Lettering for a narrow page leaves room for other words."""

from __future__ import annotations

import re

from backprobe.drawings.lettering import text_width
from backprobe.drawings.roomy import TEXT_SIZE, line_of, paragraph


def test_lines_leave_a_fifth_of_the_room() -> None:
    """No line is wider than four fifths of the room; no word is lost; the next baseline is below the last line."""
    text = "crimped butt connector, 200 mm behind the connector, bared and greased"
    svg, after = paragraph((10.0, 20.0), text, room=200.0, fill="#000")
    lines = re.findall(">([^<]+)<", svg)
    assert " ".join(lines) == text
    assert len(lines) > 1
    assert all(text_width(line, TEXT_SIZE) <= 0.8 * 200.0 for line in lines)
    assert after == 20.0 + len(lines) * TEXT_SIZE * 1.25


def test_bold_lines_fit_too() -> None:
    """Bold letters are wider; they are broken earlier."""
    svg, _ = paragraph(
        (0.0, 20.0), "fails: the ground under load is more than allowed", room=150.0, fill="#000", bold=True
    )
    assert all(text_width(line, TEXT_SIZE, bold=True) <= 0.8 * 150.0 for line in re.findall(">([^<]+)<", svg))


def test_no_text_is_no_line() -> None:
    """Nothing to say takes no room."""
    assert paragraph((0.0, 20.0), "", room=150.0, fill="#000") == ("", 20.0)


def test_a_line_tells_its_room() -> None:
    """Whoever puts other words there knows how long they may be."""
    assert 'data-room="90"' in line_of((0.0, 20.0), "fuse 3 A", room=90.0, fill="#000")
