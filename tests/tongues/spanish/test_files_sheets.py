"""What is said of what is expected of a sheet, in Spanish."""

from __future__ import annotations

from backprobe.tongues.spanish.files_sheets import SENTENCES
from backprobe.tongues.speaker import speaker


def test_sentences_keep_their_names_and_figures() -> None:
    """Sentences of what is expected of a sheet are said in Spanish; names and figures stay as they are."""
    say = speaker("es")
    assert SENTENCES
    assert say("each wire once; 'red' stands twice") == "cada cable una vez; 'red' está dos veces"
    assert say("a number from 1 to 5, without quotation marks and unit") == "un número de 1 a 5, sin comillas ni unidad"
