"""The crank waveform: the wires against time, the limits on their lines, the key beneath.

Each channel is drawn as a firm line along the lowest value of every step, with a tint up to the highest: a limit
that must not be undercut is met by the line itself. Lines are told apart by their dashes and by the name at their
end; colour only follows.
"""

from __future__ import annotations

from backprobe.drawings.figures import figure_text, with_unit
from backprobe.drawings.key_strip import key_strip
from backprobe.drawings.lettering import letters, wrapped
from backprobe.drawings.limit_lines import limit_lines
from backprobe.drawings.palette import PAPER, SOFT_INK
from backprobe.drawings.plot import crank_shades, grid, line_names, pixel_runs, plot_for, trace_line
from backprobe.drawings.svg import picture, tag
from backprobe.drawings.trace import Trace, Waveform, pieces

WIDTH = 760.0
NARROWEST = 320.0

_NOTE_SIZE, _NOTE_LINE = 10.5, 13.0
_LEGEND = "Line: the lowest value of each step. Tint: up to the highest."


def waveform(content: Waveform, *, width: float = WIDTH) -> str:
    """The picture of `content` as one SVG string, `width` units wide (at least 320), as high as it needs.

    Any number of points may be given: they are thinned to the columns of the picture. A recording with nothing
    to draw gets a picture that says so.
    """
    width = max(width, NARROWEST)
    plot = plot_for(content, width)
    drawn = [pixel_runs(trace, plot) for trace in content.traces]
    strip, strip_bottom = key_strip(content.keys, plot)
    notes, height = _notes(content, strip_bottom, width=width)
    return picture(
        (width, height),
        (content.title, described_waveform(content)),
        tag("rect", {"width": width, "height": height, "fill": PAPER}),
        crank_shades(content.cranks, plot),
        grid(content, plot),
        "".join(trace_line(runs, index) for index, runs in enumerate(drawn)),
        limit_lines(content.limits, plot, drawn=drawn, cranks=content.cranks),
        line_names(content, plot),
        strip,
        notes,
    )


def _notes(content: Waveform, top: float, *, width: float) -> tuple[str, float]:
    """The words beneath the picture, and how high the whole is with them."""
    said = [content.note] if content.note else []
    if not any(pieces(trace) for trace in content.traces):
        said.insert(0, "Nothing was recorded that can be drawn.")
    elif any(low != high for trace in content.traces for _, low, high in trace.points):
        said.append(_LEGEND)
    lines = wrapped(" ".join(said), size=_NOTE_SIZE, room=width)
    written = (
        letters((0, top + (index + 1) * _NOTE_LINE), line, size=_NOTE_SIZE, fill=SOFT_INK)
        for index, line in enumerate(lines)
    )
    return "".join(written), top + len(lines) * _NOTE_LINE + 6


def described_waveform(content: Waveform) -> str:
    """The picture in words: what each channel's lowest and highest value is, the limits, the cranks, the key."""
    parts = [_described_trace(trace, content.unit) for trace in content.traces]
    parts += [f"Limit {line.label}" for line in content.limits]
    for crank in content.cranks:
        parts.append(f"{crank.label} from {_seconds(crank.start_s, content)} to {_seconds(crank.end_s, content)}")
    for span in content.keys:
        parts.append(f"key {span.label} from {_seconds(span.start_s, content)}")
    return ". ".join([*parts, content.note] if content.note else parts) + "."


def _described_trace(trace: Trace, unit: str) -> str:
    points = [point for run in pieces(trace) for point in run]
    if not points:
        return f"{trace.name}: nothing recorded"
    lowest, highest = min(low for _, low, _ in points), max(high for _, _, high in points)
    low_text, high_text = (with_unit(figure_text(value, 2), unit) for value in (lowest, highest))
    return f"{trace.name}: lowest {low_text}, highest {high_text}"


def _seconds(time_s: float, content: Waveform) -> str:
    return with_unit(figure_text(time_s, 2), content.time_unit)
