"""The marks of a wiring drawing stand where they are asked to."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree

import pytest

from backprobe.drawings.palette import INK, PAPER
from backprobe.drawings.wiring_marks import (
    cap,
    cap_upright,
    frame_upright,
    fuse,
    fuse_upright,
    junction,
    to_frame,
    untold,
)


def numbers(text: str) -> list[float]:
    """All numbers of a path."""
    return [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", text)]


def test_a_joint_is_a_dot():
    """The dot's centre is the place asked for."""
    node = ElementTree.fromstring(junction((100.0, 40.0)))
    assert (node.get("cx"), node.get("cy"), node.get("fill")) == ("100", "40", INK)


def test_a_fuse_is_centred_and_the_line_runs_through_it():
    """The rectangle reaches 15 to each side; the line goes through its middle."""
    frame, line = ElementTree.fromstring(f"<g>{fuse((100.0, 40.0))}</g>")
    assert float(frame.get("x", "0")) + float(frame.get("width", "0")) / 2 == 100.0
    assert frame.get("fill") == PAPER
    assert numbers(line.get("d", "")) == [100 - 15, 40, 100 + 15, 40]


@pytest.mark.parametrize("mark", [cap, to_frame])
def test_an_end_lies_at_the_end_of_the_line(mark):
    """A cap and a frame symbol touch the point where the line ends, and are as high above it as below."""
    points = numbers(ElementTree.fromstring(mark((100.0, 40.0))).get("d", ""))
    xs, ys = points[::2], points[1::2]
    assert 100.0 in xs
    assert abs((min(ys) + max(ys)) / 2 - 40.0) <= 2.0


def test_a_question_mark_stands_before_the_end_of_the_line():
    """It ends left of the line, so that they never touch."""
    node = ElementTree.fromstring(untold((100.0, 40.0)))
    assert (node.text, node.get("text-anchor")) == ("?", "end")
    assert float(node.get("x", "0")) < 100.0


def test_upright_marks_stand_where_they_are_asked_to():
    """In a line from above downwards: the fuse 15 up and down, the frame above its line, the cap over its end."""
    _, line = ElementTree.fromstring(f"<g>{fuse_upright((20.0, 40.0))}</g>")
    assert numbers(line.get("d", "")) == [20, 40 - 15, 20, 40 + 15]
    frame = numbers(ElementTree.fromstring(frame_upright((20.0, 40.0))).get("d", ""))
    assert max(frame[1::2]) == 40.0
    cap_ys = numbers(ElementTree.fromstring(cap_upright((20.0, 40.0))).get("d", ""))[1::2]
    assert (min(cap_ys), max(cap_ys)) == (40.0, 52.0)
