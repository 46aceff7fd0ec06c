"""What the phone says in its own words, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.phone import SENTENCES
from backprobe.tongues.speaker import speaker


def test_the_phones_sentences_have_their_spanish() -> None:
    """What the phone says instead of a command is said in Spanish."""
    assert SENTENCES
    assert speaker("es")("take the planned key turns again") == "haga otra vez los giros de llave previstos"
