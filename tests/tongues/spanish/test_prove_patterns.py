"""What is said of patterns in reports, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.prove_patterns import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of patterns in reports are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert (
        say("The unit reports on when the key is off, and off when it is on.")
        == "La unidad informa activo con la llave quitada, e inactivo con ella puesta."
    )
    assert (
        say("12 reports of a clock that was never set cannot be placed in time.")
        == "12 informes de un reloj que nunca se ajustó no se pueden situar en el tiempo."
    )
