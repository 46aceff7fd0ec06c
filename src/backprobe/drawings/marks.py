"""The marks of a margin bar: four shapes for four verdicts, the hatch of the allowed side, arrows.

The shapes are one block in four states, told apart without colour: a whole block holds; a block with only a
sliver filled is thin; a block broken apart fails; a block of which only the corners are there is open.
"""

from __future__ import annotations

from backprobe.drawings.palette import INK, RULE, TINT
from backprobe.drawings.svg import Attributes, path, tag
from backprobe.findings import Verdict

HATCH_STEP = 6.0
_STROKE = 2.0


def verdict_shape(verdict: Verdict, at: tuple[float, float], *, size: float) -> str:
    """The shape of a verdict in a square of `size` with its upper left corner `at` (x, y)."""
    return _SHAPES[verdict](at, size)


def _whole(at: tuple[float, float], size: float) -> str:
    return _filled(at, size, share=1.0)


def _filled(at: tuple[float, float], size: float, *, share: float) -> str:
    """The left `share` of the block, filled."""
    return tag("rect", {"x": at[0], "y": at[1], "width": size * share, "height": size, "fill": INK})


def _sliver(at: tuple[float, float], size: float) -> str:
    frame: Attributes = {"x": at[0] + _STROKE / 2, "y": at[1] + _STROKE / 2}
    frame |= {"width": size - _STROKE, "height": size - _STROKE}
    return tag("rect", {**frame, "fill": "none", "stroke": INK, "stroke-width": _STROKE}) + _filled(at, size, share=0.3)


def _broken(at: tuple[float, float], size: float) -> str:
    x, y = at
    slip, gap = size * 0.14, size * 0.09
    left = [(0.0, slip), (size * 0.66 - gap, slip), (size * 0.34 - gap, size), (0.0, size)]
    right = [(size * 0.66 + gap, 0.0), (size, 0.0), (size, size - slip), (size * 0.34 + gap, size - slip)]
    halves = (path([(x + dx, y + dy) for dx, dy in half], closed=True) for half in (left, right))
    return tag("path", {"d": "".join(halves), "fill": INK})


def _corners(at: tuple[float, float], size: float) -> str:
    x, y = at
    near, far, arm = _STROKE / 2, size - _STROKE / 2, size * 0.32
    elbows = [
        [(near, arm), (near, near), (arm, near)],
        [(size - arm, near), (far, near), (far, arm)],
        [(far, size - arm), (far, far), (size - arm, far)],
        [(arm, far), (near, far), (near, size - arm)],
    ]
    data = "".join(path([(x + dx, y + dy) for dx, dy in elbow]) for elbow in elbows)
    return tag("path", {"d": data, "fill": "none", "stroke": INK, "stroke-width": _STROKE})


_SHAPES = {Verdict.HOLDS: _whole, Verdict.THIN: _sliver, Verdict.FAILS: _broken, Verdict.OPEN: _corners}


def hatched(box: tuple[float, float, float, float], *, fill: str = TINT, stroke: str = RULE) -> str:
    """A box (x, y, width, height) with a tint and slanting lines, which a grey print keeps.

    The lines are reckoned, not a pattern: a pattern needs an id, and ids collide where pictures share a page.
    """
    x, y, width, height = box
    if width <= 0 or height <= 0:
        return ""
    ground = tag("rect", {"x": x, "y": y, "width": width, "height": height, "fill": fill})
    data, start = [], x - height + HATCH_STEP / 2
    while start < x + width:
        first, last = max(start, x), min(start + height, x + width)
        if last > first:
            data.append(path([(first, y + height - (first - start)), (last, y + height - (last - start))]))
        start += HATCH_STEP
    lines = tag("path", {"d": "".join(data), "stroke": stroke, "stroke-width": 0.8, "fill": "none"})
    return ground + lines


def arrow_head(tip: tuple[float, float], direction: int, *, size: float, fill: str) -> str:
    """A filled triangle that points left (-1) or right (+1), its tip at (x, y)."""
    x, y = tip
    back = x - direction * size
    corners = [(x, y), (back, y - size * 0.7), (back, y + size * 0.7)]
    return tag("path", {"d": path(corners, closed=True), "fill": fill})
