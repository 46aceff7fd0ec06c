"""Invented skies and receivers, as NMEA 0183 logs: what is true of the sky is known, so a test of it can be examined.

Nothing here is taken from the test that is examined: the open sky's curve is a straight line over the sine of the
elevation with its own slope in each world, satellites differ, receivers hear one system better than another, signals
fade, some satellites are out of service, some stand behind a tree.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random

from tests.samples.nmea import gga, gsv, rmc, sentence

HEARD_FROM_DBHZ = 20.0
SYSTEMS = {"GP": 0, "GL": 64, "GA": 300}


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """What is true: how many satellites, how long, and the blocked sector (from, to, up to, loss in dB), if any."""

    seed: int
    satellites: int = 14
    minutes: int = 20
    step_s: int = 20
    blocked: tuple[float, float, float, float] | None = None
    systems: tuple[str, ...] = ("GP",)
    shift_dB: float = 0.0


@dataclass(slots=True)
class _Satellite:
    talker: str
    number: int
    az_deg: float
    el_deg: float
    az_per_s: float
    el_per_s: float
    own_dB: float
    dead: bool
    fading_dB: float = field(default=0.0)


def log_lines(world: World) -> list[str]:
    """The log of a receiver at rest in that world, beginning with a position."""
    rng = Random(world.seed)
    receiver = _Receiver(rng, world)
    lines: list[str] = []
    for step in range(world.minutes * 60 // world.step_s):
        at_s = step * world.step_s
        stamp = f"{12 + at_s // 3600:02d}{at_s // 60 % 60:02d}{at_s % 60:02d}.00"
        rows = list(receiver.heard(at_s))
        used = [number for talker, (number, _, _, cn0) in rows if talker == "GP" and cn0 is not None][:12]
        place = _place(rng)
        lines.append(gga(stamp, used=max(4, len(used)), hdop="1.1", place=place))
        lines.append(sentence(f"GPGSA,A,3,{','.join(f'{n:02d}' for n in used + [0] * (12 - len(used)))},2.0,1.1,1.6"))
        for talker in world.systems:
            lines += gsv([row for name, row in rows if name == talker], talker=talker)
        lines.append(rmc(stamp, place=place))
    return lines


def _place(rng: Random) -> str:
    """48° 07' N, 11° 31' E, some metres about."""
    return f"48{7 + rng.gauss(0, 0.0008):07.4f},N,011{31 + rng.gauss(0, 0.001):07.4f},E"


class _Receiver:
    """A receiver under a sky."""

    def __init__(self, rng: Random, world: World) -> None:
        self.rng, self.world = rng, world
        self.base, self.slope = rng.uniform(33, 38), rng.uniform(4, 13)
        self.tilt, self.tilt_to = rng.uniform(0, 2.5), rng.uniform(0, 360)
        self.of_system = {talker: rng.uniform(-7, 0) for talker in world.systems}
        self.satellites = [self._satellite(index) for index in range(world.satellites)]

    def _satellite(self, index: int) -> _Satellite:
        rng = self.rng
        el_deg = rng.uniform(6, 35) if rng.random() < 0.4 else math.degrees(math.asin(rng.uniform(0.1, 1)))
        tree = rng.uniform(4, 15) if rng.random() < (0.12 if el_deg < 25 else 0.03) else 0.0
        talker = self.world.systems[index % len(self.world.systems)]
        return _Satellite(
            talker=talker,
            number=SYSTEMS[talker] + 1 + index // len(self.world.systems),
            az_deg=rng.uniform(0, 360),
            el_deg=el_deg,
            az_per_s=rng.uniform(-0.008, 0.008) / max(0.3, math.cos(math.radians(el_deg))),
            el_per_s=rng.uniform(-0.006, 0.006),
            own_dB=rng.gauss(0, 2) - tree,
            dead=rng.random() < 0.04,
        )

    def heard(self, at_s: int) -> Iterator[tuple[str, tuple[int, int, int, int | None]]]:
        """Each satellite's talker, and its number, elevation, azimuth and strength."""
        for each in self.satellites:
            az, el = (each.az_deg + each.az_per_s * at_s) % 360, min(89.0, each.el_deg + each.el_per_s * at_s)
            each.fading_dB = 0.9 * each.fading_dB + self.rng.gauss(0, 0.7)
            if el < 1:
                continue
            level = self._level_dBHz(each, az, el=el)
            strength = None if each.dead or level < HEARD_FROM_DBHZ else round(level)
            yield each.talker, (each.number, round(el), round(az) % 360, strength)

    def _level_dBHz(self, each: _Satellite, az: float, *, el: float) -> float:
        level = self.base + self.slope * math.sin(math.radians(el)) + self.world.shift_dB + self.of_system[each.talker]
        level += self.tilt * math.cos(math.radians(az - self.tilt_to)) * math.cos(math.radians(el))
        blocked = self.world.blocked
        if blocked and (az - blocked[0]) % 360 < (blocked[1] - blocked[0]) % 360 and el < blocked[2]:
            level -= blocked[3]
        return level + each.own_dB + each.fading_dB + self.rng.gauss(0, 0.7)
