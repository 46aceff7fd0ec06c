"""What is said of what only comes together as the engine runs, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.together import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of what only comes together as the engine runs are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("X12/4 RD: live at key on") == "X12/4 RD: con tensión con el contacto puesto"
    assert (
        say("roundabout of Linden Road and Wharf Lane, 20 m north-west")
        == "rotonda de Linden Road y Wharf Lane, 20 m al noroeste"
    )
