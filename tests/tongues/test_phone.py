"""What the phone says instead of files, settings and commands."""

from __future__ import annotations

from backprobe.tongues.speaker import speaker


def test_the_phone_speaks_of_its_pages() -> None:
    """A command of the terminal is a page on the phone; what follows a semicolon keeps its place."""
    say = speaker(voice="phone")
    assert say("turn the key through the script again (backprobe prove --plan)") == "take the planned key turns again"
    asked = "ask somebody who may allow a crank, and write who under [authority] (crank_by)"
    assert say(f"{asked}; before the crank: parking brake on") == (
        "ask somebody who may allow a crank, and write who at the walkround; before the crank: parking brake on"
    )


def test_other_sentences_stay_to_the_letter() -> None:
    """What names no file is said on the phone as everywhere."""
    say = speaker(voice="phone")
    for sentence in ("measure red and black at key on, with a MIN hold", "X12/4 RD: live at key on", "cut, capped"):
        assert say(sentence) == sentence
