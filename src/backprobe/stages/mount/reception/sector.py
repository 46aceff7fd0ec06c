"""Which part of the sky is blocked: a test over all sectors at once, with its strength.

A satellite in a blocked sector is heard much more weakly than those elsewhere, or not at all. For every sector of a
fixed grid (centres 15° apart, six widths, three heights) it is asked how much better two stories explain the satellites
inside:

* open: their levels scatter round the open sky's curve as those outside the sector do; now and then (1 in 14, of
  low ones 1 in 7) one is weak for reasons of its own, a tree or a satellite out of service;
* blocked: nearly all of them lose something between 4 and 20 dB.

The likelihood ratios of all sectors are averaged. Under an open sky the average exceeds 1 / a in a share of at most a
of all logs (Markov's inequality: each ratio has an expectation of 1), however many sectors were tried. So

    strength = 1 - 1 / average

needs no further correction for the many sectors, and no dice. The level outside and its spread come from the very log,
so a receiver may read high or low. Our own model: the two stories and their figures; bench/reception_sector.py measures
how often an open sky is called blocked, and how often a blocked one is found (docs/reception.md).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from backprobe.evidence.reception import AZ_BIN_DEG, SkyBin
from backprobe.stages.mount.heard import open_sky_dBHz

WIDTHS_DEG = (45, 60, 90, 120, 180, 240)
CEILINGS_DEG = (30, 50, 90)
LEAST_ELEVATION_DEG = 10.0  # below it hedges and houses block every sky
NAMED_FROM, SUREST = 0.95, 0.9999  # strength
MOST_SECTORS = 3
LEAST_OUTSIDE = 4  # satellites
LEAST_TIMES = 3
LEAST_OF_SYSTEM = 4  # satellites, to know a system's own level
STANDING_STILL = "S"  # SBAS: they are heard in one direction for ever, and often not sought at all

UNHEARD_DBHZ = 20.0  # a satellite that is not heard counts as heard so: few receivers hold on below
SPREAD_DB = 3.5  # between satellites of an open sky, at least
ODD_SHARE, LOW_ODD_SHARE, LOW_DEG = 0.07, 0.15, 25.0  # satellites that are weak for reasons of their own; low ones
BLOCKED_SHARE = 0.9
LOSS_LEAST_DB, LOSS_MOST_DB = 4.0, 20.0
_AZ_BINS = 360 // AZ_BIN_DEG
_MAD_TO_SIGMA = 1.4826
_MORE_LIKELY, _CLEARLY = 0.5, 2.0
_LEAST_QUARTERS = 3


@dataclass(frozen=True, slots=True)
class Piece:
    """One satellite in one piece of the sky: its level against the open sky's curve [dB], how often it was told of."""

    satellite: str
    az_bin: int
    el_deg: float
    level_dB: float
    times: int
    heard: bool


@dataclass(frozen=True, slots=True)
class Sector:
    """A blocked sector: azimuths clockwise, up to which elevation, how strong the test is.

    `loss_dB` is how much weaker its satellites are than the others (median, one not heard counts as 20 dB-Hz), of
    `satellites` in it `unheard` were not heard at all.
    """

    from_deg: int
    to_deg: int
    below_deg: int
    strength: float
    loss_dB: float
    satellites: int
    unheard: int


@dataclass(frozen=True, slots=True)
class _Window:
    first: int
    bins: int
    below_deg: int

    def holds(self, piece: Piece) -> bool:
        return (piece.az_bin - self.first) % _AZ_BINS < self.bins and piece.el_deg < self.below_deg


WINDOWS = tuple(
    _Window(first, width // AZ_BIN_DEG, below)
    for below in CEILINGS_DEG
    for width in WIDTHS_DEG
    for first in range(_AZ_BINS)
)


def pieces_of(bins: Sequence[SkyBin]) -> list[Piece]:
    """What the test looks at: the satellites of systems that are heard well enough to be compared, each with its level.

    A receiver hears systems unequally well, so each system's levels count from its own upper quartile, which lies in
    the open as long as no more than three quarters of the sky are blocked. Satellites that stand still are left out.
    """
    known = [
        Piece(each.satellite, each.az_bin, each.el_deg, _level_dB(each), each.times, each.heard > 0)
        for each in bins
        if each.satellite[0] != STANDING_STILL and each.times >= LEAST_TIMES and each.el_deg >= LEAST_ELEVATION_DEG
    ]
    levels: dict[str, dict[str, float]] = {}
    for piece in known:
        own = levels.setdefault(piece.satellite[0], {})
        own[piece.satellite] = max(piece.level_dB, own.get(piece.satellite, piece.level_dB))
    heard = {piece.satellite[0] for piece in known if piece.heard}
    tops = {
        system: _upper_quartile(list(own.values()))
        for system, own in levels.items()
        if system in heard and len(own) >= LEAST_OF_SYSTEM
    }
    return [
        replace(piece, level_dB=piece.level_dB - tops[piece.satellite[0]])
        for piece in known
        if piece.satellite[0] in tops
    ]


def _level_dB(each: SkyBin) -> float:
    total = each.cn0_tenths / 10 + UNHEARD_DBHZ * each.missing
    return total / each.times - open_sky_dBHz(each.el_deg)


def blocked_sectors(bins: Sequence[SkyBin]) -> tuple[Sector, ...]:
    """The blocked sectors, the strongest first; none where nothing stands out."""
    pieces, found = pieces_of(bins), list[Sector]()
    while len(found) < MOST_SECTORS:
        ratios = _ratios(pieces)
        strength = strength_of(ratios)
        if strength < NAMED_FROM:
            break
        window = _likely(ratios)
        found.append(_sector(pieces, window, strength=strength))
        pieces = [piece for piece in pieces if not window.holds(piece)]
    return tuple(found)


def satellites_round(bins: Sequence[SkyBin]) -> int:
    """How many satellites the test has to go by; 0 where they do not stand in three quarters of the compass."""
    pieces = pieces_of(bins)
    quarters = {piece.az_bin * 4 // _AZ_BINS for piece in pieces}
    return len({piece.satellite for piece in pieces}) if len(quarters) >= _LEAST_QUARTERS else 0


def _ratios(pieces: Sequence[Piece]) -> dict[_Window, float]:
    """The likelihood ratio of each sector that has something to tell."""
    ratios = {window: _ratio(pieces, window) for window in WINDOWS}
    return {window: ratio for window, ratio in ratios.items() if ratio is not None}


def strength_of(ratios: dict[_Window, float]) -> float:
    """The strength of the whole test, 0 to 1; a sector without a ratio counts as nothing."""
    average = math.fsum(ratios.values()) / len(WINDOWS)
    return min(round(max(0.0, 1.0 - 1.0 / average), 4), SUREST) if average > 0 else 0.0


def _likely(ratios: dict[_Window, float]) -> _Window:
    """The sector as all of them draw it: round the likeliest azimuth, as far as more likely blocked than not."""
    total = math.fsum(ratios.values())
    shares = [
        math.fsum(ratio for window, ratio in ratios.items() if (az - window.first) % _AZ_BINS < window.bins) / total
        for az in range(_AZ_BINS)
    ]
    first = last = max(range(_AZ_BINS), key=lambda az: round(shares[az], 9))
    while last - first < _AZ_BINS - 1 and shares[(last + 1) % _AZ_BINS] >= _MORE_LIKELY:
        last += 1
    while last - first < _AZ_BINS - 1 and shares[(first - 1) % _AZ_BINS] >= _MORE_LIKELY:
        first -= 1
    return _Window(first % _AZ_BINS, last - first + 1, _height(ratios))


def _height(ratios: dict[_Window, float]) -> int:
    """Up to which elevation it is blocked: to the zenith unless a lower end is clearly likelier."""
    heights = {
        below: math.fsum(ratio for window, ratio in ratios.items() if window.below_deg == below)
        for below in CEILINGS_DEG
    }
    lower = max(CEILINGS_DEG[:-1], key=lambda below: round(heights[below], 9))
    return lower if heights[lower] > _CLEARLY * heights[CEILINGS_DEG[-1]] else CEILINGS_DEG[-1]


def _ratio(pieces: Sequence[Piece], window: _Window) -> float | None:
    """How much better 'blocked' explains a sector's satellites than 'open'; None where there is nothing to tell."""
    inside, outside = _levels(pieces, window)
    if not inside or len(outside) < LEAST_OUTSIDE:
        return None
    middle, spread = _middle_and_spread([level for level, _ in outside.values()])
    spread *= math.sqrt(1.0 + math.pi / 2 / len(outside))  # the median of few is itself uncertain
    return math.prod(
        _one_ratio(middle - level, spread, odd_share=LOW_ODD_SHARE if el_deg < LOW_DEG else ODD_SHARE)
        for level, el_deg in inside.values()
    )


Levels: TypeAlias = dict[str, tuple[float, float]]


def _levels(pieces: Sequence[Piece], window: _Window) -> tuple[Levels, Levels]:
    """Each satellite's mean level and elevation inside a sector, and outside it at the same heights."""
    sums: tuple[dict[str, list[float]], dict[str, list[float]]] = ({}, {})
    for piece in pieces:
        if piece.el_deg < window.below_deg:
            into = sums[0] if window.holds(piece) else sums[1]
            total = into.setdefault(piece.satellite, [0.0, 0.0, 0.0])
            total[0] += piece.level_dB * piece.times
            total[1] += piece.el_deg * piece.times
            total[2] += piece.times
    inside, outside = (
        {name: (level / times, el / times) for name, (level, el, times) in part.items()} for part in sums
    )
    return inside, outside


def _one_ratio(loss_dB: float, spread_dB: float, *, odd_share: float) -> float:
    """One satellite's ratio."""
    loss = min(max(loss_dB, -LOSS_MOST_DB), LOSS_MOST_DB)
    bell = math.exp(-((loss / spread_dB) ** 2) / 2) / (spread_dB * math.sqrt(2 * math.pi))
    odd = 1.0 / LOSS_MOST_DB if loss > 0 else 0.0
    lost = 1.0 / (LOSS_MOST_DB - LOSS_LEAST_DB) if loss >= LOSS_LEAST_DB else 0.0
    blocked = (1.0 - BLOCKED_SHARE) * bell + BLOCKED_SHARE * lost
    return blocked / ((1.0 - odd_share) * bell + odd_share * odd)


def _middle_and_spread(levels: list[float]) -> tuple[float, float]:
    """Median, and the spread between satellites as a standard deviation, not less than an open sky has."""
    middle = _median(levels)
    return middle, max(SPREAD_DB, _MAD_TO_SIGMA * _median([abs(level - middle) for level in levels]))


def _median(values: list[float]) -> float:
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def _upper_quartile(values: list[float]) -> float:
    ordered = sorted(values)
    return ordered[int(0.75 * (len(ordered) - 1) + 0.5)]


def _sector(pieces: Sequence[Piece], window: _Window, *, strength: float) -> Sector:
    inside, outside = _levels(pieces, window)
    middle = _median([level for level, _ in outside.values()])
    heard = {piece.satellite for piece in pieces if window.holds(piece) and piece.heard}
    return Sector(
        from_deg=window.first * AZ_BIN_DEG,
        to_deg=(window.first + window.bins) * AZ_BIN_DEG % 360,
        below_deg=window.below_deg,
        strength=strength,
        loss_dB=round(middle - _median([level for level, _ in inside.values()]), 1),
        satellites=len(inside),
        unheard=len(inside) - len(heard),
    )
