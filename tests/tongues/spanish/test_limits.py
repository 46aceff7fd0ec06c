"""What is said of limits, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.limits import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of limits are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert (
        say("a constant supply while the starter turns")
        == "una alimentación permanente mientras gira el motor de arranque"
    )
    assert (
        say("49 CFR 393.60(e)(1)(i): antennas below the upper edge of the windscreen and outside the swept area")
        == "49 CFR 393.60(e)(1)(i): antenas bajo el borde superior del parabrisas y fuera del barrido"
    )
