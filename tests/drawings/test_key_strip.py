"""The strip of key positions."""

from typing import Any

import pytest

from backprobe.drawings.key_strip import key_strip
from backprobe.drawings.plot import Plot, plot_for
from backprobe.drawings.svg import picture
from backprobe.drawings.trace import KeySpan, Trace, Waveform


@pytest.fixture(scope="module")
def plot() -> Plot:
    """A field of 12 s."""
    return plot_for(Waveform(traces=(Trace("red", ((0.0, 12.0, 12.0), (12.0, 12.0, 12.0))),)), 720)


def test_positions_have_their_words_inside_where_they_fit(plot: Plot) -> None:
    """Two long positions need no row beneath the strip: it is 17 units high."""
    strip, bottom = key_strip((KeySpan(0, 6, "on"), KeySpan(6, 12, "running")), plot)
    assert bottom == plot.bottom + 24 + 17
    assert strip.count("<line") == 0


def test_a_short_position_has_its_word_beneath(plot: Plot) -> None:
    """A tenth of a second cannot hold its word: a lead brings it down into one more row of 14."""
    strip, bottom = key_strip((KeySpan(0, 6, "on"), KeySpan(6, 6.1, "crank")), plot)
    assert bottom == plot.bottom + 24 + 17 + 14
    assert strip.count("<line") == 1


def test_words_beneath_keep_apart(plot: Plot, clashes: Any, outside: Any) -> None:
    """Five positions within half a second, and one at the very end, are all legible."""
    words = ("off", "accessory", "on", "crank", "running")
    keys = [KeySpan(5 + n / 10, 5.1 + n / 10, word) for n, word in enumerate(words)]
    strip, bottom = key_strip((*keys, KeySpan(11.9, 12, "accessory")), plot)
    svg = picture((720, bottom + 6), ("", ""), strip)
    assert clashes(svg) == []
    assert outside(svg) == []


def test_no_key_no_strip(plot: Plot) -> None:
    """A recording without key positions has no strip."""
    assert key_strip((), plot) == ("", plot.bottom + 24)
