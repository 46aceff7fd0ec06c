"""What is said of a VIN, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.walkround_vin import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of a VIN are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert (
        say("position 9 is 5, as the other 16 characters ask for (49 CFR 565.15)")
        == "la posición 9 es 5, como piden los otros 16 caracteres (49 CFR 565.15)"
    )
    assert say("it has 16 characters, a VIN has 17") == "tiene 16 caracteres; un VIN tiene 17"
