r"""NMEA 0183 sentences in the lines of a log: found anywhere in a line, and believed by their checksum alone.

A sentence is `$`, an address of five letters (talker and kind; a maker's own begin with P), fields behind commas, `*`
and the exclusive or of all characters between `$` and `*` as two hexadecimal digits. Field meanings:
hhoegl.informatik.hs-augsburg.de/opentheses/da-31 (NMEA.htm).

Loggers write stamps before a sentence and comments round it, and lose characters; so each `$` begins a new try.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import reduce
from operator import xor

_ADDRESS = re.compile(r"(?:P[A-Z0-9]{3,}|[A-OQ-Z][A-Z]{4})(?=[,*])")
_CHECK = re.compile(r"\*([0-9A-Fa-f]{2})")


class Fault(StrEnum):
    """Why a piece of a log was passed over."""

    BAD_CHECKSUM = "bad_checksum"
    CUT_OFF = "cut_off"
    NOT_A_SENTENCE = "not_a_sentence"
    BAD_FIELD = "bad_field"
    DOUBLED = "doubled"


EXPECTED = {
    Fault.BAD_CHECKSUM: "what the checksum after * says: characters are lost or changed, or two sentences run together",
    Fault.CUT_OFF: "a sentence to its end, * and two digits",
    Fault.NOT_A_SENTENCE: "an NMEA 0183 sentence, $GPGGA,…*47",
    Fault.BAD_FIELD: "figures that can be: degrees, minutes below 60, a time of day",
    Fault.DOUBLED: "each sentence once",
}


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence whose checksum is right: 'GP', 'GGA' and the fields behind the address."""

    talker: str
    kind: str
    fields: list[str]


def checksum(text: str) -> int:
    """The exclusive or of all characters.

    >>> f"{checksum('GPGSA,M,3,14,16,26,27,29,31,,,,,,,2.7,1.5,2.3'):02X}"
    '34'
    """
    return reduce(xor, text.encode("latin-1", "replace"), 0)


def sentences_in(line: str) -> list[Sentence | Fault]:
    """The sentences of a line in their order, and the faults between them; nothing for a comment or an empty line.

    >>> [item.kind for item in sentences_in("#$GPVTG,147.44,T,164.31,M,0.26,N,0.49,K,D*2C")]
    ['VTG']
    >>> sentences_in("$GPVTG,147.44,T,164.31,M,0.26,N")
    [<Fault.CUT_OFF: 'cut_off'>]
    """
    first = line.find("$")
    if first < 0:
        return [Fault.NOT_A_SENTENCE] if line.strip() and not line.lstrip().startswith("#") else []
    if line.find("$", first + 1) < 0:
        return [_one(line[first + 1 :], last=True)]
    pieces = line[first + 1 :].split("$")
    found = [_one(piece, last=index == len(pieces) - 1) for index, piece in enumerate(pieces) if piece]
    return found or [Fault.NOT_A_SENTENCE]


def _one(piece: str, *, last: bool) -> Sentence | Fault:
    """The sentence that a piece begins with, or why it is none; `last` where no other begins behind it in the line."""
    address = _ADDRESS.match(piece)
    if address is None:
        return Fault.NOT_A_SENTENCE
    star = piece.find("*")
    check = _CHECK.match(piece, star) if star >= 0 else None
    if check is None:
        return Fault.CUT_OFF if last else Fault.BAD_CHECKSUM  # what follows runs on into another sentence
    body = piece[:star]
    if checksum(body) != int(check[1], 16):
        return Fault.BAD_CHECKSUM
    name, _, rest = body.partition(",")
    talker = "P" if name[0] == "P" else name[:2]
    return Sentence(talker, name[len(talker) :], rest.split(","))
