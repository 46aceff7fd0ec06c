"""Which ways of a map are streets that people name, and under which name.

Streets are what vehicles drive on and read signs at: motorways down to residential and living streets with their slip
roads, and pedestrian streets, whose signs a driver reads at the corner too. Footways, cycleways, paths, steps, tracks
and building sites are none. Service roads (yards, car parks, alleys, deliveries) and pedestrian areas are none of their
own, but where they bear the name of a street they are a piece of it: town centres draw the closed part of a street so.
The words are those of the map's own key `highway` (wiki.openstreetmap.org, Key:highway; from memory).
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass

# the more important street is named first
CLASSES = (
    *("motorway", "trunk", "primary", "secondary", "tertiary"),
    *("unclassified", "residential", "living_street", "road", "pedestrian"),
)
LINK = "_link"
RANK = {name: rank for rank, name in enumerate(CLASSES)} | {
    name + LINK: len(CLASSES) + rank for rank, name in enumerate(CLASSES[:5])
}
PIECE = "service"
PIECE_RANK = 2 * len(CLASSES)
RINGS = ("roundabout", "circular")
ONE_WAY = ("yes", "true", "1", "-1", "reverse")
MOST_NAME = 120


@dataclass(frozen=True, slots=True)
class Road:
    """One way of the map that is part of a street.

    `name` tells streets apart, `shown` is how this way writes it in the language asked for (None where it does not);
    `ref` is its number where it has no name. A ring without either is kept: it joins those that have one. A `piece`
    counts only where the street of its name is drawn as a street elsewhere.
    """

    name: str | None
    shown: str | None
    ref: str | None
    refs: tuple[str, ...]
    rank: int
    one_way: bool
    ring: bool
    piece: bool


def road_of(tags: Mapping[str, str], *, language: str | None = None) -> Road | None:
    """The road that a way's tags describe; None for what is no street, or one that nobody can name.

    >>> road_of({"highway": "residential", "name": "Mill Lane"}).name
    'Mill Lane'
    >>> road_of({"highway": "footway", "name": "Mill Lane"}) is None
    True
    """
    highway, name = tags.get("highway", ""), _plain(tags.get("name"))
    piece = highway == PIECE or tags.get("area") == "yes"
    rank = PIECE_RANK if piece and highway in (PIECE, "pedestrian") else RANK.get(highway)
    if rank is None or (piece and (name is None or rank != PIECE_RANK)):
        return None
    refs = tuple(ref for part in tags.get("ref", "").split(";") if (ref := _plain(part)))
    is_street = rank < len(CLASSES)  # a slip road bears the number of the road that it leads to
    ref = refs[0] if name is None and refs and is_street else None
    ring = tags.get("junction") in RINGS
    if name is None and ref is None and not ring:
        return None
    return Road(
        name=name,
        shown=_plain(tags.get(f"name:{language}")) if language and name else None,
        ref=ref,
        refs=refs,
        rank=rank,
        one_way=ring or tags.get("oneway") in ONE_WAY or highway == "motorway",
        ring=ring,
        piece=piece,
    )


def _plain(text: str | None) -> str | None:
    """A name on one line, composed letters, single spaces, no control characters; None where nothing is left."""
    if text is None:
        return None
    printable = "".join(c if c.isprintable() else " " for c in unicodedata.normalize("NFC", text))
    return " ".join(printable.split())[:MOST_NAME].strip() or None
