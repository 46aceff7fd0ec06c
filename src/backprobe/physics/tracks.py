"""All satellites that stand above an elevation, minute by minute through a day.

The broadcast algorithm is worked every ten minutes for each satellite; between these the unit vector to it is
interpolated with a polynomial of degree 5 through the six nearest of them. A satellite seen from the ground turns by
less than 0.045 rad in ten minutes; the interpolated vector differs from the worked one by less than 0.0001° (tests
hold it to that).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from backprobe.evidence.orbits import Elements
from backprobe.physics.geodesy import Vector
from backprobe.physics.orbit import Observer, nearest_set

NODE_S = 600.0
_POINTS = 6
_BEFORE = 2  # of the six points, those before the one at the beginning of the gap

Seen = tuple[int, float, float, float]  # the satellite's number among the ids; east, north, up


def sky_by_step(
    sets: Mapping[str, Sequence[Elements]],
    observer: Observer,
    *,
    start_s: float,
    steps: int,
    step_s: float = 60.0,
    least_up: float = 0.0,
) -> list[list[Seen]]:
    """For each of `steps` moments from `start_s` [GPS seconds] on, the satellites at least so high.

    `least_up` is the sine of the lowest elevation. Satellites are numbered in the order of `sets`.
    """
    stride = max(1, int(NODE_S // step_s))
    weights = [_weights(j / stride) for j in range(stride)]
    gaps = -(-steps // stride)
    sky: list[list[Seen]] = [[] for _ in range(gaps * stride)]
    for number, own in enumerate(sets.values()):
        nodes = _nodes(tuple(own), observer, start_s=start_s, gap_s=stride * step_s, gaps=gaps)
        for gap in range(gaps):
            near = nodes[gap : gap + _POINTS]
            if max(up for _, _, up in near) >= least_up:
                _fill(sky, gap * stride, near=near, number=number, weights=weights, least_up=least_up)
    return sky[:steps]


def _nodes(own: tuple[Elements, ...], observer: Observer, *, start_s: float, gap_s: float, gaps: int) -> list[Vector]:
    """The worked directions, from two before the start to three after the end."""
    found = []
    for k in range(-_BEFORE, gaps + _POINTS - _BEFORE):
        moment_s = start_s + k * gap_s
        found.append(observer.direction(own[0] if len(own) == 1 else nearest_set(own, moment_s), moment_s))
    return found


def _fill(
    sky: list[list[Seen]],
    first: int,
    *,
    near: Sequence[Vector],
    number: int,
    weights: Sequence[tuple[float, ...]],
    least_up: float,
) -> None:
    """Add the satellite to the moments of one gap in which it is high enough."""
    (e0, n0, u0), (e1, n1, u1), (e2, n2, u2), (e3, n3, u3), (e4, n4, u4), (e5, n5, u5) = near
    for offset, (a, b, c, d, f, g) in enumerate(weights):
        up = a * u0 + b * u1 + c * u2 + d * u3 + f * u4 + g * u5
        if up >= least_up:
            east = a * e0 + b * e1 + c * e2 + d * e3 + f * e4 + g * e5
            north = a * n0 + b * n1 + c * n2 + d * n3 + f * n4 + g * n5
            sky[first + offset].append((number, east, north, up))


def _weights(part: float) -> tuple[float, ...]:
    """Lagrange's weights of the six points for a moment `part` (0 to 1) of the way from the third to the fourth."""
    found = []
    for own in range(_POINTS):
        weight = 1.0
        for other in range(_POINTS):
            if other != own:
                weight *= (part + _BEFORE - other) / (own - other)
        found.append(weight)
    return tuple(found)
