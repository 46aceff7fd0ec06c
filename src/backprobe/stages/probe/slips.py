"""What a figure was before it was written down wrongly.

Three slips are common: the comma in the wrong place, two neighbouring digits swapped, a digit left out. A figure that
one of them would turn into battery level is more likely such a slip than an odd wire: 1.23 V at key on was 12.3 V.
How often each happens is our own estimate.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

COMMA_SHARE = 0.001  # the comma one place too far to the left; as often to the right
SWAP_SHARE = 0.002  # any two neighbours swapped
DROP_SHARE = 0.002  # any digit left out

Original = tuple[float, float]  # volts, and how much denser (per volt) figures lie there times the slip's share


@cache
def originals(typed: str) -> tuple[Original, ...]:
    """What `typed` may have been, as (volts, weight) pairs; empty for a figure with a unit or a sign.

    `weight` turns a density per volt at those volts into one at the figure as typed.

    >>> originals("1.25")[0]
    (12.5, 0.01)
    """
    whole, point, part = typed.replace(",", ".").partition(".")
    if not point or not (whole + part).isascii() or not (whole + part).isdigit() or not whole:
        return ()
    return tuple(_all(whole, part))


def _all(whole: str, part: str) -> Iterator[Original]:
    volts, digits = float(f"{whole}.{part}"), whole + part
    yield round(volts * 10.0, 6), COMMA_SHARE * 10.0
    yield round(volts / 10.0, 6), COMMA_SHARE / 10.0
    places = len(whole)
    for i in range(len(digits) - 1):
        swapped = digits[:i] + digits[i + 1] + digits[i] + digits[i + 2 :]
        if swapped != digits:
            yield _volts(swapped, places), SWAP_SHARE / (len(digits) - 1)
    for i in range(places + 1):
        for digit in "0123456789" if i else "123456789":
            yield _volts(digits[:i] + digit + digits[i:], places + 1), DROP_SHARE / (len(digits) + 1)


def _volts(digits: str, places: int) -> float:
    """The figure with that many digits before its point."""
    return float(f"{digits[:places]}.{digits[places:]}")
