"""What is said of the job as a whole, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.job import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of the job as a whole are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("sign the job off") == "firme el trabajo"
    assert (
        say("this serial number is in another vehicle: job J-7")
        == "este número de serie está en otro vehículo: trabajo J-7"
    )
