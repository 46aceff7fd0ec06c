"""What is said of what is expected of a file, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.files import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of what is expected of a file are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("a whole row of 5 cells; this one is torn") == "una fila completa de 5 celdas; esta está rota"
    assert say("the clock stands still at 2.50 s over 12 rows") == "el reloj está parado a los 2.50 s durante 12 filas"
