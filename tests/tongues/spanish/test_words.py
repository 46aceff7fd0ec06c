"""What is said of keys, roles and sides, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.words import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of keys, roles and sides are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("Supply wire: X12/4 RD") == "Cable de alimentación: X12/4 RD"
    assert say("not capped") == "sin capuchón"
    assert say("misreading") == "lectura"
