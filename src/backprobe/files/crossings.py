"""One corner for one crossing: meetings of the same streets that lie together become one.

A street with two carriageways meets another one at two or four points; a crossing that is drawn with a small offset at
two. Meetings are joined where the streets of the one are all among those of the other and they lie within 25 m, or
within 60 m where a street of both is one-way there, as carriageways are (both figures our own choice: a wide median, a
staggered crossing). A street that meets another twice farther apart, as a crescent does, keeps both corners.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations

from backprobe.evidence.corner import Corner, CornerKind
from backprobe.files.road_net import Meeting, Place
from backprobe.physics.great_circle import distance_m

TOGETHER_M = 25.0
CARRIAGEWAYS_M = 60.0
METRES_PER_DEG = 111_000.0
DIGITS = 7  # as the map keeps places


def corners_of(meetings: Sequence[Meeting], *, translations: Mapping[str, str]) -> list[Corner]:
    """The corners of the meetings, streets under their translations where there are any."""
    found = [_corner(group, translations) for group in _groups(meetings)]
    return [corner for corner in found if len(corner.streets) > 1]


def _groups(meetings: Sequence[Meeting]) -> list[list[Meeting]]:
    """The meetings, those that belong together in one list."""
    head = list(range(len(meetings)))

    def top(at: int) -> int:
        while head[at] != at:
            head[at] = head[head[at]]
            at = head[at]
        return at

    for one, other in _pairs(meetings):
        if _is_one_crossing(meetings[one], meetings[other]):
            head[max(top(one), top(other))] = min(top(one), top(other))
    groups: dict[int, list[Meeting]] = {}
    for at, meeting in enumerate(meetings):
        groups.setdefault(top(at), []).append(meeting)
    return list(groups.values())


def _pairs(meetings: Sequence[Meeting]) -> Iterator[tuple[int, int]]:
    """Pairs of meetings that have two streets in common and lie within reach from south to north."""
    by_names: dict[tuple[str, str], list[int]] = {}
    for at, meeting in enumerate(meetings):
        for names in combinations(sorted(meeting.streets), 2):
            by_names.setdefault(names, []).append(at)
    reach_deg = CARRIAGEWAYS_M / METRES_PER_DEG
    middles = [middle_of(meeting.places) for meeting in meetings]
    for alike in by_names.values():
        alike.sort(key=lambda at: middles[at])
        for place, one in enumerate(alike):
            for other in alike[place + 1 :]:
                if middles[other][0] - middles[one][0] > reach_deg:
                    break
                yield one, other


def _is_one_crossing(one: Meeting, other: Meeting) -> bool:
    few, many = sorted((set(one.streets), set(other.streets)), key=len)
    if not few <= many:
        return False
    reach_m = CARRIAGEWAYS_M if one.one_way & other.one_way & few else TOGETHER_M
    return distance_m(middle_of(one.places), middle_of(other.places)) <= reach_m


def _corner(group: Sequence[Meeting], translations: Mapping[str, str]) -> Corner:
    ranks: dict[str, int] = {}
    for meeting in group:
        for street, rank in meeting.streets.items():
            ranks[street] = min(rank, ranks.get(street, rank))
    streets = sorted(ranks, key=lambda street: (ranks[street], street))
    lat_deg, lon_deg = middle_of([place for meeting in group for place in meeting.places])
    names = tuple(dict.fromkeys(translations.get(street, street) for street in streets))
    return Corner(round(lat_deg, DIGITS), round(lon_deg, DIGITS), names, _kind(group))


def _kind(group: Sequence[Meeting]) -> CornerKind:
    if any(meeting.ring for meeting in group):
        return CornerKind.ROUNDABOUT
    branches = any(meeting.ends > 2 for meeting in group)
    return CornerKind.CORNER if branches else CornerKind.NAME_CHANGE


def middle_of(places: Sequence[Place]) -> Place:
    """The middle of places that lie near one another, also on both sides of the antimeridian.

    >>> middle_of([(10.0, 179.0), (12.0, -179.0)])
    (11.0, 180.0)
    """
    places = sorted(places)  # whatever order the map has them in, the last digit is the same
    north, east = places[0]
    steps = [((place[1] - east + 180.0) % 360.0) - 180.0 for place in places]
    middle = east + math.fsum(steps) / len(places)
    lat_deg = north + math.fsum(place[0] - north for place in places) / len(places)
    return lat_deg, middle - 360.0 if middle > 180.0 else middle + 360.0 if middle < -180.0 else middle
