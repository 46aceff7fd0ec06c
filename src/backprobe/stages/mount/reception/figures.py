"""The figures of a receiver's log: each a value with the range that the log allows."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from backprobe.evidence.reception import Reception, Rest
from backprobe.physics.circular_normal import radius_range
from backprobe.stages.mount.reception.counted import share_of

INDEPENDENT_S = 10.0  # positions kept or lost this far apart are taken as independent: our own model
CN0_DOUBT_DB = 2.0  # by which receivers differ in telling the strength of one signal: common practice, no source
HELD_MM = 50  # 95 % within this is a position that is held
MOVED_SHARE = 0.1
_Z95 = 1.959964

Range = tuple[float, float, float]  # shown, least, most


@dataclass(frozen=True, slots=True)
class ScatterFigures:
    """Radii round the mean place at rest [m], each shown, least and most; of how many positions in how long."""

    r50_m: Range
    r95_m: Range
    independent: float
    duration_s: int
    fixes: int


def fix_share(log: Reception) -> float:
    """The share of all moments that have a position, 0 to 1."""
    return log.fixes / log.epochs if log.epochs else 0.0


def kept_percent(log: Reception) -> Range | None:
    """From the first position on, the share of moments that have one [%]; None where there never was one.

    The range is Wilson's for a share, of as many independent moments as the log is long in steps of ten seconds.
    """
    if not log.fixes:
        return None
    share = log.fixes / log.since_first
    lasting_s = log.duration_ms / 1000 * log.since_first / log.epochs
    low, high = wilson(share, max(1.0, min(float(log.since_first), lasting_s / INDEPENDENT_S)))
    return 100 * share, 100 * low, 100 * high


def wilson(share: float, count: float) -> tuple[float, float]:
    """The 95 % range of a share that was seen in `count` independent trials (E. B. Wilson 1927; from memory).

    >>> [round(end, 3) for end in wilson(1.0, 19)]
    [0.832, 1.0]
    """
    z2 = _Z95**2
    middle = (share + z2 / (2 * count)) / (1 + z2 / count)
    half = _Z95 * math.sqrt(share * (1 - share) / count + z2 / (4 * count**2)) / (1 + z2 / count)
    return max(0.0, round(middle - half, 9)), min(1.0, round(middle + half, 9))


def first_fix_s(log: Reception) -> float | None:
    """Seconds from the log's beginning to the first position; None where there never was one."""
    return None if log.first_fix_ms is None else log.first_fix_ms / 1000


def begins_fixed(log: Reception) -> bool:
    """Whether the log's first moment has a position: then nothing was seen of how it was found."""
    return log.since_first == log.epochs and log.epochs > 0


def used(log: Reception) -> Range | None:
    """Satellites used: the median, and the range in which eight of ten moments lie."""
    return _spread(log.used, 1)


def hdop(log: Reception) -> Range | None:
    """HDOP: the median, and the range in which eight of ten moments lie."""
    return _spread(log.hdop_hundredths, 100)


def hdop_p95(log: Reception) -> float | None:
    """The HDOP that 95 of 100 moments keep within."""
    found = share_of(log.hdop_hundredths, 0.95)
    return None if found is None else found / 100


def _spread(counts: Mapping[int, int], scale: int) -> Range | None:
    middle, low, high = (share_of(counts, share) for share in (0.5, 0.1, 0.9))
    if middle is None or low is None or high is None:
        return None
    return middle / scale, low / scale, high / scale


def cn0_top4_dBHz(log: Reception) -> float | None:
    """The mean of the four strongest signals, its median over all moments with four; None where there are none."""
    found = share_of(log.top4_tenths, 0.5)
    return None if found is None else found / 10


def four_heard_share(log: Reception) -> float:
    """The share of moments with four signals among those at which the receiver spoke of signals."""
    heard: int = sum(log.top4_tenths.values())
    return heard / log.told if log.told else 0.0


def scatter(log: Reception) -> ScatterFigures | None:
    """The scatter at rest; None where the log holds no minute of rest, or a position that the receiver held still."""
    rest = log.rest
    if rest is None or held_still(rest):
        return None
    independent = max(2, rest.independent_tenths // 10)
    r50_m, r95_m = ((mm / 1000, *radius_range(mm / 1000, independent)) for mm in (rest.r50_mm, rest.r95_mm))
    return ScatterFigures(r50_m, r95_m, rest.independent_tenths / 10, rest.duration_s, rest.fixes)


def held_still(rest: Rest) -> bool:
    """Whether the receiver wrote one position again and again, as many do that know themselves at rest."""
    return rest.r95_mm < HELD_MM


def moved(log: Reception) -> bool:
    """Whether the vehicle was under way for more than a tenth of the log."""
    return log.fixes > 0 and log.moving > MOVED_SHARE * log.fixes
