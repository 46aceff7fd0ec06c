"""The words for key positions and captures are data that users and scripts rely on."""

from __future__ import annotations

from backprobe.evidence.keys import Capture, Key


def test_the_words_stay_as_they_are() -> None:
    """Eight key positions in the order of the work, four ways to capture; each is its own word."""
    assert [str(key) for key in Key] == ["off", "accessory", "on", "crank", "running", "after", "isolated", "charging"]
    assert [str(capture) for capture in Capture] == ["display", "min", "max", "logged"]


def test_a_word_is_read_back() -> None:
    """The word as written in a table gives the position."""
    assert Key("crank") is Key.CRANK
    assert Capture("logged") is Capture.LOGGED
