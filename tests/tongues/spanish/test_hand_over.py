"""What is said of the end of a job, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.hand_over import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the end of a job are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("everything holds") == "todo cumple"
    assert say("How the job ends: provisional") == "Cómo termina el trabajo: provisional"
