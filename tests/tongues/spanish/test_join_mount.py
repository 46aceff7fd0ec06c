"""What is said of the unit's seat, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.join_mount import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the unit's seat are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("how the leads run") == "por dónde van los cables"
    assert say("How the leads run") == "Por dónde van los cables"
    assert say("not fixed to something solid") == "sin fijar a algo firme"
