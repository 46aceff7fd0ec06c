"""Sentences put into other words."""

from __future__ import annotations

from backprobe.tongues.tongue import Tongue

PAIRS = [
    ("not measured yet", "aún sin medir"),
    ("{wire}: {what}", "{wire}: {what}"),
    ("{=wire} fell to {#volts} V", "{wire} cayó a {volts} V"),
    ("{what} again", "{what} otra vez"),
    ("Look at the tap.", "Mire la toma."),
    ("look at {what}", "mire {what}"),
    ("the fuse", "el fusible"),
    ("supply", "alimentación"),
    ("asked by {who}", "lo pidió {who}"),
]
TONGUE = Tongue(PAIRS, joints={" and ": " y "})


def test_holes_are_said_in_their_turn() -> None:
    """What fills a hole is put into other words, however deep."""
    assert TONGUE.say("look at the fuse again") == "mire el fusible otra vez"


def test_names_stay_and_figures_too() -> None:
    """A wire that is called as a word of the catalogue keeps its name where the hole is for a name."""
    assert TONGUE.say("supply fell to 1,024.50 V") == "supply cayó a 1,024.50 V"


def test_parts_are_said_one_by_one() -> None:
    """Sentences joined by semicolons, and words joined by commas and 'and', are said each by itself."""
    assert TONGUE.say("the fuse and supply; not measured yet") == "el fusible y alimentación; aún sin medir"


def test_no_hole_swallows_a_sentence() -> None:
    """A hole at the end does not reach over the next semicolon."""
    assert TONGUE.say("asked by Ines; the fuse") == "lo pidió Ines; el fusible"


def test_edges_and_dress_are_kept() -> None:
    """Spaces and commas at the edges, a capital, a full stop and brackets stay as they were."""
    assert TONGUE.say(", the fuse ") == ", el fusible "
    assert TONGUE.say("The fuse.") == "El fusible."
    assert TONGUE.say("look at the tap") == "mire la toma"
    assert TONGUE.say("not measured yet (supply)") == "aún sin medir (alimentación)"


def test_unknown_words_stay_and_are_counted() -> None:
    """What is in no catalogue stays as it is; how many of its words are unknown is told."""
    said = TONGUE.said("quite another matter; the fuse")
    assert (said.text, said.unknown) == ("quite another matter; el fusible", 3)


def test_the_same_text_is_worked_out_once() -> None:
    """A text that was said before is said from memory."""
    assert TONGUE.said("look at the fuse again") is TONGUE.said("look at the fuse again")


def test_words_that_somebody_wrote_keep_their_and() -> None:
    """'and' is put into other words between what is known, not between words of somebody's own."""
    assert TONGUE.say("bared and greased") == "bared and greased"
    assert TONGUE.say("the fuse and the fuse") == "el fusible y el fusible"
