"""What is said of the vehicle's bus, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.bus import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the vehicle's bus are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("VIN on the bus") == "VIN en el bus"
    assert say("crank at 12.4 s; the log breaks off in it") == "arranque a los 12.4 s; el registro se corta en él"
