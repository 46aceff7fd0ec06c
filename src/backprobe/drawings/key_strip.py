"""The key's positions as a strip beneath a waveform."""

from __future__ import annotations

from backprobe.drawings.axes import flag_rows
from backprobe.drawings.lettering import letters, text_width
from backprobe.drawings.palette import INK, PAPER, RULE, SOFT_INK, TINT
from backprobe.drawings.plot import TICK_SIZE, Plot, within
from backprobe.drawings.svg import Attributes, tag
from backprobe.drawings.trace import KeySpan

_BELOW_TICKS = 24.0
_HEIGHT = 17.0
_LINE = 14.0
_INSET = 4.0
_FLAG_GAP = 3.0


def key_strip(keys: tuple[KeySpan, ...], plot: Plot) -> tuple[str, float]:
    """The strip and the height at which it ends; without key positions nothing, and where it would begin.

    A position that is too short for its word has the word beneath the strip.
    """
    top = plot.bottom + _BELOW_TICKS
    if not keys:
        return "", top
    parts = [letters((plot.left - 7, top + 12), "key", size=TICK_SIZE, fill=SOFT_INK, anchor="end")]
    short = []
    for index, span in enumerate(keys):
        start, end = within(plot.time, span.start_s, end=span.end_s)
        box: Attributes = {"x": start, "y": top, "width": max(end - start, 0.5), "height": _HEIGHT}
        parts.append(tag("rect", {**box, "fill": TINT if index % 2 else PAPER, "stroke": RULE, "stroke-width": 0.8}))
        if text_width(span.label, TICK_SIZE) + 2 * _INSET <= end - start:
            place = ((start + end) / 2, top + 12)
            parts.append(letters(place, span.label, size=TICK_SIZE, fill=INK, anchor="middle"))
        else:
            short.append((span.label, (start + end) / 2))
    below, rows = _labels_below(short, top + _HEIGHT, width=plot.width)
    return "".join(parts) + below, top + _HEIGHT + rows * _LINE


def _labels_below(short: list[tuple[str, float]], top: float, *, width: float) -> tuple[str, int]:
    """The words that had no room in the strip, flying from a short lead like a flag, and the rows they take."""
    sizes = [text_width(text, TICK_SIZE) for text, _ in short]
    rows = flag_rows([(x, size + _FLAG_GAP) for (_, x), size in zip(short, sizes, strict=True)])
    parts = []
    for (text, x), size, row in zip(short, sizes, rows, strict=True):
        baseline = top + (row + 1) * _LINE
        lead: Attributes = {"x1": x, "x2": x, "y1": top, "y2": baseline, "stroke": RULE, "stroke-width": 0.8}
        place = (min(x + _FLAG_GAP, width - size), baseline)
        parts.append(tag("line", lead) + letters(place, text, size=TICK_SIZE, fill=INK))
    return "".join(parts), 1 + max(rows, default=-1)
