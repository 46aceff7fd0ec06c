"""In which language the server says what it says: the first that a page accepts (RFC 9110, 12.5.4)."""

from __future__ import annotations

from collections.abc import Mapping

from backprobe.tongues.speaker import SPANISH, Say, plain, speaker


def say_of(headers: Mapping[str, str]) -> Say:
    """What says the server's sentences to whoever sent these headers; English as it is written, where not Spanish.

    >>> say_of({"accept-language": "es-MX, en;q=0.5"})("there is no such job")
    'no hay tal trabajo'
    """
    first = headers.get("accept-language", "").partition(",")[0].partition(";")[0]
    return speaker(SPANISH) if first.strip().lower().partition("-")[0] == SPANISH else plain
