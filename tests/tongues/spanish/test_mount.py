"""What is said of the sky, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.mount import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the sky are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("nominal constellation") == "constelación nominal"
    assert say("The sky from 'on the overhead shelf'") == "El cielo desde 'en la repisa superior'"
