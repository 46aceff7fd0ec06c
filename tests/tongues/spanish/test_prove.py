"""What is said of the proof, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.prove import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the proof are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("The unit through the crank") == "La unidad durante el arranque"
    assert (
        say("from where the vehicle stands, by 34 fixes; joint accuracy of both 10.5 m")
        == "desde donde está el vehículo, con 34 posiciones; exactitud conjunta de ambos 10.5 m"
    )
