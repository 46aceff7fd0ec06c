"""What is said of pictures, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.drawings import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of pictures are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("no value") == "sin valor"
    assert say("Wiring of Lantern 2") == "Cableado de Lantern 2"
