"""The resistance of a ground, a joint or a lead from the millivolts across it under a known load.

The uncertainties are bounds, not spreads: every true value within them is as likely as any other, so the worst ends are
put together.
"""

from __future__ import annotations

import math

from backprobe.physics.span import Span


def drop_ohm(drop_mV: Span, *, load_A: Span) -> Span:
    """Resistance [Ω] from a drop [mV] under a load [A]: R = U / I, by the ends of both.

    The load must be above 0 at its low end; a drop below 0 counts as none.

    >>> drop_ohm(Span(95, 100, 105), load_A=Span(4.9, 5.0, 5.1)).rounded(4)
    {'low': 0.0186, 'likely': 0.02, 'high': 0.0214}
    """
    volts = [max(0.0, value / 1000.0) for value in (drop_mV.low, drop_mV.likely, drop_mV.high)]
    return Span(volts[0] / load_A.high, volts[1] / load_A.likely, volts[2] / load_A.low)


def step_ohm(supply_drop_V: Span, *, step_A: Span) -> Span:
    """Resistance [Ω] from how far the unit's supply falls when its current steps up, as from idle to transmitting.

    The battery's own volts cancel in the difference, so that a bad joint shows without a meter at it; what is found is
    the whole loop from the battery to the unit and back. Same rule and same conditions as above.

    >>> step_ohm(Span(0.18, 0.20, 0.22), step_A=Span(0.9, 1.0, 1.1)).likely
    0.2
    """
    return drop_ohm(supply_drop_V.times(1000.0), load_A=step_A)


def floor_mA(least_ohm: float, *, meter_mV: float) -> float:
    """The load [mA] from which a resistance can be told apart from nothing by a meter that is sure to `meter_mV`.

    >>> round(floor_mA(0.05, meter_mV=0.5))
    10
    """
    return math.inf if least_ohm <= 0.0 else meter_mV / least_ohm
