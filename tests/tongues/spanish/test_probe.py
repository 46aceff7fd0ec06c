"""What is said of wires, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.probe import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of wires are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert (
        say("measure X12/4 RD at key on, with a MIN hold; out of gear, parking brake on, nobody near the engine")
        == "mida X12/4 RD con el contacto puesto, con una retención MIN; sin marcha metida, freno de mano puesto, nadie cerca del motor"
    )
    assert say("X12/9 VT: what it feeds") == "X12/9 VT: qué alimenta"
