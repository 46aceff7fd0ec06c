"""When a fuse opens, read between the gates that its standard sets.

A standard says at a few multiples of the rating how soon a fuse may open and how late it must have opened. Between
these gates the time is read on a log-log sheet, as data sheets draw it: our own model. All that is sure between two
gates is that more current does not open a fuse later.
"""

from __future__ import annotations

import math

from backprobe.physics.interpolation import Points, log_log


def opening_s(multiple: float, gates: Points) -> float | None:
    """The time at `multiple` of the rating [s], read on `gates` (multiple, time), ascending; None below the first.

    Beyond the last gate the link melts before heat can leave it, so that I²t stays what it was there: our own model.

    >>> gates = [(1.35, 600.0), (2.0, 5.0), (3.5, 0.5)]
    >>> [opening_s(m, gates) for m in (1.2, 2.0)], round(opening_s(7.0, gates), 3)
    ([None, 5.0], 0.125)
    """
    first, last = gates[0][0], gates[-1][0]
    if multiple < first:
        return None
    if multiple > last:
        return gates[-1][1] * math.pow(last / multiple, 2)
    return log_log(multiple, gates)
