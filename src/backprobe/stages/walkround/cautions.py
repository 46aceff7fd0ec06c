"""What to mind at the steps where somebody can be hurt. Common practice, no source, unless a line says otherwise.

All of it gives way to the vehicle maker's instructions, to local codes and to licensed practice.
"""

from __future__ import annotations

BEFORE_CRANK = (
    "parking brake on, neutral, wheels chocked, PTO off, nobody beneath or near the engine, exhaust led away, "
    "and one agreed caller"
)
NO_MAKER_TIME = "open the battery switch only after the maker's after-run time, which the maker's instructions state"


def before_isolating(after_run_min: float | None) -> str:
    """What to mind before the battery switch is opened; `after_run_min` is the maker's time after key-off, if known.

    >>> before_isolating(5.0)
    "open the battery switch only 5 min after key-off, the maker's after-run time"
    """
    if after_run_min is None:
        return NO_MAKER_TIME
    return f"open the battery switch only {after_run_min:g} min after key-off, the maker's after-run time"


HIGH_VOLTAGE = (
    "stay away from everything orange and what it leads to; follow the maker's procedure; high-voltage work is for "
    "licensed persons only"
)
# Never splice or repair restraint wiring: as vehicle makers print it in their service manuals (docs/sources.md).
# The waiting time differs from maker to maker, from seconds to ten minutes and more: no figure of our own.
RESTRAINT = (
    "never probe, load, cut or splice it (mostly yellow, on older vehicles orange); "
    "battery off and the maker's waiting time before its plugs are touched"
)
DUAL_BATTERIES = "take both negatives off before anything is cut or joined, and put them on last"
TRAILER = (
    "its stop lamps and anti-lock brakes hang on the tractor's wiring: never tap those, and try all trailer "
    "lamps after the work; plugs of 12 V and 24 V trailers can look the same"
)
SYSTEM_48V = "never tap it, and keep the work and its ground away from it; a short circuit there burns on"
SYSTEM_24V = "the limits of live wires are twice as high; a wire near 12 V is a converter or a centre tap: no tap"
DANGEROUS_GOODS = (
    "no tap upstream of the battery switch without consent; no sparks, no heat and no test lamp where vapour can be"
)
NEGATIVE_SWITCH = (
    "the switch is in the negative side: a ground on the battery post bypasses it, so ground at the frame; "
    "with it open, measure against the frame"
)
