"""Jobs as GeoJSON against RFC 7946, The GeoJSON Format, 2016: its rules written out, and its own example.

Sections: 3 (objects), 3.1.1 and 4 (positions: longitude, latitude, degrees of WGS 84), 3.1.2 (points), 3.2 (features),
3.3 (collections), 4 (no 'crs' of old), 7.1 (members that mean something elsewhere must not stand in other objects),
11.2 (digits). The rules are from memory of the text, section by section; the example is that of section 1.5, shortened.
"""

from __future__ import annotations

import copy
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.job_row import JobRow
from backprobe.formats.jobs_export import jobs_geojson

TYPES = {"Point", "MultiPoint", "LineString", "MultiLineString", "Polygon", "MultiPolygon", "GeometryCollection"}
EXAMPLE = {
    "type": "FeatureCollection",
    "features": [
        {
            "type": "Feature",
            "geometry": {"type": "Point", "coordinates": [102.0, 0.5]},
            "properties": {"prop0": "value0"},
        },
        {
            "type": "Feature",
            "geometry": {"type": "LineString", "coordinates": [[102.0, 0.0], [103.0, 1.0]]},
            "properties": {"prop0": "value0", "prop1": 0.0},
        },
    ],
}


def is_number(value):
    """A JSON number; true and false are none."""
    return isinstance(value, int | float) and not isinstance(value, bool)


def position_faults(found):
    """3.1.1 and 4: two or three numbers, longitude first, within the earth."""
    if not isinstance(found, list) or not 2 <= len(found) <= 3 or not all(map(is_number, found)):
        return [f"no position: {found}"]
    return [] if abs(found[0]) <= 180 and abs(found[1]) <= 90 else [f"off the earth: {found}"]


def geometry_faults(found):
    """3.1: a type and coordinates; nothing of a feature in it (7.1)."""
    if not isinstance(found, dict) or found.get("type") not in TYPES:
        return [f"no geometry: {found}"]
    faults = [f"{name} in a geometry" for name in ("geometry", "properties", "features") if name in found]
    if found["type"] == "Point":
        return faults + position_faults(found.get("coordinates"))
    if found["type"] in ("LineString", "MultiPoint"):
        return faults + [fault for each in found["coordinates"] for fault in position_faults(each)]
    return faults


def feature_faults(found):
    """3.2: geometry (null where there is no place), properties (an object or null), an id that is text or number."""
    if not isinstance(found, dict) or found.get("type") != "Feature":
        return ["no feature"]
    faults = [f"no {name}" for name in ("geometry", "properties") if name not in found]
    faults += [f"{name} in a feature" for name in ("coordinates", "geometries", "features") if name in found]
    if "id" in found and not (isinstance(found["id"], str) or is_number(found["id"])):
        faults.append("an id that is neither text nor number")
    if found.get("properties") is not None and not isinstance(found["properties"], dict):
        faults.append("properties that are no object")
    return faults + ([] if found.get("geometry") is None else geometry_faults(found["geometry"]))


def collection_faults(found):
    """3.3, 4 and 7.1: a list of features; no coordinate system of its own, no member of other objects."""
    if found.get("type") != "FeatureCollection" or not isinstance(found.get("features"), list):
        return ["no collection of features"]
    odd = ("crs", "coordinates", "geometries", "geometry", "properties")
    faults = [f"{name} in a collection" for name in odd if name in found]
    return faults + [fault for each in found["features"] for fault in feature_faults(each)]


def test_the_example_of_the_standard_passes():
    """Otherwise the rules here are wrong."""
    assert collection_faults(EXAMPLE) == []


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("type",), "Features"),
        (("features",), {}),
        (("crs",), {"type": "name"}),
        (("features", 0, "geometry", "coordinates"), [0.5, 102.0]),
        (("features", 0, "geometry", "coordinates"), ["102.0", "0.5"]),
        (("features", 0, "geometry", "coordinates"), [102.0]),
        (("features", 0, "geometry", "type"), "point"),
        (("features", 0, "properties"), "none"),
        (("features", 0, "id"), None),
        (("features", 0, "coordinates"), [1, 2]),
    ],
)
def test_a_broken_rule_is_seen(path, value):
    """Each of these is a fault: north before east where that leaves the earth, texts for figures, an old 'crs' …"""
    broken = copy.deepcopy(EXAMPLE)
    at = broken
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    assert collection_faults(broken) != []


jobs = st.builds(
    JobRow,
    id=st.text(max_size=5),
    name=st.text(st.characters(exclude_categories=["Cs"]), max_size=9),
    state=st.just("open"),
    verdict=st.just("open"),
    lat_deg=st.none() | st.floats(-90, 90),
    lon_deg=st.none() | st.floats(-180, 180),
)


@given(st.lists(jobs, max_size=5))
def test_exports_keep_every_rule(found):
    """Whatever the jobs are called and wherever they are; at most six decimals (11.2)."""
    text = jobs_geojson(found)
    collection = json.loads(text, parse_constant=lambda name: pytest.fail(f"{name} is no JSON"))
    assert collection_faults(collection) == []
    assert len(collection["features"]) == len(found)
    points = [each["geometry"]["coordinates"] for each in collection["features"] if each["geometry"]]
    assert all(value == round(value, 6) for point in points for value in point)
