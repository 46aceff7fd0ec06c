"""What is said of the walkround, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.walkround import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the walkround are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("who allowed the work is not said") == "no se dice quién permitió el trabajo"
    assert say("cranking was refused by the yard") == "the yard no permitió arrancar"
