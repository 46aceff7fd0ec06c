"""Shares of values that were only counted: how many times each occurred."""

from __future__ import annotations

from collections.abc import Mapping


def share_of(counts: Mapping[int, int], share: float) -> float | None:
    """The value below which `share` of all lie, between two values where it falls between them; None without any.

    >>> share_of({5: 1, 7: 2, 8: 1}, 0.5), share_of({5: 1, 8: 1}, 0.5), share_of({}, 0.5)
    (7.0, 6.5, None)
    """
    total: int = sum(counts.values())
    if not total:
        return None
    at = share * (total - 1)
    low = _nth(counts, int(at))
    high = _nth(counts, min(int(at) + 1, total - 1))
    return low + (high - low) * round(at - int(at), 9)


def _nth(counts: Mapping[int, int], index: int) -> float:
    seen = 0
    for value in sorted(counts):
        seen += counts[value]
        if seen > index:
            return float(value)
    return float(max(counts))
