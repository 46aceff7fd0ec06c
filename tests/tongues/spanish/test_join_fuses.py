"""What is said of fuses, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.join_fuses import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of fuses are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("the load on the fuse") == "la carga del fusible"
    assert (
        say("when the fuse of 3 A at 'power' opens: no blade fuse is made so")
        == "cuándo abre el fusible de 3 A en 'power': no se fabrica así ningún fusible de cuchilla"
    )
