"""Two skies side by side, as predicted and as heard, with their figures beneath; or one sky with its figures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.drawings.lettering import letters, wrapped
from backprobe.drawings.palette import INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.sky import SkyPlot
from backprobe.drawings.sky_plot import NARROWEST, described_sky, sky_plot
from backprobe.drawings.svg import Attributes, picture, tag

WIDTH = 2 * NARROWEST + 20.0
_SIZE, _LINE = 12.0, 19.0
_HEAD = 24.0
_FIGURES = (0.0, 180.0, 260.0)  # columns beside, or beneath, one sky


@dataclass(frozen=True, slots=True)
class PairRow:
    """One figure: what it is, as predicted, and as heard ('' where it was not)."""

    what: str
    predicted: str
    heard: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SkyPair:
    """What is drawn: the sky as predicted, as heard (None where nothing was), and the figures of both."""

    title: str
    predicted: SkyPlot
    heard: SkyPlot | None = None
    rows: Sequence[PairRow] = ()


def sky_pair(content: SkyPair, *, narrow: bool = False) -> str:
    """The picture as one SVG string; the figures of one sky alone stand beside it, or beneath if `narrow`."""
    left = sky_plot(content.predicted, width=NARROWEST)
    right = None if content.heard is None else sky_plot(content.heard, width=NARROWEST)
    below = _HEAD + max(_height(left), 0.0 if right is None else _height(right))
    beside = NARROWEST + 20.0
    parts = [_named("as predicted", 0.0), _placed(left, 0.0)]
    wide = NARROWEST if narrow and right is None else WIDTH
    if right is None and narrow:
        rows = _rows(content, (0.0, below), columns=_FIGURES, end=wide)
        height = below + (len(content.rows) + 1.5) * _LINE
    elif right is None:
        rows, height = _rows(content, (beside, _HEAD + 60.0), columns=_FIGURES, end=wide), below
    else:
        parts += [_named("as heard", beside), _placed(right, beside)]
        rows = _rows(content, (0.0, below + 4.0), columns=(0.0, beside, beside + 160.0), end=wide)
        height = below + 4.0 + (len(content.rows) + 1) * _LINE
    ground = tag("rect", {"width": wide, "height": height, "fill": PAPER})
    return picture((wide, height), (content.title, described_pair(content)), ground, *parts, *rows)


def _placed(svg: str, x: float) -> str:
    """A whole picture as a part of another one."""
    return svg.replace("<svg ", f'<svg x="{x:g}" y="{_HEAD:g}" ', 1)


def _height(svg: str) -> float:
    return float(svg.split('height="', 1)[1].split('"', 1)[0])


def _named(words: str, x: float) -> str:
    return letters((x + NARROWEST / 2, 16.0), words, size=14.0, fill=INK, anchor="middle", bold=True)


def _rows(content: SkyPair, at: tuple[float, float], *, columns: tuple[float, ...], end: float) -> list[str]:
    """The figures: a row each, under a head where there are two of them, ruled as far as `end`."""
    x, y = at
    parts = []
    both = any(row.heard for row in content.rows)
    for words, column in (("predicted", columns[1]), ("heard" if both else "", columns[2])):
        parts.append(letters((x + column, y + _SIZE), words, size=_SIZE, fill=SOFT_INK))
    for number, row in enumerate(content.rows, 1):
        base = y + number * _LINE + _SIZE
        rule: Attributes = {"x1": x, "x2": end, "y1": base - _SIZE - 3, "y2": base - _SIZE - 3, "stroke": RULE}
        parts.append(tag("line", rule))
        cells = (row.what, row.predicted, (row.heard or "–") if both else "")
        for cell, column in zip(cells, columns, strict=True):
            bold = column > 0
            line = wrapped(cell, size=_SIZE, room=WIDTH)[0] if cell else ""
            parts.append(letters((x + column, base), line, size=_SIZE, fill=INK, bold=bold))
    return parts


def described_pair(content: SkyPair) -> str:
    """The picture in words."""
    figures = "; ".join(
        f"{row.what}: predicted {row.predicted}" + (f", heard {row.heard}" if row.heard else "") for row in content.rows
    )
    heard = "" if content.heard is None else f" As heard: {described_sky(content.heard)}"
    return f"As predicted: {described_sky(content.predicted)}{heard} {figures}.".strip()
