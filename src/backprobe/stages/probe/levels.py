"""How likely a meter shows a value when the wire is at a certain kind of level.

Densities are per volt in a 12 V system; a 24 V system is looked at through `scale`: its volts are halved. Widths
are common practice put into numbers (no source). The meter's own standard uncertainty is added in quadrature.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.roles import Level

MISTYPED_SHARE = 0.01  # figures written down wrongly, or read off another wire
LEAST_V, MOST_V = -0.5, 18.0


@dataclass(frozen=True, slots=True)
class Bell:
    """A normal distribution with a flat part for the odd vehicle: centre, width [V], flat range and its share.

    Nothing lies above `most_V`.
    """

    centre_V: float
    width_V: float
    flat_from_V: float
    flat_to_V: float
    flat_share: float
    most_V: float = math.inf

    def density(self, volts: float, extra_V: float) -> float:
        """Probability per volt at `volts`, the width grown by the meter's `extra_V`."""
        if volts > self.most_V:
            return 0.0
        width = math.hypot(self.width_V, extra_V)
        bell = math.exp(-0.5 * ((volts - self.centre_V) / width) ** 2) / (width * math.sqrt(2.0 * math.pi))
        return (1.0 - self.flat_share) * bell + self.flat_share * flat(volts, self.flat_from_V, to_V=self.flat_to_V)


_REST = Bell(12.5, 0.4, 10.5, 13.6, 0.10)
_READY_OR_REST = Bell(13.2, 0.8, 11.0, 15.4, 0.20)  # key on without an engine: the converter may charge already
_CHARGING = Bell(14.0, 0.4, 12.2, 15.4, 0.15)
_CRANK = {
    Capture.DISPLAY: Bell(10.8, 0.8, 6.5, 12.6, 0.20),
    Capture.MIN: Bell(10.2, 0.9, 5.0, 12.4, 0.20),
    Capture.LOGGED: Bell(9.7, 1.1, 4.0, 12.4, 0.20),
    Capture.MAX: Bell(12.3, 0.5, 8.0, 14.8, 0.20),
}
_RANGES = {Level.PULSED: (1.0, 11.6), Level.ANYTHING: (LEAST_V, MOST_V)}
SIGNAL_V = (0.3, 5.5)  # real volts: a sensor's 5 V are 5 V in a 24 V vehicle too
UNDER_V, UNDER_WIDTH_V = 0.6, 0.4  # how far a pulled-up line rests under the battery
STARTER_V = 0.3  # a starter that turns pulls the battery down by this at least (12 V system); our own estimate
STRAY_V = 2.2  # the most that a meter of 10 MΩ shows on a dead wire; common practice, no source
LOAD_V = 0.15  # what a feed gives way under a load of an ampere or two
POOR_FEED_V = 5.0  # how much further a thin or corroded one may give way


def flat(volts: float, from_V: float, *, to_V: float) -> float:
    """The density of a value that may lie anywhere in a range."""
    return 1.0 / (to_V - from_V) if from_V <= volts <= to_V else 0.0


def battery(key: Key, capture: Capture, *, has_crank: bool = True) -> Bell:
    """Where the battery stands at a key position."""
    if key is Key.CRANK:
        return _CRANK[capture]
    if key is Key.ON and not has_crank:
        return _READY_OR_REST
    return _CHARGING if key in (Key.RUNNING, Key.CHARGING) else _REST


def beside(bell: Bell, reference_V: float | None) -> Bell:
    """The battery's distribution once other live wires were read at the same position and capture."""
    if reference_V is None:
        return bell
    width = min(bell.width_V, 0.25)
    return Bell(reference_V, width, bell.flat_from_V, bell.flat_to_V, 0.06)


def zero_density(volts: float, extra_V: float) -> float:
    """A dead wire: near zero, at times a ghost voltage on a high-impedance meter."""
    tight = Bell(0.0, 0.04, 0.0, STRAY_V, 0.05).density(volts, extra_V)
    ghost = math.exp(-volts / 0.25) / 0.25 if volts >= 0.0 else 0.0
    return 0.88 * tight + 0.12 * ghost


def pulled_down(bell: Bell, rest_V: float | None) -> Bell:
    """The battery's distribution in a crank that came, from a rest level of `rest_V` where one was read."""
    return bell if rest_V is None else replace(bell, most_V=rest_V - STARTER_V)


def under_load(bell: Bell) -> Bell:
    """The battery's distribution at the end of a feed that carries a load."""
    width_V, from_V = math.hypot(bell.width_V, LOAD_V), bell.flat_from_V - POOR_FEED_V
    return replace(bell, centre_V=bell.centre_V - LOAD_V, width_V=width_V, flat_from_V=from_V)


def resting_density(volts: float, bell: Bell, *, extra_V: float) -> float:
    """A pulled-up line or a bus: mostly a diode's drop under the battery, at times lower."""
    from_V, to_V = bell.centre_V - 2.5, bell.centre_V + 0.2
    centre_V, width_V = bell.centre_V - UNDER_V, math.hypot(bell.width_V, UNDER_WIDTH_V)
    return Bell(centre_V, width_V, from_V, to_V, 0.25).density(volts, extra_V)


def densities(volts: float, *, bell: Bell, extra_V: float, scale: float) -> dict[Level, float]:
    """Probability per volt of showing `volts` (12 V scale) on a wire at each level; `bell` is the battery.

    `scale` is 1 in a 12 V vehicle and 2 in a 24 V vehicle.
    """
    low_V, high_V = SIGNAL_V
    found = {level: flat(volts, from_V, to_V=to_V) for level, (from_V, to_V) in _RANGES.items()}
    found[Level.SIGNAL] = flat(volts, low_V / scale, to_V=high_V / scale)
    found[Level.ZERO] = zero_density(volts, extra_V)
    found[Level.BATTERY] = bell.density(volts, extra_V)
    found[Level.RESTING] = resting_density(volts, bell, extra_V=extra_V)
    found[Level.HALF] = Bell(bell.centre_V / 2.0, 0.4, 5.0, 7.6, 0.2).density(volts, extra_V)
    return found
