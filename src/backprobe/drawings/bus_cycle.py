"""The key cycle from inside: the supply and the engine speed against one time, the key's positions beneath.

Two fields, one above the other, for two units; the lower one carries the key strip and the words.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from backprobe.drawings.axes import axis_for
from backprobe.drawings.key_strip import key_strip
from backprobe.drawings.lettering import letters, wrapped
from backprobe.drawings.limit_lines import limit_lines
from backprobe.drawings.palette import PAPER, SOFT_INK
from backprobe.drawings.plot import Plot, crank_shades, grid, line_names, pixel_runs, plot_for, trace_line
from backprobe.drawings.svg import picture, tag
from backprobe.drawings.trace import Waveform
from backprobe.drawings.waveform import NARROWEST, WIDTH, described_waveform

_GAP = 22.0
_NOTE_SIZE, _NOTE_LINE = 10.5, 13.0
NOTHING = "Neither a voltage nor an engine speed was reported."


@dataclass(frozen=True, slots=True, kw_only=True)
class BusCycle:
    """What is drawn: `volts` above, `speed` beneath it, both over the `length_s` of the log; None where nothing
    was reported.
    """

    volts: Waveform | None
    speed: Waveform | None
    length_s: float
    title: str
    note: str = ""


def bus_cycle(content: BusCycle, *, width: float = WIDTH) -> str:
    """The picture as one SVG string, `width` units wide (at least 320), as high as it needs."""
    width = max(width, NARROWEST)
    parts: list[str] = []
    bottom = 0.0
    fields = [field for field in (content.volts, content.speed) if field is not None]
    common = _common(fields, content.length_s, width=width)
    for field in fields:
        drawn, height = _field(field, plot_for(field, width, beside=common))
        parts.append(tag("g", {"transform": f"translate(0 {bottom:g})"}, drawn))
        bottom += height + _GAP
    note = content.note if parts else NOTHING
    lines = wrapped(note, size=_NOTE_SIZE, room=width) if note else []
    parts += [
        letters((0, bottom + i * _NOTE_LINE), line, size=_NOTE_SIZE, fill=SOFT_INK) for i, line in enumerate(lines)
    ]
    height = bottom + len(lines) * _NOTE_LINE + 6
    paper = tag("rect", {"width": width, "height": height, "fill": PAPER})
    return picture((width, height), (content.title, described_cycle(content)), paper, *parts)


def _common(fields: Sequence[Waveform], length_s: float, *, width: float) -> Plot | None:
    """The ends and the times that all fields share: the narrowest room that any leaves, and the whole log."""
    plots = [plot_for(field, width) for field in fields]
    if not plots:
        return None
    left, right = max(plot.left for plot in plots), min(plot.right for plot in plots)
    time = axis_for([0.0, length_s], low_px=left, high_px=right, pad=0.0)
    return replace(plots[0], left=left, right=right, time=time)


def _field(content: Waveform, plot: Plot) -> tuple[str, float]:
    """One field with what belongs to it, and how high it is."""
    drawn = [pixel_runs(trace, plot) for trace in content.traces]
    strip, bottom = key_strip(content.keys, plot)
    parts = (
        crank_shades(content.cranks, plot),
        grid(content, plot),
        "".join(trace_line(runs, index) for index, runs in enumerate(drawn)),
        limit_lines(content.limits, plot, drawn=drawn, cranks=content.cranks),
        line_names(content, plot),
        strip,
    )
    return "".join(parts), bottom


def described_cycle(content: BusCycle) -> str:
    """The picture in words."""
    fields = [described_waveform(field) for field in (content.volts, content.speed) if field is not None]
    return " ".join(fields) if fields else NOTHING
