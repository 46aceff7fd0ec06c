"""Small invented maps, written as .osm.pbf: points in metres from a middle, ways through them."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import osmium

MIDDLE = (51.0, 7.0)
M_PER_DEG = 111_195.0  # along a meridian: 6371008.8 m × pi / 180
EAST_PER_DEG = M_PER_DEG * 0.629320391  # cos 51°

Point = tuple[float, float]  # metres north, metres east


def place_of(point: Point) -> tuple[float, float]:
    """Degrees north and east of a point."""
    return MIDDLE[0] + point[0] / M_PER_DEG, MIDDLE[1] + point[1] / EAST_PER_DEG


def write_map(path: Path, ways: list[tuple[dict[str, str], list[Point]]], *, lost: tuple[Point, ...] = ()) -> Path:
    """A map of ways, each its tags and its points; ways share a point where it is the same. `lost` have no place."""
    points = list(dict.fromkeys(point for _, line in ways for point in line))
    number = {point: at for at, point in enumerate(points, 1)}
    with osmium.SimpleWriter(str(path), overwrite=True) as writer:
        for point, at in number.items():
            if point not in lost:
                lat, lon = place_of(point)
                writer.add_node(osmium.osm.mutable.Node(id=at, location=(lon, lat)))
        for at, (tags, line) in enumerate(ways, 1):
            writer.add_way(osmium.osm.mutable.Way(id=at, tags=tags, nodes=[number[point] for point in line]))
    return path


def street(
    name: str | None, *points: Point, highway: str = "residential", **tags: Any
) -> tuple[dict[str, str], list[Point]]:
    """A way of a street; other tags as they are written, ':' and '-' given as '_'."""
    named = {} if name is None else {"name": name}
    rest = {key.replace("__", ":"): str(value) for key, value in tags.items()}
    return {"highway": highway, **named, **rest}, list(points)
