"""Reads an OpenStreetMap extract (.osm.pbf) into the corners of its streets, streamed; only streets are kept.

The first pass goes over the ways and keeps, of streets alone, which points they touch; the second fetches the places of
those points where names meet. Buildings, shapes and everything else are dropped before Python sees them.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import osmium

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.corner import Corner, CornerIndex, sorted_corners
from backprobe.files.crossings import corners_of
from backprobe.files.road_net import RoadNet
from backprobe.files.road_tags import road_of
from backprobe.physics.great_circle import distance_m

ATTRIBUTION = "street names © OpenStreetMap contributors, ODbL"
EXPECTED = "an OpenStreetMap extract as .osm.pbf"
HEAD_BYTES = 64
MAGIC = b"OSMHeader"
WORDS = 80
MARGIN_M = 1000.0  # carriageways and rings at the circle's edge are joined before it is drawn


@dataclass(frozen=True, slots=True)
class Around:
    """A circle: its middle in degrees north and east, its radius in kilometres."""

    place: tuple[float, float]
    km: float

    def holds(self, corner: Corner) -> bool:
        """Whether a corner lies within the circle."""
        return distance_m(self.place, (corner.lat_deg, corner.lon_deg)) <= self.km * 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class MapRead:
    """The corners of a map, and what was counted on the way.

    `ways` were taken as streets, `passed_over` are ways with a `highway` that are none; `outside` are meetings beyond
    the circle, `lost` corners whose place is not in the file.
    """

    index: CornerIndex
    ways: int
    passed_over: int
    meetings: int
    outside: int
    lost: int


def read_corners(path: Path, *, language: str | None = None, around: Around | None = None) -> MapRead:
    """The corners of an extract, within a circle where one is given, names in a language where the map has them.

    Raises UnreadableError where the file is not there, is no extract, was cut off, or holds no named street.
    """
    with _plain_words(path):
        _refuse_other(path)
        net, passed_over = _net(path, language)
        places, beyond = _places(path, net.candidates(), around=around)
        as_of = osmium.io.Reader(str(path), osmium.osm.NOTHING).header().get("osmosis_replication_timestamp", "")
    if not net.ways:
        raise UnreadableError(Place(path.name), f"{EXPECTED} with named streets; there is not one in it")
    meetings = list(net.meetings(places, beyond=beyond))
    found = corners_of(meetings, translations=net.translations())
    kept = [corner for corner in found if around is None or around.holds(corner)]
    return MapRead(
        index=CornerIndex(
            corners=sorted_corners(kept),
            attribution=ATTRIBUTION,
            source=_shown(path.name),
            as_of=_shown(as_of) or None,
            language=language,
        ),
        ways=net.ways,
        passed_over=passed_over,
        meetings=len(meetings),
        outside=net.outside + len(found) - len(kept),
        lost=net.lost,
    )


def _shown(text: str) -> str:
    return "".join(c for c in text if c.isprintable())[:WORDS]


def _refuse_other(path: Path) -> None:
    """Refuse what cannot be an extract, before the reader is let at it."""
    if path.is_dir():
        raise UnreadableError(Place(path.name), f"{EXPECTED}; this is a folder")
    if path.exists() and not path.is_file():
        raise UnreadableError(Place(path.name), f"{EXPECTED}; this is a pipe or a device")
    with path.open("rb") as file:
        head = file.read(HEAD_BYTES)
    if not head:
        raise UnreadableError(Place(path.name), f"{EXPECTED}; this file is empty")
    if MAGIC not in head[:24]:
        raise UnreadableError(Place(path.name), f"{EXPECTED}; this file is of another kind")


def _net(path: Path, language: str | None) -> tuple[RoadNet, int]:
    """The streets of a map, and how many ways with a `highway` are none."""
    net, passed_over = RoadNet(), 0
    ways = osmium.FileProcessor(str(path), osmium.osm.WAY).with_filter(osmium.filter.KeyFilter("highway"))
    for way in ways:
        if not isinstance(way, osmium.osm.Way):
            continue
        road = road_of(dict(way.tags), language=language)
        if road is None:
            passed_over += 1
        else:
            net.add(road, [node.ref for node in way.nodes])
    return net, passed_over


def _places(path: Path, points: list[int], *, around: Around | None) -> tuple[dict[int, tuple[float, float]], set[int]]:
    """The places of those of the points that are in the file, and the points that lie well beyond the circle."""
    places: dict[int, tuple[float, float]] = {}
    beyond: set[int] = set()
    if not points:
        return places, beyond
    for node in osmium.FileProcessor(str(path), osmium.osm.NODE).with_filter(osmium.filter.IdFilter(points)):
        if not isinstance(node, osmium.osm.Node) or not node.location.valid():
            continue
        place = (node.location.lat, node.location.lon)
        if around is not None and distance_m(around.place, place) > around.km * 1000.0 + MARGIN_M:
            beyond.add(node.id)
        else:
            places[node.id] = place
    return places, beyond


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    """Turn what the system and the reader say into the technician's words."""
    try:
        yield
    except FileNotFoundError:
        raise UnreadableError(Place(path.name), "a file that is there; there is none of this name") from None
    except PermissionError:
        raise UnreadableError(Place(path.name), "a file that may be read; the system does not allow it") from None
    except (OSError, ValueError) as fault:
        raise UnreadableError(Place(path.name), f"a file that can be read; the system says: {fault}") from None
    except RuntimeError as fault:
        cut_off = "EOF" in str(fault)
        what = "a whole file; this one was cut off" if cut_off else f"{EXPECTED}; its reader says: {fault}"
        raise UnreadableError(Place(path.name), what) from None
