"""The sentences that the engine can say, as its sources hold them."""

from __future__ import annotations

from builders.sentences import plain, templates

SOURCE = '''
"""A module."""
A = "not measured yet"
B = {"id_of": "an_id", "pattern": r"\\bx\\b y"}

def f(wire, volts):
    """Words of a docstring."""
    return f"{wire}: {'it is dead' if volts else 'live'} at {volts:.2f} V"
'''


def test_texts_and_their_parts_are_found() -> None:
    """Texts, f-strings and texts within their holes are found with their lines; docstrings, ids, patterns are not."""
    assert list(templates(SOURCE)) == [
        (3, "not measured yet"),
        (8, "{=wire}: {live} at {#volts} V"),
        (8, "it is dead"),
    ]


def test_templates_are_compared_without_names_and_edges() -> None:
    """Two templates are one where only names of holes, edges and holes that touch differ."""
    assert plain("; {more:g} less {a}{b}: ") == plain("{x} less {y}") == "{} less {}"
