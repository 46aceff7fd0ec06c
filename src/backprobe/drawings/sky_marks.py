"""The marks of a sky plot: a glass that is filled as far as a satellite is heard, hatch and shade of parts of the sky.

A round glass was used for the position, a square one was heard and not used, a cross was not heard at all, a dashed
diamond was predicted. All are told apart by shape; how strong a signal is shows in how full the glass is.
"""

from __future__ import annotations

import math

from backprobe.drawings.palette import ACCENT, INK, PAPER, SOFT_INK
from backprobe.drawings.sky import SkySatellite
from backprobe.drawings.svg import Attributes, path, tag

GLASS = 7.5  # half the width of a mark
EMPTY_DBHZ, FULL_DBHZ = 15.0, 50.0  # what an empty and a full glass stand for
MOST_SHADE, FULL_SHADE_DB = 0.42, 30.0

_HATCH_STEP = 7.0
_CROSS = 4.5
_ARC_POINTS = 12

Points = list[tuple[float, float]]


def filled_share(cn0_dBHz: float) -> float:
    """How full the glass is, 0 to 1.

    >>> filled_share(15.0), filled_share(32.5), filled_share(60.0)
    (0.0, 0.5, 1.0)
    """
    return min(max((cn0_dBHz - EMPTY_DBHZ) / (FULL_DBHZ - EMPTY_DBHZ), 0.0), 1.0)


def satellite_mark(satellite: SkySatellite, at: tuple[float, float]) -> str:
    """The mark of a satellite that was measured, its middle `at` (x, y)."""
    if satellite.cn0_dBHz is None:
        return _cross(at)
    share = filled_share(satellite.cn0_dBHz)
    return _round_glass(at, share) if satellite.used else _square_glass(at, share)


def predicted_mark(at: tuple[float, float]) -> str:
    """The open mark of a satellite that was predicted."""
    (x, y), half = at, GLASS + 3.5
    corners = [(x, y - half), (x + half, y), (x, y + half), (x - half, y)]
    style: Attributes = {"fill": "none", "stroke": INK, "stroke-width": 1.2, "stroke-dasharray": "3 2"}
    return tag("path", {"d": path(corners, closed=True), **style})


def _cross(at: tuple[float, float]) -> str:
    x, y = at
    ground = tag("circle", {"cx": x, "cy": y, "r": GLASS, "fill": PAPER, "fill-opacity": 0.85})
    arms = path([(x - _CROSS, y - _CROSS), (x + _CROSS, y + _CROSS)])
    arms += path([(x - _CROSS, y + _CROSS), (x + _CROSS, y - _CROSS)])
    return ground + tag("path", {"d": arms, "stroke": INK, "stroke-width": 2, "fill": "none"})


def _round_glass(at: tuple[float, float], share: float) -> str:
    x, y = at
    ground = tag("circle", {"cx": x, "cy": y, "r": GLASS, "fill": PAPER})
    rim = tag("circle", {"cx": x, "cy": y, "r": GLASS, "fill": "none", "stroke": INK, "stroke-width": 1.6})
    return ground + _liquid(_bowl(at, share)) + rim


def _bowl(at: tuple[float, float], share: float) -> Points:
    """The part of the disc below its filling line."""
    (x, y), level = at, GLASS * (1.0 - 2.0 * share)
    half = math.acos(min(max(level / GLASS, -1.0), 1.0))  # from straight down to the filling line
    turns = [-half + 2.0 * half * step / _ARC_POINTS for step in range(_ARC_POINTS + 1)]
    return [(round(x + GLASS * math.sin(turn), 6), round(y + GLASS * math.cos(turn), 6)) for turn in turns]


def _square_glass(at: tuple[float, float], share: float) -> str:
    (x, y), half = at, GLASS - 1.0
    box: Attributes = {"x": x - half, "y": y - half, "width": 2 * half, "height": 2 * half}
    top = y + half - 2 * half * share
    liquid = [(x - half, top), (x + half, top), (x + half, y + half), (x - half, y + half)]
    rim = tag("rect", {**box, "fill": "none", "stroke": INK, "stroke-width": 1.6})
    return tag("rect", {**box, "fill": PAPER}) + _liquid(liquid if share > 0 else []) + rim


def _liquid(points: Points) -> str:
    return tag("path", {"d": path(points, closed=True), "fill": ACCENT}) if points else ""


def shaded(outline: Points, attenuation_dB: float) -> str:
    """A piece of the sky, the darker the more is lost before it."""
    return tag("path", {"d": path(outline, closed=True), "fill": SOFT_INK, "fill-opacity": shade(attenuation_dB)})


def shade(attenuation_dB: float) -> str:
    """The opacity of a loss, as it is written.

    >>> shade(0.0), shade(30.0)
    ('0.06', '0.42')
    """
    share = min(max(attenuation_dB / FULL_SHADE_DB, 0.0), 1.0)
    return f"{0.06 + (MOST_SHADE - 0.06) * share:.2f}"


def hatched_outline(outline: Points) -> str:
    """A closed outline with slanting lines inside and a firm edge; the lines are reckoned, as in `marks.hatched`."""
    lines = "".join(path(line) for line in hatch_lines(outline))
    hatch = tag("path", {"d": lines, "stroke": SOFT_INK, "stroke-width": 1, "fill": "none"})
    edge: Attributes = {"d": path(outline, closed=True), "stroke": INK, "stroke-width": 2, "fill": "none"}
    return hatch + tag("path", edge)


def hatch_lines(outline: Points) -> list[Points]:
    """The pieces of lines x + y = constant that lie within a closed outline.

    >>> hatch_lines([(0.0, 0.0), (7.0, 0.0), (7.0, 7.0), (0.0, 7.0)])
    [[(0.0, 7.0), (7.0, 0.0)]]
    """
    sums = [x + y for x, y in outline]
    found: list[Points] = []
    for index in range(math.ceil(min(sums) / _HATCH_STEP), math.floor(max(sums) / _HATCH_STEP) + 1):
        cuts = _cuts(outline, index * _HATCH_STEP)
        found += [[a, b] for a, b in zip(cuts[::2], cuts[1::2], strict=False) if a != b]
    return found


def _cuts(outline: Points, level: float) -> Points:
    """Where the line x + y = `level` crosses the outline, by x."""
    cuts = []
    for (ax, ay), (bx, by) in zip(outline, [*outline[1:], outline[0]], strict=True):
        a, b = ax + ay - level, bx + by - level
        if (a < 0.0) != (b < 0.0):
            part = a / (a - b)
            cuts.append((round(ax + (bx - ax) * part, 6), round(ay + (by - ay) * part, 6)))
    return sorted(cuts)
