"""At what current a bare copper wire melts.

Melting is the end of the wire, never a limit: long before it the insulation has gone and what lies beside it burns.
These formulas tell how much a wire can take at the very most, and serve to check others.
"""

from __future__ import annotations

import math

from backprobe.physics.wire import circular_mils

COPPER_MELTS_C = 1083.0
ONDERDONK_TO_S = 10.0


def onderdonk_A(area_mm2: float, *, time_s: float, ambient_C: float = 25.0) -> float:
    """The current that melts a copper wire in `time_s` [A], no heat leaving it; usable to about 10 s.

    I = A √(log10((Tm - Ta) / (234 + Ta) + 1) / (33 t)), A in circular mils. Source: Onderdonk, as D. Brooks quotes it
    in PCD&F. A worked example that is passed around writes 234 - Ta and so gets 5 % too much.

    >>> round(onderdonk_A(0.8230, time_s=1.0), 1)
    237.6
    """
    rise = math.log10((COPPER_MELTS_C - ambient_C) / (234.0 + ambient_C) + 1.0)
    return circular_mils(area_mm2) * math.sqrt(rise / (33.0 * time_s))


def preece_A(diameter_mm: float) -> float:
    """The current that melts a copper wire in still air, given time [A]: 10244 × d^1.5, d in inches.

    Source: Preece, as D. Brooks quotes it in PCD&F.

    >>> round(preece_A(0.0524 * 25.4))
    123
    """
    return 10244.0 * math.pow(diameter_mm / 25.4, 1.5)
