"""The field of a waveform."""

import itertools

import pytest

from backprobe.drawings.plot import crank_shades, line_names, pixel_runs, plot_for, trace_line, within
from backprobe.drawings.svg import path
from backprobe.drawings.trace import CrankSpan, LimitLine, Trace, Waveform

FLAT = Trace("red", ((0.0, 12.0, 12.0), (10.0, 12.0, 12.0)))


def test_the_axes_take_in_wires_and_limits() -> None:
    """Wires at 12 V and a limit at 9 V both lie in the field, with some of their span to spare."""
    plot = plot_for(Waveform(traces=(FLAT,), limits=(LimitLine(9.0, "9 V"),)), 720)
    assert (plot.level.low, plot.level.high) == pytest.approx((8.52, 12.48))  # 3 V × 0.16
    assert plot.top < plot.level.at(12.0) < plot.level.at(9.0) < plot.bottom
    assert (plot.time.low, plot.time.high) == (0.0, 10.0)


def test_many_names_make_the_field_higher() -> None:
    """Forty channels of one line each need 40 × 13.5 units."""
    plot = plot_for(Waveform(traces=tuple(Trace(f"wire {n}", FLAT.points) for n in range(40))), 720)
    assert plot.bottom - plot.top == pytest.approx(40 * 13.5)


def test_a_long_name_is_wrapped_and_then_cut() -> None:
    """A name of 40 letters stands whole on several lines; one of 400 ends in …"""
    long, endless = "grey 1.5 behind fuse F12, left kick pane", "grey behind fuse " * 24
    plot = plot_for(Waveform(traces=(Trace(long, FLAT.points), Trace(endless, FLAT.points))), 720)
    assert " ".join(plot.names[0]) == long
    assert plot.names[1][-1].endswith("…")
    assert len(plot.names[1]) == 3


def test_what_lies_before_the_recording_is_cut_off() -> None:
    """A key position that began before the recording starts at its edge."""
    plot = plot_for(Waveform(traces=(FLAT,)), 720)
    assert within(plot.time, -5.0, end=99.0) == pytest.approx((plot.left, plot.right))


def test_a_crank_is_shaded_and_named() -> None:
    """Each crank has a hatched band and its word above the field."""
    content = Waveform(traces=(FLAT,), cranks=(CrankSpan(4.0, 5.0, "crank 1"), CrankSpan(4.2, 5.2, "crank 2")))
    plot = plot_for(content, 720)
    shades = crank_shades(content.cranks, plot)
    assert shades.count("<text") == 2
    assert [row for _, row in plot.crank_labels] == [0, 1]


def test_a_single_point_is_still_seen() -> None:
    """One row is drawn as a dash two units wide."""
    lone = Trace("red", ((5.0, 12.0, 12.0),))
    plot = plot_for(Waveform(traces=(lone,)), 720)
    runs = pixel_runs(lone, plot)
    x, y, _ = runs[0][0]
    assert f'd="{path([(x - 1, y), (x + 1, y)])}"' in trace_line(runs, 0)
    assert trace_line([], 0) == ""


def test_names_stand_in_the_order_of_their_lines() -> None:
    """Three lines that end at one height have their names spread, not stacked."""
    content = Waveform(traces=tuple(Trace(name, FLAT.points) for name in ("a", "b", "c")))
    plot = plot_for(content, 720)
    heights = [float(part.split('"')[0]) for part in line_names(content, plot).split(' y="')[1:]]
    assert all(abs(one - other) > 13 for one, other in itertools.pairwise(heights))
