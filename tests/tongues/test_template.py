"""Templates: sentences with holes."""

from __future__ import annotations

from backprobe.tongues.template import Template


def test_the_first_or_the_last_place_is_taken() -> None:
    """Where what stands between two holes is met twice, the text can be cut in two ways."""
    template = Template("{a} at {b}", "{b}: {a}")
    assert template.matched("drop at tap at key on") == {"a": "drop", "b": "tap at key on"}
    assert template.matched("drop at tap at key on", late=True) == {"a": "drop at tap", "b": "key on"}


def test_a_figure_is_a_figure() -> None:
    """A hole with # holds 12.40, -1,024.5, 2e-05 or 95%, and no word."""
    template = Template("{#low} to {#high} V", "")
    for figure in ("12.40", "-1,024.5", "2e-05", "95%"):
        assert template.matched(f"{figure} to 3 V") == {"#low": figure, "#high": "3"}
    assert template.matched("off to 3 V") is None


def test_quotes_hold_no_quote() -> None:
    """A name between quotes ends at the next one."""
    template = Template("the joint of '{=lead}'", "")
    assert template.matched("the joint of 'power'") == {"=lead": "power"}
    assert template.matched("the joint of 'power', the joint of 'ground'") is None


def test_a_shorter_text_is_another_sentence() -> None:
    """What stands before and after a hole cannot be the same letters."""
    assert Template("abab{x}abab", "").matched("ababab") is None


def test_holes_may_change_their_order() -> None:
    """The other words take the holes in their own order, and may leave one out."""
    assert Template("{a} to {b}", "de {b} a {a}").filled({"a": "1", "b": "2"}) == "de 2 a 1"
