"""`backprobe corners …`: an index of corners out of a map, and the corner that a place lies at."""

from __future__ import annotations

import argparse
import json
import re
from collections.abc import Iterator
from pathlib import Path

from backprobe.cli.numbers import figure
from backprobe.cli.prove import place_of
from backprobe.errors import OptionError
from backprobe.stages.named_place import WITHIN_M, NamedPlace

ACTIONS = ("build", "name")
LANGUAGE = re.compile(r"[A-Za-z]{2,3}(?:[-_][A-Za-z0-9]{1,8})*")
MOST_KM = 20_000.0
MOST_REACH_M = 20_000.0


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("action", metavar="build|name", choices=ACTIONS, help="make an index, or name a place by one")
    parser.add_argument("file", metavar="FILE", help="for build a map, .osm.pbf; for name an index")
    parser.add_argument("--out", metavar="FILE", help="build: where the index goes")
    parser.add_argument("--within", metavar="LAT,LON,KM", help="build: only corners in a circle")
    parser.add_argument("--language", metavar="CODE", help="build: streets by their names in a language, such as en")
    parser.add_argument("--at", metavar="LAT,LON", help="name: the place, degrees north and east")
    parser.add_argument("--reach-m", type=figure, metavar="M", help="name: how far a corner may be; 300 if left out")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Build an index or name a place, and return 0. Raises InputError."""
    given = {name for name in ("out", "within", "language", "at", "reach_m") if getattr(chosen, name) is not None}
    own, needed = ({"out", "within", "language"}, "out") if chosen.action == "build" else ({"at", "reach_m"}, "at")
    if odd := sorted(given - own):
        raise OptionError(
            f"corners {chosen.action} takes no --{odd[0].replace('_', '-')}\nsee: backprobe corners --help"
        )
    if needed not in given:
        raise OptionError(f"corners {chosen.action} needs --{needed}\nsee: backprobe corners --help")
    return _build(chosen) if chosen.action == "build" else _name(chosen)


def _build(chosen: argparse.Namespace) -> int:
    from backprobe.cases.corners import build_corners  # loads the map reader: only where it is wanted
    from backprobe.files.osm_pbf import Around

    if chosen.language is not None and not LANGUAGE.fullmatch(chosen.language):
        raise OptionError(f"--language {chosen.language}: the code of a language is expected, such as en or sv")
    around = None if chosen.within is None else Around(*circle_of(chosen.within))
    built = build_corners(Path(chosen.file), Path(chosen.out), around=around, language=chosen.language)
    if chosen.json:
        print(json.dumps(built.as_json(), ensure_ascii=False))
        return 0
    index = built.read.index
    print(f"{len(index.corners)} corners of {len(index.streets)} streets, {size(built.size_bytes)}: {built.out}")
    print(index.attribution)
    for note in built.notes:
        print(f"note: {note}")
    return 0


def _name(chosen: argparse.Namespace) -> int:
    from backprobe.files.corner_file import corners_in
    from backprobe.stages.named_place import named_place

    place, reach_m = place_of(chosen.at), WITHIN_M if chosen.reach_m is None else chosen.reach_m
    if not 0 < reach_m <= MOST_REACH_M:
        raise OptionError(f"--reach-m {reach_m:g}: more than 0 and at most {MOST_REACH_M:g} metres are expected")
    named = named_place(corners_in(Path(chosen.file)), (place.lat_deg, place.lon_deg), within_m=reach_m)
    print(json.dumps(_answer(named), ensure_ascii=False) if chosen.json else "\n".join(_lines(named)))
    return 0


def _answer(named: NamedPlace) -> dict[str, object]:
    return {"ok": True, **named.as_json(), "reach_m": round(named.within_m, 1)}


def _lines(named: NamedPlace) -> Iterator[str]:
    yield named.text
    if named.near is not None:
        yield named.attribution


def circle_of(text: str) -> tuple[tuple[float, float], float]:
    """The middle and the kilometres that are typed as LAT,LON,KM. Raises OptionError.

    >>> circle_of("-33.1,151.2,5")
    ((-33.1, 151.2), 5.0)
    """
    try:
        north, east, km = (float(part) for part in text.replace("−", "-").split(","))
    except ValueError:
        raise _no_circle(text) from None
    if not (abs(north) <= 90 and abs(east) <= 180 and 0 < km <= MOST_KM):
        raise _no_circle(text)
    return (north, east), km


def _no_circle(text: str) -> OptionError:
    return OptionError(f"--within {text}: degrees north and east and kilometres are expected: --within -33.1,151.2,5")


def size(count: int) -> str:
    """A number of bytes in words.

    >>> size(512), size(1706), size(2_400_000)
    ('512 bytes', '1.7 kB', '2.4 MB')
    """
    if count < 1000:
        return f"{count} bytes"
    return f"{count / 1000:.1f} kB" if count < 1_000_000 else f"{count / 1_000_000:.1f} MB"
