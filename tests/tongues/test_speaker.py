"""Who says a sentence."""

from __future__ import annotations

import subprocess
import sys

from backprobe.tongues.speaker import plain, speaker


def test_english_is_what_the_engine_writes() -> None:
    """Without a language, in English and in a language nobody speaks, a sentence stays as it is."""
    assert speaker() is plain
    assert speaker("en") is plain
    assert speaker("fi")("not measured yet") == "not measured yet"


def test_spanish_with_the_phones_voice() -> None:
    """The phone's Spanish speaks of pages, as its English does."""
    say = speaker("es", voice="phone")
    assert say("walk round the vehicle before anything is touched, and write walkround.toml") == (
        "haga la inspección antes de tocar nada"
    )


def test_thousands_are_parted_by_a_space() -> None:
    """184,220 km could be read as 184.22 km in Spanish, where many write a comma for decimals."""
    assert speaker("es")("184,220 km") == "184\u00a0220 km"


def test_catalogues_are_read_when_asked_for() -> None:
    """An engine that nobody asks for Spanish imports no catalogue."""
    code = "import sys, backprobe.job.journal_door\nprint([m for m in sys.modules if 'spanish' in m or 'tongues.phone' in m])"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert told.strip() == "[]"
