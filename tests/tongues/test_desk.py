"""What the desk says in its own words."""

from __future__ import annotations

from backprobe.tongues.speaker import speaker


def test_the_desk_is_not_told_to_ask_the_desk() -> None:
    """Where the phone sends somebody to the desk, the desk says what is to be done there."""
    sentence = "write where the vehicle stands into the job sheet: [place] lat, lon and accuracy_m"
    assert speaker(voice="phone")(sentence) == "ask the desk to write down where the vehicle stands"
    assert speaker(voice="desk")(sentence) == "say in the job's sheet where the vehicle stands"
    assert speaker("es", voice="desk")(sentence) == "diga en la hoja del trabajo dónde está el vehículo"


def test_what_pages_have_in_common_is_said_alike() -> None:
    """A walkround is done on a page, not in a file."""
    sentence = "walk round the vehicle before anything is touched, and write walkround.toml"
    assert speaker(voice="desk")(sentence) == speaker(voice="phone")(sentence) != sentence
