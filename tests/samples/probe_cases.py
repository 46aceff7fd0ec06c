"""The kinds of vehicles, meters and technicians that the probe is examined with, and what is counted."""

from __future__ import annotations

import random
from dataclasses import dataclass, field

from tests.samples.awkward_vehicles import Technician, make_vehicle
from tests.samples.probe_loop import drive

from backprobe.evidence.keys import Capture
from backprobe.limits.lookup import meter
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup

D, MIN, MAX, LOG = Capture.DISPLAY, Capture.MIN, Capture.MAX, Capture.LOGGED
LEAST_WIRES = 6  # readings are set against positions × wires from here on


@dataclass(frozen=True, slots=True)
class Case:
    """One kind of vehicle, meter and technician; `habits` are arguments of `Technician`."""

    name: str
    system_V: int = 12
    captures: tuple[Capture, ...] = (D, MIN, MAX)
    meter: str = "basic"
    has_crank: bool = True
    has_accessory: bool = True
    habits: dict[str, object] = field(default_factory=dict)

    @property
    def setup(self) -> Setup:
        """What the technician tells of vehicle and meter."""
        return Setup(
            system_V=self.system_V,
            meter=meter(self.meter),
            captures=frozenset(self.captures),
            has_crank=self.has_crank,
            has_accessory=self.has_accessory,
        )


CASES = (
    Case("12 V, careful"),
    Case("12 V, fast recorder too", captures=(D, MIN, MAX, LOG)),
    Case("12 V, 1 ms hold", meter="service"),
    Case("12 V, slips 1 %", habits={"slips": 0.01}),
    Case("12 V, slips 4 %", habits={"slips": 0.04}),
    Case("12 V, lost contact 1 %", habits={"misses": 0.01}),
    Case("12 V, loads on half of the readings", habits={"loads": 0.5}),
    Case("12 V, after at 30 min", habits={"minutes": 30.0}),
    Case("12 V, after at 5 min", habits={"minutes": 5.0}),
    Case("12 V, min for logged", captures=(D, MIN, MAX, LOG), habits={"gives": {LOG: MIN}}),
    Case("12 V, display for min", habits={"gives": {MIN: D}}),
    Case("12 V, display only", captures=(D,)),
    Case("12 V, display and recorder", captures=(D, LOG)),
    Case("12 V, display and min", captures=(D, MIN)),
    Case("12 V, no accessory", has_accessory=False, habits={"slips": 0.005}),
    Case("24 V, careful", system_V=24),
    Case("24 V, coarse meter, slips 1 %", system_V=24, habits={"slips": 0.01, "decimals": 1}),
    Case("24 V, lost contact 1 %", system_V=24, habits={"misses": 0.01}),
    Case("24 V, no accessory, recorder", system_V=24, has_accessory=False, captures=(D, MIN, LOG)),
    Case("electric, 12 V", has_crank=False, habits={"slips": 0.005}),
    Case("electric, 24 V, no accessory", system_V=24, has_crank=False, has_accessory=False),
)


@dataclass(slots=True)
class Tally:
    """What was counted over the vehicles of a case.

    `unsafe` holds (seed, what, lines of the table); `shares` readings against positions × wires, `when_fit` those
    of vehicles with a fit pair; `named` (probability, rightly) of every wire that was given a role.
    """

    vehicles: int = 0
    unsafe: list[tuple[int, str, list[str]]] = field(default_factory=list)
    broken: list[str] = field(default_factory=list)
    fit: int = 0
    found: int = 0
    readings: list[int] = field(default_factory=list)
    shares: list[float] = field(default_factory=list)
    when_fit: list[float] = field(default_factory=list)
    named: list[tuple[float, bool]] = field(default_factory=list)


def examine(case: Case, count: int, *, seed: int) -> Tally:
    """Drive `count` vehicles of a case through the whole loop; every third technician declares all wires first."""
    tally, setup = Tally(vehicles=count), case.setup
    for number in range(seed, seed + count):
        rng = random.Random(f"{case.name} {number}")
        vehicle = make_vehicle(rng, system_V=case.system_V, has_crank=case.has_crank, has_accessory=case.has_accessory)
        outcome = drive(Technician(vehicle, setup, **case.habits), declare=number % 3 == 0)
        tally.unsafe += [(number, said, outcome.lines) for said in outcome.unsafe]
        tally.broken += outcome.broken
        fit = vehicle.has_fit_pair()
        tally.fit += fit
        tally.found += fit and outcome.found
        if len(vehicle.wires) >= LEAST_WIRES:
            share = outcome.readings / (5 * len(vehicle.wires))
            tally.readings.append(outcome.readings)
            tally.shares.append(share)
            tally.when_fit += [share] if fit else []
        for wire in outcome.result.wires if outcome.result else ():
            if wire.belief.readings and wire.role is not Role.UNKNOWN:
                tally.named.append((wire.probability, str(wire.role) == vehicle.wires[wire.name].role))
    return tally


def mean(values: list[float]) -> float:
    """The mean; not a number where there is none."""
    return sum(values) / len(values) if values else float("nan")
