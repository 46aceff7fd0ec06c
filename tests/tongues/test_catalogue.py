"""Catalogues as text."""

from __future__ import annotations

from backprobe.tongues.catalogue import pairs_in


def test_pairs_stand_in_lines() -> None:
    r"""A sentence, then `= ` and its other words; remarks and empty lines are none, and \n is a new line."""
    text = "# of keys\nkey off\n= llave quitada\n\na\\nb\n= c\\nd\n"
    assert list(pairs_in(text)) == [("key off", "llave quitada"), ("a\nb", "c\nd")]
