"""What is said of recordings, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.recording import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of recordings are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("no crank was found in the recording") == "no se encontró ningún arranque en la grabación"
    assert (
        say("sampled too slowly to prove a dip (one value every 0.50 s)")
        == "muestreo demasiado lento para comprobar una caída (un valor cada 0.50 s)"
    )
