"""Who says a sentence: in which language, and in whose voice.

The engine writes its sentences in English, as a terminal says them. A page that asks for another language, or for the
voice of the phone or the desk, where there are no files and no commands, gets them through `speaker`. A catalogue is
imported when it is first asked for, so that it costs nothing where nobody asks.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import TypeAlias

from backprobe.tongues.catalogue import pairs_in
from backprobe.tongues.tongue import Tongue

Say: TypeAlias = Callable[[str], str]

SPANISH = "es"
PHONE, DESK = "phone", "desk"
LANGUAGES = ("en", SPANISH)
GROUPS = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")  # 184,220 km would be read as 184.22 km where a comma marks decimals
NO_BREAK = "\u00a0"


def plain(sentence: str) -> str:
    """The sentence as the engine writes it."""
    return sentence


def speaker(language: str | None = None, *, voice: str | None = None) -> Say:
    """What says the engine's sentences in that language and voice; a language that nobody speaks here is English.

    >>> speaker("es")("not measured yet"), speaker("fi")("not measured yet")
    ('aún sin medir', 'not measured yet')
    """
    english = _page(voice).say if voice in (PHONE, DESK) else plain
    if language != SPANISH:
        return english
    spanish = _spanish()
    return lambda sentence: GROUPS.sub(NO_BREAK, spanish.say(english(sentence)))


@cache
def _page(voice: str | None) -> Tongue:
    from backprobe.tongues import desk, phone

    said = dict(pairs_in(phone.SENTENCES))
    return Tongue(({**said, **dict(pairs_in(desk.SENTENCES))} if voice == DESK else said).items(), joints={})


@cache
def _spanish() -> Tongue:
    from backprobe.tongues.spanish.book import JOINTS, pairs

    return Tongue(pairs(), joints=JOINTS)
