"""The marks of a wiring drawing: a joint, a fuse, the vehicle's frame, a capped end, an end that nobody told of."""

from __future__ import annotations

from backprobe.drawings.lettering import letters
from backprobe.drawings.palette import INK, PAPER
from backprobe.drawings.svg import path, tag

_STROKE = 1.6


def junction(at: tuple[float, float]) -> str:
    """A joint: the dot at which two wires meet."""
    return tag("circle", {"cx": at[0], "cy": at[1], "r": 4.5, "fill": INK})


def fuse(at: tuple[float, float]) -> str:
    """A fuse: a rectangle with the line through it, its middle `at`."""
    x, y = at
    frame = tag(
        "rect",
        {"x": x - 15, "y": y - 5.5, "width": 30, "height": 11, "fill": PAPER, "stroke": INK, "stroke-width": _STROKE},
    )
    return frame + tag("path", {"d": path([(x - 15, y), (x + 15, y)]), "stroke": INK, "stroke-width": _STROKE})


def to_frame(at: tuple[float, float]) -> str:
    """The vehicle's frame: a bar across the end of the line with three slanted strokes."""
    x, y = at
    lines = [path([(x, y - 10), (x, y + 10)])]
    lines += [path([(x, y + dy), (x - 7, y + dy + 6)]) for dy in (-9, -1, 7)]
    return tag("path", {"d": "".join(lines), "stroke": INK, "stroke-width": _STROKE, "fill": "none"})


def cap(at: tuple[float, float]) -> str:
    """An end that is cut back and insulated: a cap over the end of the line."""
    x, y = at
    points = [(x + 12, y - 5), (x, y - 5), (x, y + 5), (x + 12, y + 5)]
    return tag("path", {"d": path(points), "stroke": INK, "stroke-width": _STROKE + 0.6, "fill": "none"})


def untold(at: tuple[float, float]) -> str:
    """An end of which nobody has told where it went: a question mark before the end of the line."""
    x, y = at
    return letters((x - 4, y + 4.5), "?", size=14.0, fill=INK, anchor="end", bold=True)


def fuse_upright(at: tuple[float, float]) -> str:
    """A fuse in a line from above downwards, its middle `at`."""
    x, y = at
    frame = tag(
        "rect",
        {"x": x - 5.5, "y": y - 15, "width": 11, "height": 30, "fill": PAPER, "stroke": INK, "stroke-width": _STROKE},
    )
    return frame + tag("path", {"d": path([(x, y - 15), (x, y + 15)]), "stroke": INK, "stroke-width": _STROKE})


def frame_upright(at: tuple[float, float]) -> str:
    """The vehicle's frame above a line that goes down from `at`."""
    x, y = at
    lines = [path([(x - 10, y), (x + 10, y)])]
    lines += [path([(x + dx, y), (x + dx + 6, y - 7)]) for dx in (-9, -1, 7)]
    return tag("path", {"d": "".join(lines), "stroke": INK, "stroke-width": _STROKE, "fill": "none"})


def cap_upright(at: tuple[float, float]) -> str:
    """A capped end of a line that goes down from `at`."""
    x, y = at
    points = [(x - 5, y + 12), (x - 5, y), (x + 5, y), (x + 5, y + 12)]
    return tag("path", {"d": path(points), "stroke": INK, "stroke-width": _STROKE + 0.6, "fill": "none"})
