"""What a wire may carry for good, at another ambient temperature than that of the table."""

from __future__ import annotations

import math


def ampacity_at_A(table_A: float, *, insulation_C: float, ambient_C: float, table_ambient_C: float = 30.0) -> float:
    """A table's continuous current at `ambient_C` [A]; 0 where the surroundings are as hot as the insulation may get.

    The heat that leaves a wire is taken as proportional to how much hotter it is than its surroundings:
    I × √((insulation - ambient) / (insulation - table's ambient)). Source: the Canadian Electrical Code's Table 5A and
    the factors printed with 33 CFR 183.425 follow it; the formula itself is that of NFPA 70, 310.15, from memory.

    >>> round(ampacity_at_A(20.0, insulation_C=105, ambient_C=60), 2)
    15.49
    """
    room_K = max(0.0, insulation_C - ambient_C)
    return table_A * math.sqrt(room_K / (insulation_C - table_ambient_C))
