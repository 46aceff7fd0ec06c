"""What the desk says in its own words, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.desk import SENTENCES
from backprobe.tongues.speaker import speaker


def test_the_desks_sentences_have_their_spanish() -> None:
    """What the desk says instead of a command is said in Spanish."""
    assert SENTENCES
    assert speaker("es")("say in the job's sheet where the vehicle stands") == (
        "diga en la hoja del trabajo dónde está el vehículo"
    )
