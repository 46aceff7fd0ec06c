"""Limits on their lines."""

from typing import Any

from backprobe.drawings.limit_lines import limit_lines
from backprobe.drawings.plot import pixel_runs, plot_for
from backprobe.drawings.svg import picture
from backprobe.drawings.trace import CrankSpan, LimitLine, Trace, Waveform

DIP = Trace("red", ((0.0, 12.0, 12.0), (1.0, 9.0, 9.2), (4.0, 9.0, 9.4), (5.0, 12.0, 12.0), (12.0, 14.0, 14.0)))


def drawn(content: Waveform) -> str:
    """The limits of a waveform in a picture of their own."""
    plot = plot_for(content, 720)
    runs = [pixel_runs(trace, plot) for trace in content.traces]
    return picture((720, 300), ("", ""), limit_lines(content.limits, plot, drawn=runs, cranks=content.cranks))


def test_the_words_stand_on_their_line(text_boxes: Any) -> None:
    """The baseline is a few units above the line, or the words hang just beneath it."""
    content = Waveform(traces=(DIP,), limits=(LimitLine(9.0, "9 V supply"),))
    box = text_boxes(drawn(content))[0]
    y = plot_for(content, 720).level.at(9.0)
    assert min(abs(box.bottom - y), abs(box.top - y)) < 4


def test_the_words_keep_clear_of_wire_and_crank(text_boxes: Any) -> None:
    """With the dip and the crank in the left half the words go to the right of them."""
    content = Waveform(traces=(DIP,), limits=(LimitLine(9.1, "9.1 V supply"),), cranks=(CrankSpan(0.5, 5.0),))
    box = text_boxes(drawn(content))[0]
    assert box.left > plot_for(content, 720).time.at(5.0)


def test_close_limits_have_words_apart(clashes: Any) -> None:
    """Limits a tenth of a volt apart do not print over one another."""
    limits = tuple(LimitLine(9 + n / 10, f"limit number {n}") for n in range(4))
    assert clashes(drawn(Waveform(traces=(DIP,), limits=limits))) == []


def test_endless_words_are_cut(outside: Any) -> None:
    """A label longer than the field ends in … and stays inside."""
    svg = drawn(Waveform(traces=(DIP,), limits=(LimitLine(9.0, "not below while cranking " * 20),)))
    assert outside(svg) == []
    assert "…" in svg
