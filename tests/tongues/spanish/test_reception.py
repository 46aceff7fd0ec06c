"""What is said of a receiver's log, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.reception import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of a receiver's log are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("Position kept") == "Posición mantenida"
    assert say("not one position in 600 moments, 10 min") == "ni una posición en 600 momentos, 10 min"
