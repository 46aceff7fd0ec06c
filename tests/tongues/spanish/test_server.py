"""What the server says, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.server import SENTENCES
from backprobe.tongues.speaker import speaker


def test_the_servers_sentences_have_their_spanish() -> None:
    """A refusal with a figure in it, and one with another sentence in it."""
    say = speaker("es")
    assert SENTENCES
    assert say("at most 5 MB are taken as a roster") == "se aceptan como mucho 5 MB como lista"
    assert say("too many tries; again in 30 s") == "demasiados intentos; otra vez dentro de 30 s"
