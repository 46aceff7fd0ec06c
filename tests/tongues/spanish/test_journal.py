"""What is said of the journal, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.journal import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the journal are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("one key is given twice") == "una clave se da dos veces"
    assert (
        say("missing: entry number 1 of 'phone-a', before entry 7 (reading, number 2 of 'phone-a')")
        == "falta: la anotación número 1 de 'phone-a', antes de anotación 7 (reading, número 2 de 'phone-a')"
    )
