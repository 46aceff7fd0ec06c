"""Invented vehicles whose supply voltage is known at every moment, and the recordings that a logger makes of them.

The model knows nothing of how recordings are judged: a battery with an internal resistance, currents that flow through
it, a generator, a key, wires that follow the key. Figures are in V, A, Ω and s.
"""

from __future__ import annotations

import bisect
import math
import random
from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from backprobe.evidence.keys import Key
from backprobe.evidence.recording import Channel, Envelope, KeyMark, Quantity, Recording, Window
from backprobe.physics.starting_profile import StartingProfile, voltage_at

THRESHOLDS_V = (9.0, 10.0, 10.5, 18.0, 20.0, 21.0)
BUCKETS_MOST = 2048


@dataclass(frozen=True, kw_only=True)
class Turn:
    """One turn of the starter: `strokes_Hz` compressions a second, `swing` their share of the current."""

    start_s: float
    length_s: float = 0.9
    fires: bool = True
    amps: float = 250.0
    inrush_A: float = 800.0
    inrush_tau_s: float = 0.04
    strokes_Hz: float = 8.0
    swing: float = 0.3
    overrun_s: float = 0.12  # the engine runs on its own, the starter is not yet released

    @property
    def end_s(self) -> float:
        """When the starter is released."""
        return self.start_s + self.length_s

    def tired(self, time_s: float) -> float:
        """How much the battery has tired by this turn, 0 to 1: it grows during the turn and fades afterwards."""
        since = time_s - self.start_s
        if since < 0.0:
            return 0.0
        return min(1.0, self.length_s, since) * math.exp(-max(0.0, since - self.length_s) / 2.0)

    def amps_at(self, time_s: float) -> float:
        """The starter's current."""
        since = time_s - self.start_s
        if not 0.0 <= since < self.length_s:
            return 0.0
        rise = min(1.0, since / 0.004)
        inrush = (self.inrush_A - self.amps) * math.exp(-max(0.0, since - 0.012) / self.inrush_tau_s)
        settled = 1.0 - math.exp(-since / 0.08)
        ripple = self.swing * settled * math.cos(2 * math.pi * self.strokes_Hz * since)
        plain = self.amps * (1.0 + ripple) + inrush
        overrun = self.fires and since > self.length_s - self.overrun_s
        return rise * (0.45 * self.amps if overrun else plain)


@dataclass(frozen=True, kw_only=True)
class Load:
    """Something else that draws current: a heater, a lamp, a pump; `pulse_Hz` modulates a part `pulse` of it."""

    start_s: float
    end_s: float
    amps: float
    inrush_A: float = 0.0  # on top, at the beginning
    inrush_tau_s: float = 0.05
    pulse_Hz: float = 0.0
    pulse: float = 0.0
    edge_s: float = 0.001

    def amps_at(self, time_s: float) -> float:
        """The load's current."""
        since = time_s - self.start_s
        if not 0.0 <= since < self.end_s - self.start_s:
            return 0.0
        steady = self.amps * (1.0 + self.pulse * math.sin(2 * math.pi * self.pulse_Hz * since))
        return min(1.0, since / self.edge_s) * (steady + self.inrush_A * math.exp(-since / self.inrush_tau_s))


@dataclass(frozen=True, kw_only=True)
class Vehicle:
    """A vehicle and what its driver does. `stops` are times at which the engine stops (a stall, a stop at a light)."""

    system_V: int = 12
    rest_V: float = 12.6
    inner_ohm: float = 0.007
    charge_V: float = 14.1
    charge_delay_s: float = 0.4
    charge_tau_s: float = 0.4
    accessory_s: float | None = None
    key_on_s: float = 2.0
    key_off_s: float = math.inf
    turns: tuple[Turn, ...] = ()
    loads: tuple[Load, ...] = ()
    stops: tuple[float, ...] = ()
    length_s: float = 15.0

    def key_at(self, time_s: float) -> Key:
        """The position of the key."""
        if time_s >= self.key_off_s:
            return Key.OFF
        if any(turn.start_s <= time_s < turn.end_s for turn in self.turns):
            return Key.CRANK
        if time_s < self.key_on_s:
            accessory = self.accessory_s is not None and time_s >= self.accessory_s
            return Key.ACCESSORY if accessory else Key.OFF
        return Key.RUNNING if self.runs_since(time_s) is not None else Key.ON

    def runs_since(self, time_s: float) -> float | None:
        """Since when the engine has been running on its own; None where it stands."""
        ends = [turn.end_s for turn in self.turns if turn.fires and turn.end_s <= time_s]
        if not ends or time_s >= self.key_off_s:
            return None
        return None if any(ends[-1] < stop <= time_s for stop in self.stops) else ends[-1]

    def battery_at(self, time_s: float) -> float:
        """The battery's voltage."""
        scale = self.system_V / 12
        amps = math.fsum(load.amps_at(time_s) for load in self.loads)
        amps += 8.0 if self.key_at(time_s) not in (Key.OFF, Key.ACCESSORY) else 0.3
        amps += math.fsum(turn.amps_at(time_s) for turn in self.turns)
        open_V = self.rest_V - 0.25 * math.fsum(turn.tired(time_s) for turn in self.turns)
        standing_V = open_V - self.inner_ohm * amps
        since = self.runs_since(time_s)
        if since is None:
            stops = [stop for stop in self.stops if stop <= time_s]
            surface_V = 0.8 * math.exp(-(time_s - stops[-1]) / 3.0) if stops else 0.0
            return scale * (standing_V + surface_V)
        ready = max(0.0, time_s - since - self.charge_delay_s)
        share = 1.0 - math.exp(-ready / self.charge_tau_s)
        return scale * (standing_V + share * (self.charge_V - 0.0015 * amps - standing_V))


WIRE_LIVE: dict[str, tuple[Key, ...]] = {
    "constant": tuple(Key),
    "ignition": (Key.ON, Key.CRANK, Key.RUNNING),
    "ignition_not_in_crank": (Key.ON, Key.RUNNING),
    "accessory": (Key.ACCESSORY, Key.ON, Key.RUNNING),
    "start": (Key.CRANK,),
    "running_only": (Key.RUNNING,),
    "dead": (),
}


def on_wire(kind: str, key: Key, *, battery_V: float) -> float:
    """The voltage on a wire of a kind of `WIRE_LIVE`; it loses 0.02 V on its way from the battery."""
    return battery_V - 0.02 if key in WIRE_LIVE[kind] else 0.02


def wire_at(vehicle: Vehicle, kind: str, *, time_s: float) -> float:
    """The voltage on a wire of a vehicle at a time."""
    return on_wire(kind, vehicle.key_at(time_s), battery_V=vehicle.battery_at(time_s))


@dataclass(frozen=True, kw_only=True)
class Logger:
    """How a recording is made: rows a second, noise (standard deviation), decimals, seed of the noise."""

    rate_Hz: float = 1000.0
    noise_V: float = 0.01
    digits: int = 3
    seed: int = 1
    phase_s: float = 0.0

    def times(self, length_s: float) -> list[float]:
        """The times of the rows."""
        return [self.phase_s + row / self.rate_Hz for row in range(int((length_s - self.phase_s) * self.rate_Hz))]


def record(
    vehicle: Vehicle, wires: Sequence[str] = ("battery",), *, logger: Logger = Logger(), key: str = ""
) -> Recording:
    """The recording of a vehicle; `key` is '' (no key column), 'whole' or 'falls back' (to on after the crank)."""
    noise = random.Random(logger.seed)
    times = logger.times(vehicle.length_s)
    battery_V = [vehicle.battery_at(time_s) for time_s in times]
    keys = [vehicle.key_at(time_s) for time_s in times]
    columns: dict[str, list[float]] = {}
    for wire in wires:
        plain = (
            battery_V
            if wire == "battery"
            else [on_wire(wire, key, battery_V=volts) for key, volts in zip(keys, battery_V, strict=True)]
        )
        columns[wire] = [round(volts + noise.gauss(0.0, logger.noise_V), logger.digits) for volts in plain]
    return recording_of(times, columns, keys=key_marks(vehicle, times, key=key), digits=logger.digits)


def key_marks(vehicle: Vehicle, times: Sequence[float], *, key: str) -> tuple[KeyMark, ...]:
    """The changes that a key column would hold."""
    if not key:
        return ()
    marks: list[KeyMark] = []
    for time_s in times:
        now = vehicle.key_at(time_s)
        if key == "falls back" and now is Key.RUNNING:
            now = Key.ON
        if not marks or marks[-1].key is not now:
            marks.append(KeyMark(time_s, now))
    return tuple(marks)


def profile_recording(profile: StartingProfile, *, begin_s: float = 2.0, rate_Hz: float = 1000.0) -> Recording:
    """A battery that goes through a starting profile which begins to fall at `begin_s`, and two seconds of rest."""
    times = [row / rate_Hz for row in range(int((begin_s + profile.crank_s + profile.rise_s + 2.0) * rate_Hz))]
    volts = [round(voltage_at(profile, time_s - begin_s), 2) for time_s in times]
    return recording_of(times, {"battery": volts}, digits=2)


def recording_of(
    times: Sequence[float],
    columns: dict[str, list[float]],
    *,
    keys: tuple[KeyMark, ...] = (),
    digits: int = 3,
    bucket_rows: int | None = None,
    time_known: bool = True,
) -> Recording:
    """A recording that holds the columns; `engine_speed` is one, the others are voltages; NaN is an empty cell."""
    rows = bucket_rows or max(1, math.ceil(len(times) / BUCKETS_MOST))
    starts = range(0, len(times), rows)
    steps = sorted(b - a for a, b in pairwise(times)) or [0.0]
    channels = tuple(
        _channel(name, times, values=values, buckets=(rows, starts), digits=digits, speed=name == "engine_speed")
        for name, values in columns.items()
    )

    def fine(from_s: float, to_s: float) -> Window:
        first, last = bisect.bisect_left(times, from_s), bisect.bisect_right(times, to_s)
        return Window(
            array("d", times[first:last]), {name: array("d", values[first:last]) for name, values in columns.items()}
        )

    return Recording(
        name="recording.csv",
        rows=len(times),
        start_s=times[0],
        end_s=times[-1],
        interval_s=steps[len(steps) // 2],
        widest_gap_s=steps[-1],
        time_known=time_known,
        time_note=None,
        bucket_start_s=array("d", [times[start] for start in starts]),
        channels=channels,
        keys=keys,
        skipped=(),
        skipped_count=0,
        fine=fine,
    )


def _channel(
    name: str,
    times: Sequence[float],
    *,
    values: list[float],
    buckets: tuple[int, range],
    digits: int,
    speed: bool,
) -> Channel:
    rows, starts = buckets
    held = [(value, time_s) for value, time_s in zip(values, times, strict=True) if not math.isnan(value)]
    parts = [[value for value in values[start : start + rows] if not math.isnan(value)] for start in starts]
    lowest, lowest_s = min(held)
    highest = max(value for value, _ in held)
    return Channel(
        name=name,
        quantity=Quantity.ENGINE_SPEED if speed else Quantity.VOLTAGE,
        envelope=Envelope(
            array("d", [min(part, default=math.nan) for part in parts]),
            array("d", [max(part, default=math.nan) for part in parts]),
        ),
        rows=len(held),
        lowest=lowest,
        lowest_s=lowest_s,
        highest=highest,
        highest_s=next(time_s for value, time_s in held if value == highest),
        mean=math.fsum(value for value, _ in held) / len(held),
        digits=digits,
        seconds_below={
            threshold: math.fsum(b[1] - a[1] for a, b in pairwise(held) if a[0] < threshold)
            for threshold in THRESHOLDS_V
        },
    )
