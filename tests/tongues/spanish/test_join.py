"""What is said of inputs, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.join import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of inputs are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("What hangs on 'door'") == "Qué cuelga de 'door'"
