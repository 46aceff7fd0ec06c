"""What is said of joints, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.join_joints import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of joints are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("make the joint again") == "rehaga la unión"
    assert (
        say("joined to X12/4 RD, the wire that was proven for it")
        == "unido a X12/4 RD, el cable que se comprobó para ello"
    )
