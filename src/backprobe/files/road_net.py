"""Streets as a map draws them, many short ways, until it is known at which of its points two of them meet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, field

from backprobe.files.road_tags import Road

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Meeting:
    """One or more points of the map at which the same streets meet.

    `streets` holds each street's rank by its name (the lower, the more important), `one_way` those that are one-way
    here; `ends` counts the pieces of street that lead away; a `ring` is a roundabout.
    """

    streets: Mapping[str, int]
    one_way: frozenset[str]
    ends: int
    ring: bool
    places: tuple[Place, ...]


@dataclass(slots=True)
class RoadNet:
    """Roads as they are read, and the points that more than one of them touches.

    Points are the map's own numbers. Most are touched once and take one entry in `once`, the number of the road and of
    the pieces of it that lead away from there in one figure; only those touched again get a list.
    """

    roads: list[Road] = field(default_factory=list)
    numbers: dict[Road, int] = field(default_factory=dict)
    once: dict[int, int] = field(default_factory=dict)
    again: dict[int, list[int]] = field(default_factory=dict)
    ring_of: dict[int, int] = field(default_factory=dict)  # point -> ring
    streets: set[str] = field(default_factory=set)  # names that are drawn as a street somewhere
    shown: Counter[tuple[str, str]] = field(default_factory=Counter)
    ways: int = 0
    lost: int = 0
    outside: int = 0

    def add(self, road: Road, points: Sequence[int]) -> None:
        """Take one way."""
        self.ways += 1
        number = self.numbers.setdefault(road, len(self.roads))
        if number == len(self.roads):
            self.roads.append(road)
        if road.name and not road.piece:
            self.streets.add(road.name)
        if road.name and road.shown:
            self.shown[road.name, road.shown] += 1
        last = len(points) - 1
        for at, point in enumerate(points):
            self._touch(point, 4 * number + (at > 0) + (at < last))
        if road.ring:
            self._join(points)

    def _touch(self, point: int, touch: int) -> None:
        if point in self.again:
            self.again[point].append(touch)
        elif point in self.once:
            self.again[point] = [self.once.pop(point), touch]
        else:
            self.once[point] = touch

    def _join(self, points: Sequence[int]) -> None:
        """Make the points one ring with whatever rings they touch."""
        own = len(self.ring_of)
        touched = {self.ring_of[point] for point in points if point in self.ring_of}
        if touched:
            own = min(touched)
        for point, ring in list(self.ring_of.items()) if len(touched) > 1 else ():
            self.ring_of[point] = own if ring in touched else ring
        for point in points:
            self.ring_of[point] = own

    def candidates(self) -> list[int]:
        """The points whose places are needed, sorted: those where names meet, and all of a ring."""
        meeting = [point for point, touches in self.again.items() if len(self._streets(touches)) > 1]
        return sorted({*meeting, *self.ring_of})

    def meetings(self, places: Mapping[int, Place], *, beyond: Set[int] = frozenset()) -> Iterator[Meeting]:
        """Where at least two names meet, one for each point or ring.

        Those without a place are counted: as `outside` where it lies `beyond` what is wanted, else as `lost`.
        """
        self.lost = self.outside = 0
        for points in self._points():
            touches = [touch for point in points for touch in self._touches(point)]
            streets = self._streets(touches)
            if len(streets) < 2:
                continue
            found = tuple(places[point] for point in points if point in places)
            if not found:
                if beyond.isdisjoint(points):
                    self.lost += 1
                else:
                    self.outside += 1
                continue
            yield Meeting(
                streets=streets,
                one_way=frozenset(_key(road) for road in map(self._road, touches) if road.one_way) & set(streets),
                ends=sum(touch % 4 for touch in touches),
                ring=points[0] in self.ring_of,
                places=found,
            )

    def _points(self) -> Iterator[list[int]]:
        rings: dict[int, list[int]] = {}
        for point, ring in self.ring_of.items():
            rings.setdefault(ring, []).append(point)
        yield from rings.values()
        yield from ([point] for point in self.again if point not in self.ring_of)

    def _touches(self, point: int) -> list[int]:
        return self.again[point] if point in self.again else [self.once[point]]

    def _road(self, touch: int) -> Road:
        return self.roads[touch // 4]

    def _streets(self, touches: Sequence[int]) -> dict[str, int]:
        """The names that meet, each with its best rank; a number is left out where a street of it has a name."""
        roads = [self._road(touch) for touch in touches]
        numbers = {ref for road in roads if road.name for ref in road.refs}
        streets: dict[str, int] = {}
        for road in roads:
            key = _key(road)
            if key and (key in self.streets if road.name else key not in numbers):
                streets[key] = min(road.rank, streets.get(key, road.rank))
        return streets

    def translations(self) -> dict[str, str]:
        """For each street that has one, its name in the language asked for: of several the most frequent."""
        best: dict[str, tuple[int, str]] = {}
        for (name, shown), count in self.shown.items():
            best[name] = min(best.get(name, (0, "")), (-count, shown))
        return {name: shown for name, (_, shown) in best.items()}


def _key(road: Road) -> str:
    """What tells a road's street from others: its name, else its number; empty where it has neither."""
    return road.name or road.ref or ""
