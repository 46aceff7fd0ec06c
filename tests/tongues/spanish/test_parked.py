"""What is said of a parked vehicle, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.parked import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of a parked vehicle are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("Days parked") == "Días parado"
    assert say("18.5 mA, read 75 min after locking: asleep") == "18.5 mA, leído 75 min después de cerrar: dormido"
