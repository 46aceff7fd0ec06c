"""Invented vehicles whose wires are known, and a meter that reads them: the examination of the probe stage.

The vehicles are made without a look at the engine's own tables: a battery with a rest level, a crank with an
inrush trough, a plateau with ripple and a recovery, loads that drop what a switch feeds. Lighting and signal wires
are made nasty on purpose: they may stand at battery level at any position of the key by chance.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, field

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading, ReadingsTable
from backprobe.stages.probe.setup import Setup

BASIC = Meter(name="basic", percent=0.5, counts=2.0)
MIX = {
    "constant": 0.22,
    "ignition": 0.15,
    "ignition_not_in_crank": 0.1,
    "accessory": 0.12,
    "start": 0.05,
    "retained": 0.08,
    "running_only": 0.05,
    "lighting": 0.08,
    "signal": 0.1,
    "no_supply": 0.05,
}
TABLE_KEYS = (Key.OFF, Key.ACCESSORY, Key.ON, Key.CRANK, Key.RUNNING)


@dataclass
class Wire:
    """A wire with its true role, its own drop under load, and a fixed level by key where the role has a choice."""

    role: str
    drop_V: float
    fixed: dict[Key, float] = field(default_factory=dict)
    crank_live: bool = False


@dataclass
class Vehicle:
    """A vehicle: rest and charging level, one crank as drops by millisecond, and its wires by name (12 V scale)."""

    rng: random.Random
    scale: float
    rest_V: float
    charge_V: float
    crank_drops: list[float]
    wires: dict[str, Wire]

    def lowest_V(self, name: str) -> float:
        """The true minimum of a wire in the crank [V at the vehicle's own system voltage]."""
        wire = self.wires[name]
        return (self.rest_V - wire.drop_V - max(self.crank_drops)) * self.scale

    def level(self, name: str, key: Key) -> float:
        """The standing level of a wire at a key position but the crank (12 V scale)."""
        wire = self.wires[name]
        if key in wire.fixed:
            return wire.fixed[key]
        battery = (self.charge_V if key is Key.RUNNING else self.rest_V) - wire.drop_V
        live = {
            "constant": set(Key),
            "ignition": {Key.ON, Key.RUNNING},
            "ignition_not_in_crank": {Key.ON, Key.RUNNING},
            "accessory": {Key.ACCESSORY, Key.ON, Key.RUNNING},
            "retained": {Key.OFF, Key.ACCESSORY, Key.ON, Key.RUNNING},
            "running_only": {Key.RUNNING},
        }.get(wire.role, set())
        return battery if key in live else 0.0


LIVE_IN_CRANK = {"constant", "ignition", "start"}


def crank_drops(rng: random.Random) -> list[float]:
    """One crank: the battery's drop at each millisecond for 0.7 s, worst first."""
    plateau = rng.uniform(1.0, 3.6)
    ratio = rng.triangular(1.1, 1.8, 1.4)
    fall, hold, recover = rng.uniform(3, 8), rng.uniform(8, 20), rng.uniform(40, 70)
    ripple, hz, phase = plateau * rng.uniform(0.08, 0.25), rng.uniform(2, 25), rng.uniform(0, 2 * math.pi)
    drops = []
    for ms in range(700):
        base = plateau + ripple * math.sin(2 * math.pi * hz * ms / 1000 + phase)
        peak = plateau * ratio
        if ms < fall:
            drops.append(peak * ms / fall)
        elif ms < fall + hold:
            drops.append(peak)
        else:
            part = min(1.0, (ms - fall - hold) / recover)
            drops.append(peak + (base - peak) * part)
    return drops


def make_vehicle(rng: random.Random, *, system_V: int = 12, wires: int | None = None) -> Vehicle:
    """A vehicle with 4-14 wires: a constant, an ignition and others of random roles."""
    rest = rng.uniform(12.0, 12.9)
    vehicle = Vehicle(rng, system_V / 12.0, rest, rng.uniform(13.5, 14.6), crank_drops(rng), {})
    others = rng.choices(list(MIX), list(MIX.values()), k=(wires or rng.randint(4, 14)) - 2)
    roles = ["constant", "ignition", *others]
    rng.shuffle(roles)
    for i, role in enumerate(roles):
        vehicle.wires[f"w{i}"] = _make_wire(rng, role, vehicle)
    return vehicle


def _make_wire(rng: random.Random, role: str, vehicle: Vehicle) -> Wire:
    wire = Wire(role, max(0.0, rng.gauss(0.05, 0.08)) + (rng.uniform(0, 0.4) if role != "constant" else 0.0))
    keys = [key for key in Key if key is not Key.CRANK]
    if role == "lighting":
        kind = rng.choice(["dimmed", "on", "erratic", "drl"])
        for key in keys:
            battery = (vehicle.charge_V if key is Key.RUNNING else vehicle.rest_V) - wire.drop_V
            wire.fixed[key] = {
                "dimmed": battery * rng.uniform(0.2, 0.8),
                "on": battery if key is not Key.AFTER else 0.0,
                "erratic": rng.choice([0.0, battery, battery * rng.uniform(0.2, 0.8)]),
                "drl": battery if key in (Key.ON, Key.RUNNING) else 0.0,
            }[kind]
        wire.crank_live = kind != "drl" and rng.random() < 0.6
        if wire.crank_live and mimics(wire):
            return _make_wire(rng, role, vehicle)
    if role == "signal":
        wire.crank_live = rng.random() < 0.6
        kind = rng.choice(["mid", "mid", "rest"])
        for key in keys:
            battery = vehicle.charge_V if key is Key.RUNNING else vehicle.rest_V
            wire.fixed[key] = rng.uniform(0.3, 5.5) if kind == "mid" else battery - rng.uniform(0.0, 1.5)
            if kind == "rest" and rng.random() < 0.35:
                wire.fixed[key] = rng.choice([0.0, rng.uniform(0.3, 5.5), battery * rng.uniform(0.4, 0.8)])
    return wire


def mimics(wire: Wire) -> bool:
    """Whether no voltmeter can tell this wire from a constant or an ignition at the positions of a full table."""
    live = tuple(wire.fixed[key] > 10.5 for key in (Key.OFF, Key.ACCESSORY, Key.ON, Key.RUNNING))
    return live == (False, False, True, True) or (all(live) and wire.fixed[Key.AFTER] > 10.5)


@dataclass
class Technician:
    """Reads wires as asked, with a meter's accuracy, and at times writes a figure down wrongly."""

    vehicle: Vehicle
    setup: Setup
    typo_share: float = 0.0

    def read(self, name: str, key: Key, capture: Capture) -> Reading:
        """One reading off the display or a hold."""
        volts = self._true_volts(name, key, capture) * self.vehicle.scale
        rng, meter = self.vehicle.rng, self.setup.meter
        volts += rng.uniform(-1, 1) * (abs(volts) * meter.percent / 100 + meter.counts * 0.01)
        typed = f"{max(0.0, volts):.2f}"
        if rng.random() < self.typo_share:
            typed = mistype(rng, typed)
        after = 10.0 if key is Key.AFTER else None
        return Reading(
            wire=name, key=key, volts=float(typed), typed=typed, count_V=0.01, capture=capture, after_min=after
        )

    def _true_volts(self, name: str, key: Key, capture: Capture) -> float:
        vehicle = self.vehicle
        if key is not Key.CRANK:
            level = vehicle.level(name, key)
            return level if level else abs(vehicle.rng.gauss(0, 0.02)) + (vehicle.rng.random() < 0.08) * 0.4
        wire = vehicle.wires[name]
        live = wire.role in LIVE_IN_CRANK or (wire.role == "retained" and int(name[1:]) % 2)
        if wire.role in ("lighting", "signal"):
            live = wire.crank_live and wire.fixed[Key.ON] > 10.5
        if not live:
            return wire.fixed.get(Key.ON, 0.0) * 0.5 if wire.role == "signal" else 0.0
        drops = [drop + wire.drop_V for drop in vehicle.crank_drops]
        if capture is Capture.MAX:
            return vehicle.rest_V
        if capture is Capture.MIN and wire.role == "start":
            return 0.0
        if capture is Capture.LOGGED:
            return vehicle.rest_V - max(drops)
        window = 100 if capture is Capture.MIN else 300
        padded = [wire.drop_V] * vehicle.rng.randrange(window) + drops
        means = [math.fsum(padded[i : i + window]) / window for i in range(0, len(padded) - window + 1, window)]
        return vehicle.rest_V - (max(means) if capture is Capture.MIN else vehicle.rng.choice(means))


def mistype(rng: random.Random, typed: str) -> str:
    """A figure written down wrongly: a digit dropped, two swapped, the point in the wrong place."""
    kind = rng.randrange(3)
    digits = list(typed)
    if kind == 0 and len(digits) > 3:
        del digits[rng.randrange(len(digits) - 3)]
    elif kind == 1 and "." in digits:
        at = digits.index(".")
        digits[at], digits[at - 1] = digits[at - 1], digits[at]
    elif len(digits) > 3:
        digits[0], digits[1] = digits[1], digits[0]
    text = "".join(digits)
    try:
        return text if 0.0 <= float(text) <= 18.0 else typed
    except ValueError:
        return typed


def table_of(readings: list[Reading], declared: tuple[str, ...] = ()) -> ReadingsTable:
    """A readings table of these readings, with wires declared before the first reading."""
    names = dict.fromkeys([*declared, *(reading.wire for reading in readings)])
    return ReadingsTable(readings=tuple(readings), wires=tuple(names))
