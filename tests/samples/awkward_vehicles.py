"""Vehicles as a hostile examiner makes them: the second, independent examination of the probe stage.

Nothing here looks at the engine's tables. A wire hangs on a *source* at each position of the key: the battery through
a resistance, nothing (with stray volts), a fixed level, a part of the battery (dimmed), a pull-up that no load can be
put on. A crank is a waveform in milliseconds; what a meter holds of it is worked out from that waveform. Technicians
slip: digits dropped or swapped, commas moved, probes that touch nothing, holds that were not the ones asked for.

Volts are the vehicle's own throughout: a 5 V sensor is a 5 V sensor in a 24 V vehicle too.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import accumulate

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.setup import Setup

Waveform = list[float]
STANDING = (Key.OFF, Key.ACCESSORY, Key.ON, Key.RUNNING, Key.AFTER, Key.CHARGING)
LIMIT_12_V = {"supply": 9.0, "ignition": 10.0}
ROLE_OF = {"supply": "constant", "ignition": "ignition"}
SLACK_12_V = 1.0  # a choice is unsafe when its true minimum lies further below the limit than this


@dataclass(frozen=True, slots=True)
class Source:
    """What a wire hangs on: `kind` battery, dead, fixed or part; `value` drop [V], stray volts, volts, or a share.

    A `weak` source (pull-up, sensor, bus) goes to zero under any load.
    """

    kind: str
    value: float = 0.0
    weak: bool = False

    def volts(self, battery_V: float) -> float:
        """The level of the wire while the battery stands at `battery_V`."""
        if self.kind == "battery":
            return max(0.0, battery_V - self.value)
        if self.kind == "part":
            return battery_V * self.value
        return self.value


@dataclass(slots=True)
class Wire:
    """One wire: its true role, what kind of thing it is, its source by key, and how it goes through the crank."""

    role: str
    kind: str
    sources: dict[Key, Source]
    crank: Source = Source("dead")
    sag: float = 0.0  # further drop in the crank, as a share of the battery's
    ohms: float = 0.1
    hold_min: float | None = None  # minutes that a retained feed stays live
    decay_ms: float | None = None  # a feed cut in the crank whose loads let it sink slowly
    pedal: float = 0.0  # chance that somebody stands on the pedal while it is read
    marks: str = ""
    circuit: str = ""


@dataclass(slots=True)
class Vehicle:
    """A vehicle: battery level by key [V], the battery's drop in the crank by millisecond [V], wires by name."""

    rng: random.Random
    system_V: int
    battery_V: dict[Key, float]
    crank_drops: Waveform
    has_crank: bool
    has_accessory: bool
    wires: dict[str, Wire] = field(default_factory=dict)

    @property
    def scale(self) -> float:
        """1 in a 12 V vehicle, 2 in a 24 V vehicle."""
        return self.system_V / 12.0

    def level(self, name: str, key: Key, minutes: float = 10.0) -> float:
        """The standing level of a wire [V]; `minutes` since key-off at `after`."""
        wire = self.wires[name]
        source = wire.sources[key]
        if key is Key.AFTER and wire.hold_min is not None and minutes < wire.hold_min:
            source = wire.sources[Key.OFF]
        return source.volts(self.battery_V[key])

    def crank_wave(self, name: str, depth: float = 1.0) -> Waveform:
        """The wire's level by millisecond while the starter turns; `depth` scales the battery's drop."""
        wire, on_V = self.wires[name], self.battery_V[Key.ON]
        if wire.decay_ms is not None:
            start = self.level(name, Key.ON)
            return [start * math.exp(-ms / wire.decay_ms) for ms in range(len(self.crank_drops))]
        factor = depth * (1.0 + wire.sag)
        return [wire.crank.volts(on_V - factor * drop) for drop in self.crank_drops]

    def crank_min(self, name: str) -> float:
        """The true minimum of a wire in the crank [V]."""
        return min(self.crank_wave(name))

    def is_unsafe(self, name: str, slot: str, minutes: float) -> bool:
        """Whether choosing this wire for `slot` is unsafe though a voltmeter can tell."""
        wire = self.wires[name]
        if wire.circuit or wire.marks:
            return True
        if wire.role != ROLE_OF[slot] and not self.mimics(name, slot, minutes):
            return True
        return self.has_crank and self.crank_min(name) < (LIMIT_12_V[slot] - SLACK_12_V) * self.scale - 1e-9

    def is_fit(self, name: str, slot: str) -> bool:
        """Whether a wire is of the right role and stays within its limit in the crank."""
        wire = self.wires[name]
        if wire.role != ROLE_OF[slot] or wire.circuit or wire.marks:
            return False
        return not self.has_crank or self.crank_min(name) >= LIMIT_12_V[slot] * self.scale

    def has_fit_pair(self) -> bool:
        """Whether there is a fit wire for either slot."""
        return all(any(self.is_fit(name, slot) for name in self.wires) for slot in ROLE_OF)

    def mimics(self, name: str, slot: str, minutes: float) -> bool:
        """Whether no voltmeter can tell this wire from one of the slot's role, at any position that the slot is about.

        A supply's are all but the charger; an ignition's are the table's five, without a crank also after and charger.
        """
        near = 0.6 * self.scale
        live = {key: self.level(name, key, minutes) >= self.battery_V[key] - near for key in STANDING}
        dead = {key: self.level(name, key, minutes) <= self.scale for key in STANDING}
        through = not self.has_crank or self.crank_min(name) >= self.battery_V[Key.ON] - near - 1.7 * max(
            self.crank_drops
        )
        if self.wires[name].pedal and slot == "ignition":
            return True  # a foot on the pedal at on and running alone: nothing but the circuit's name can tell
        if self.wires[name].pedal or not through:
            return False
        keys = [key for key in STANDING if self.has_accessory or key is not Key.ACCESSORY]
        keys = [key for key in keys if key is not Key.CHARGING or not self.has_crank]
        if slot == "supply":
            return all(live[key] for key in keys if key is not Key.CHARGING)
        lives = (Key.ON, Key.RUNNING)
        keys = [key for key in keys if key is not Key.AFTER or not self.has_crank]
        return all(live[key] if key in lives else dead[key] for key in keys)


def crank_drops(rng: random.Random, *, scale: float) -> Waveform:
    """One crank by millisecond [V]: inrush trough, then a plateau with the pistons' ripple, eased as speed comes."""
    plateau = math.exp(rng.uniform(math.log(0.6), math.log(3.8)))
    trough = plateau * rng.triangular(1.05, 1.9, 1.4)
    fall, stay, back = rng.uniform(1, 8), rng.uniform(5, 25), rng.uniform(15, 80)
    ripple, hz, phase = plateau * rng.uniform(0.03, 0.3), rng.uniform(4, 25), rng.uniform(0, 2 * math.pi)
    wave = []
    for ms in range(rng.randrange(450, 1200)):
        base = plateau * (1.0 - 0.15 * min(1.0, ms / 800)) + ripple * math.sin(2 * math.pi * hz * ms / 1000 + phase)
        if ms < fall:
            drop = trough * ms / fall
        elif ms < fall + stay:
            drop = trough
        else:
            drop = base + (trough - base) * math.exp(-(ms - fall - stay) / back * 2.0)
        wave.append(max(0.0, drop) * scale)
    return wave


def make_vehicle(
    rng: random.Random,
    *,
    system_V: int = 12,
    wires: int | None = None,
    has_crank: bool = True,
    has_accessory: bool = True,
    declared: float = 0.1,
) -> Vehicle:
    """A vehicle with 4-14 wires: a constant, an ignition and others; `declared` is the share of labelled wires."""
    scale = system_V / 12.0
    rest = rng.triangular(11.8, 12.95, 12.5)
    surface = rng.choice([0.0, rng.uniform(0.0, 0.4)])
    charge = rng.uniform(12.5, 15.0) if rng.random() < 0.12 else rng.uniform(13.3, 14.7)
    levels = {
        Key.OFF: rest + surface,
        Key.ACCESSORY: rest - rng.uniform(0.0, 0.15),
        Key.ON: rest - rng.uniform(0.0, 0.6) if has_crank else rng.choice([rest - 0.2, charge]),
        Key.RUNNING: charge,
        Key.AFTER: rest + rng.uniform(-0.05, 0.1),
        Key.CHARGING: rng.uniform(13.0, 14.6),
    }
    battery = {key: volts * scale for key, volts in levels.items()}
    vehicle = Vehicle(rng, system_V, battery, crank_drops(rng, scale=scale), has_crank, has_accessory)
    kinds = [kind for kind in KINDS if kind.suits(vehicle)]
    picked = rng.choices(kinds, [kind.weight for kind in kinds], k=(wires or rng.randint(4, 14)) - 2)
    by_name = {kind.name: kind for kind in KINDS}
    constant = "sagging battery feed" if rng.random() < 0.25 else "battery feed"
    picked += [by_name[constant], by_name["ignition feed"]]
    rng.shuffle(picked)
    for i, kind in enumerate(picked):
        wire = kind.make(vehicle)
        wire.kind = kind.name
        if rng.random() < declared and wire.role not in ("constant", "ignition"):
            wire.circuit, wire.marks = rng.choice([("ABS pump", ""), ("", "yellow"), ("starter relay", "")])
        vehicle.wires[f"w{i}"] = wire
    return vehicle


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of wire: its name, how often it is met, how it is made, and the vehicles it is met in."""

    name: str
    weight: float
    make: Callable[[Vehicle], Wire]
    needs_24_V: bool = False
    needs_accessory: bool = False
    needs_crank: bool = False

    def suits(self, vehicle: Vehicle) -> bool:
        """Whether this kind of wire is met in such a vehicle."""
        return (
            (vehicle.system_V == 24 or not self.needs_24_V)
            and (vehicle.has_accessory or not self.needs_accessory)
            and (vehicle.has_crank or not self.needs_crank)
        )


def stray(vehicle: Vehicle) -> Source:
    """A dead wire: mostly nothing, at times stray volts up to 2 V on a meter of 10 MΩ."""
    rng = vehicle.rng
    if rng.random() < 0.8:
        return Source("dead", abs(rng.gauss(0.0, 0.02)), weak=True)
    return Source("dead", rng.choice([rng.uniform(0.0, 0.5), rng.uniform(0.0, 2.0)]), weak=True)


def feed(vehicle: Vehicle, most_drop: float = 0.3) -> Source:
    """Battery level less what is lost on the way."""
    return Source("battery", vehicle.rng.uniform(0.0, most_drop) ** 2 / most_drop * vehicle.scale)


def switched(vehicle: Vehicle, live: tuple[Key, ...], *, source: Source | None = None) -> dict[Key, Source]:
    """Sources by key: live at some positions, dead at the others."""
    on = source or feed(vehicle)
    return {key: on if key in live else stray(vehicle) for key in STANDING}


def battery_feed(vehicle: Vehicle) -> Wire:
    """A constant, straight from the battery or the body fuse box."""
    on = feed(vehicle, 0.2)
    return Wire("constant", "", dict.fromkeys(STANDING, on), on, ohms=vehicle.rng.uniform(0.02, 0.15))


def sagging_battery_feed(vehicle: Vehicle) -> Wire:
    """A constant whose fuse box drops with everything else on it in the crank."""
    wire = battery_feed(vehicle)
    wire.sag = vehicle.rng.uniform(0.1, 0.9)
    return wire


def ignition_feed(vehicle: Vehicle) -> Wire:
    """An ignition that stays true through the crank, over a switch or relay that costs some volts."""
    on = feed(vehicle, 0.5)
    wire = Wire("ignition", "", switched(vehicle, (Key.ON, Key.RUNNING), source=on), on)
    if vehicle.rng.random() < 0.3:
        wire.sag = vehicle.rng.uniform(0.0, 0.6)  # dips to 9.5 V and the like
    return wire


def ignition_in_ready(vehicle: Vehicle) -> Wire:
    """In an electric vehicle: live in on and READY."""
    return Wire("ignition", "", switched(vehicle, (Key.ON, Key.RUNNING)))


def shed_in_crank(vehicle: Vehicle) -> Wire:
    """Live in on and running, cut while the starter turns; some sink slowly over the loads on them."""
    wire = Wire("ignition_not_in_crank", "", switched(vehicle, (Key.ON, Key.RUNNING)), stray(vehicle))
    if vehicle.rng.random() < 0.4:
        wire.decay_ms = math.exp(vehicle.rng.uniform(math.log(10), math.log(400)))
    return wire


def radio_feed(vehicle: Vehicle) -> Wire:
    """An accessory feed, dead in the crank."""
    live = (Key.ACCESSORY, Key.ON, Key.RUNNING)
    return Wire("accessory", "", switched(vehicle, live), stray(vehicle))


def socket_through_crank(vehicle: Vehicle) -> Wire:
    """An accessory socket that nobody cuts in the crank: live in accessory all the same."""
    wire = radio_feed(vehicle)
    wire.crank = wire.sources[Key.ON]
    return wire


def starter_solenoid(vehicle: Vehicle) -> Wire:
    """Live only while the starter turns; some are watched by a module that holds a volt or two on them."""
    wire = Wire("start", "", switched(vehicle, ()), feed(vehicle, 0.5))
    if vehicle.rng.random() < 0.2:
        watched = Source("fixed", vehicle.rng.uniform(0.5, 5.0), weak=True)
        wire.sources.update({Key.ON: watched, Key.RUNNING: watched})
    return wire


def retained_feed(vehicle: Vehicle) -> Wire:
    """Windows and radio: live until minutes after key-off; some holds outlast ten minutes."""
    rng = vehicle.rng
    wire = Wire("retained", "", switched(vehicle, (Key.OFF, Key.ACCESSORY, Key.ON, Key.RUNNING)), stray(vehicle))
    wire.hold_min = rng.uniform(11.0, 28.0) if rng.random() < 0.15 else rng.uniform(1.2, 9.8)
    if rng.random() < 0.5:
        wire.crank = wire.sources[Key.ON]
    return wire


def main_relay(vehicle: Vehicle) -> Wire:
    """A relay that an engine module holds for minutes after key-off; dead in accessory when the key comes back."""
    wire = Wire("retained", "", switched(vehicle, (Key.OFF, Key.ON, Key.RUNNING)), stray(vehicle))
    wire.hold_min = vehicle.rng.uniform(1.2, 9.0)
    wire.crank = wire.sources[Key.ON]
    return wire


def alternator_lamp(vehicle: Vehicle) -> Wire:
    """Live with the engine running; a lamp or exciter holds a volt or two on it before."""
    wire = Wire("running_only", "", switched(vehicle, (Key.RUNNING,)), stray(vehicle))
    if vehicle.rng.random() < 0.5:
        wire.sources[Key.ON] = wire.crank = Source("fixed", vehicle.rng.uniform(0.5, 2.5), weak=True)
    return wire


def engine_pump(vehicle: Vehicle) -> Wire:
    """A pump relay: dead in on once its first two seconds are over, live while the engine turns."""
    wire = Wire("running_only", "", switched(vehicle, (Key.RUNNING,)))
    wire.crank = wire.sources[Key.RUNNING]
    return wire


def dimmed_lamps(vehicle: Vehicle) -> Wire:
    """Panel lighting: the mean of a pulsed feed at the positions where it is lit."""
    rng = vehicle.rng
    part = Source("part", rng.uniform(0.1, 0.95))
    lit = [key for key in STANDING if rng.random() < (0.3 if key in (Key.OFF, Key.AFTER) else 0.75)]
    return Wire("lighting", "", switched(vehicle, tuple(lit), source=part), rng.choice([part, stray(vehicle)]))


def side_lamps(vehicle: Vehicle) -> Wire:
    """Lamps on a hand switch that somebody turned on at some of the positions."""
    rng = vehicle.rng
    lit = tuple(key for key in STANDING if rng.random() < 0.6 and (key is not Key.AFTER or rng.random() < 0.3))
    wire = Wire("lighting", "", switched(vehicle, lit), stray(vehicle))
    if rng.random() < 0.5:
        wire.crank = feed(vehicle)
    return wire


def daytime_lamps(vehicle: Vehicle) -> Wire:
    """Lamps that burn by themselves in on and running, or only once the engine runs; most go out in the crank."""
    rng = vehicle.rng
    live = rng.choice([(Key.ON, Key.RUNNING), (Key.RUNNING,)])
    wire = Wire("lighting", "", switched(vehicle, live), stray(vehicle))
    if rng.random() < 0.15:
        wire.crank = feed(vehicle)
    return wire


def brake_lamps(vehicle: Vehicle) -> Wire:
    """Live whenever somebody stands on the pedal, key or no key."""
    wire = Wire("lighting", "", switched(vehicle, ()), stray(vehicle), pedal=0.25)
    if vehicle.rng.random() < 0.4:
        wire.crank = feed(vehicle)  # a foot on the pedal to start
    return wire


def sensor(vehicle: Vehicle) -> Wire:
    """A sensor or its 5 V reference."""
    rng = vehicle.rng
    awake = Source("fixed", rng.choice([5.0, rng.uniform(0.3, 5.2)]), weak=True)
    live = (Key.ON, Key.RUNNING) if rng.random() < 0.7 else STANDING
    return Wire("signal", "", switched(vehicle, live, source=awake), awake)


def two_wire_bus(vehicle: Vehicle) -> Wire:
    """One half of a bus: about 2.5 V awake, nothing or 2.5 V asleep."""
    rng = vehicle.rng
    awake = Source("fixed", rng.uniform(2.2, 2.9), weak=True)
    live = tuple(key for key in STANDING if key is not Key.AFTER or rng.random() < 0.2)
    return Wire("signal", "", switched(vehicle, live, source=awake), awake)


def one_wire_bus(vehicle: Vehicle) -> Wire:
    """A one-wire bus: rests 0.5-1.4 V under the battery, lower on average when it talks; asleep it rests or is off."""
    rng = vehicle.rng
    rest = Source("battery", rng.uniform(0.5, 1.4) * vehicle.scale, weak=True)
    talk = Source("part", rng.uniform(0.7, 0.93), weak=True)
    sources = {key: talk if key in (Key.ON, Key.RUNNING) and rng.random() < 0.7 else rest for key in STANDING}
    if rng.random() < 0.4:
        sources[Key.AFTER] = stray(vehicle)
    return Wire("signal", "", sources, rng.choice([rest, talk]))


def door_switch(vehicle: Vehicle) -> Wire:
    """A switch input pulled up by its module: near battery level while open, 0 V closed, asleep it is let go."""
    rng = vehicle.rng
    pulled = Source("battery", rng.uniform(0.0, 1.2) * vehicle.scale, weak=True)
    sources = {key: pulled if rng.random() < 0.85 else stray(vehicle) for key in STANDING}
    asleep = rng.random()
    if asleep < 0.7:
        sources[Key.AFTER] = stray(vehicle) if asleep < 0.4 else Source("part", rng.uniform(0.02, 0.5), weak=True)
    return Wire("signal", "", sources, rng.choice([pulled, pulled, stray(vehicle)]))


def switched_ground(vehicle: Vehicle) -> Wire:
    """The low side of a coil or lamp: battery level while it is off, near 0 V while it is driven."""
    rng = vehicle.rng
    rest = feed(vehicle)
    sources = {key: rest if rng.random() < 0.6 else Source("fixed", rng.uniform(0.02, 0.9)) for key in STANDING}
    return Wire("signal", "", sources, rng.choice([rest, Source("fixed", 0.2)]))


def ground_or_spare(vehicle: Vehicle) -> Wire:
    """A ground, or an open end that shows stray volts."""
    return Wire("no_supply", "", switched(vehicle, ()), stray(vehicle))


def converter(vehicle: Vehicle) -> Wire:
    """The 12 V side of a converter in a 24 V vehicle: steady, switched or not, through the crank or not."""
    rng = vehicle.rng
    steady = Source("fixed", rng.uniform(11.8, 13.9))
    live = rng.choice([STANDING, (Key.ON, Key.RUNNING), (Key.ACCESSORY, Key.ON, Key.RUNNING)])
    return Wire("unknown", "", switched(vehicle, live, source=steady), rng.choice([steady, stray(vehicle)]))


def centre_tap(vehicle: Vehicle) -> Wire:
    """The tap between two batteries: half of everything, not quite balanced."""
    half = Source("part", vehicle.rng.uniform(0.48, 0.53))
    return Wire("unknown", "", dict.fromkeys(STANDING, half), half)


def ignition(vehicle: Vehicle) -> Wire:
    """An ignition of the kind that the vehicle has."""
    return ignition_feed(vehicle) if vehicle.has_crank else ignition_in_ready(vehicle)


KINDS = (
    Kind("battery feed", 0.16, battery_feed),
    Kind("sagging battery feed", 0.05, sagging_battery_feed),
    Kind("ignition feed", 0.14, ignition),
    Kind("shed in the crank", 0.09, shed_in_crank, needs_crank=True),
    Kind("radio feed", 0.09, radio_feed, needs_accessory=True),
    Kind("socket through the crank", 0.02, socket_through_crank, needs_accessory=True, needs_crank=True),
    Kind("starter solenoid", 0.04, starter_solenoid, needs_crank=True),
    Kind("retained feed", 0.07, retained_feed),
    Kind("main relay", 0.02, main_relay),
    Kind("alternator lamp", 0.03, alternator_lamp),
    Kind("engine pump", 0.02, engine_pump, needs_crank=True),
    Kind("dimmed lamps", 0.03, dimmed_lamps),
    Kind("side lamps", 0.04, side_lamps),
    Kind("daytime lamps", 0.02, daytime_lamps),
    Kind("brake lamps", 0.02, brake_lamps),
    Kind("sensor", 0.03, sensor),
    Kind("two-wire bus", 0.02, two_wire_bus),
    Kind("one-wire bus", 0.02, one_wire_bus),
    Kind("door switch", 0.03, door_switch),
    Kind("switched ground", 0.02, switched_ground),
    Kind("ground or spare", 0.04, ground_or_spare),
    Kind("converter", 0.05, converter, needs_24_V=True),
    Kind("centre tap", 0.02, centre_tap, needs_24_V=True),
)


@dataclass(slots=True)
class Technician:
    """Reads what was asked for, in its own way.

    `gives` maps a capture asked for to the one that comes back; `minutes` is when 'after' is read; `loads` is the
    share of readings taken under a load; `slips` of figures written wrongly; `misses` of touches without contact;
    `late_holds` of holds armed only when the starter already turned; `decimals` is what the meter shows.
    """

    vehicle: Vehicle
    setup: Setup
    gives: dict[Capture, Capture] = field(default_factory=dict)
    minutes: float = 10.0
    loads: float = 0.0
    slips: float = 0.0
    misses: float = 0.0
    late_holds: float = 0.1
    decimals: int = 2

    def row(self, name: str, key: Key, capture: Capture, *, under_lamp: bool = False) -> str:
        """One row of the table, as it is written down: wire,key,volts,capture,after_min,load_A,circuit,marks."""
        rng, wire = self.vehicle.rng, self.vehicle.wires[name]
        capture = self.gives.get(capture, capture)
        load_A = rng.uniform(1.0, 2.0) if key is not Key.CRANK and (under_lamp or rng.random() < self.loads) else 0.0
        volts = self._volts(name, key, capture, load_A)
        if rng.random() < self.misses:
            volts = min(volts, abs(rng.gauss(0.0, 0.05)))
        meter = self.setup.meter
        count = 10.0**-self.decimals
        shown = volts + rng.uniform(-1, 1) * (abs(volts) * meter.percent / 100 + meter.counts * count)
        typed = f"{max(0.0, shown):.{self.decimals}f}"
        if rng.random() < self.slips:
            typed = slip(rng, typed)
        minutes = f"{self.minutes:g}" if key is Key.AFTER else ""
        load = f"{load_A:.1f}" if load_A else ""
        return f"{name},{key},{typed},{capture},{minutes},{load},{wire.circuit},{wire.marks}"

    def _volts(self, name: str, key: Key, capture: Capture, load_A: float) -> float:
        vehicle, wire = self.vehicle, self.vehicle.wires[name]
        if key is Key.CRANK:
            return self._held(name, capture)
        battery = vehicle.battery_V[key] + vehicle.rng.gauss(0.0, 0.03) * vehicle.scale
        if vehicle.rng.random() < wire.pedal:
            return battery - 0.1
        source = wire.sources[key]
        if key is Key.AFTER and wire.hold_min is not None and self.minutes < wire.hold_min:
            source = wire.sources[Key.OFF]
        volts = source.volts(battery)
        if load_A:
            volts = 0.05 if source.weak else max(0.0, volts - load_A * wire.ohms * (volts > 1.0))
        return volts

    def _held(self, name: str, capture: Capture) -> float:
        """What the meter keeps of a crank: a hold stands from before it until the engine runs, or is armed late."""
        vehicle, rng = self.vehicle, self.vehicle.rng
        before = vehicle.level(name, Key.ON)
        wave = vehicle.crank_wave(name, depth=max(0.9, rng.gauss(1.0, 0.03)))
        if capture is Capture.LOGGED:
            return min(before, *wave)
        window = 333 if capture is Capture.DISPLAY else max(1, round(self.setup.meter.min_capture_ms))
        if rng.random() >= self.late_holds or capture is Capture.DISPLAY:
            wave = [before] * rng.randrange(window, 2 * window + 1) + wave
        sums = [0.0, *accumulate(wave)]
        means = [(sums[i + window] - sums[i]) / window for i in range(0, len(wave) - window + 1, window)]
        if capture is Capture.DISPLAY:
            return rng.choice(means[1:] or means)
        return max(means) if capture is Capture.MAX else min(means)


def slip(rng: random.Random, typed: str) -> str:
    """A figure written wrongly: a digit dropped, two neighbours swapped, the comma moved; it may be past reading."""
    whole, _, part = typed.partition(".")
    digits = list(whole + part)
    kind = rng.randrange(3)
    if kind == 0:
        del digits[rng.randrange(len(digits))]
        at = len(whole) if rng.random() < 0.5 else len(whole) - 1
    elif kind == 1:
        i = rng.randrange(len(digits) - 1)
        digits[i], digits[i + 1] = digits[i + 1], digits[i]
        at = len(whole)
    else:
        at = len(whole) + rng.choice([-1, 1])
    text = "".join(digits)
    at = max(0, min(len(text), at))
    return f"{text[:at] or '0'}.{text[at:]}".rstrip(".")
