"""The kinds of vehicles, meters and technicians that the probe is examined with, and what is counted."""

from __future__ import annotations

import random
from dataclasses import dataclass, field, replace

from tests.samples.awkward_vehicles import ROLE_OF, Technician, Vehicle, make_vehicle
from tests.samples.probe_loop import drive

from backprobe.evidence.keys import Capture, Key
from backprobe.limits.lookup import meter
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup

D, MIN, MAX, LOG = Capture.DISPLAY, Capture.MIN, Capture.MAX, Capture.LOGGED
BY_REPORTS = frozenset({Key.ACCESSORY, Key.ON, Key.AFTER})
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
    lamp: bool = False  # every wire may be read under a test lamp
    meant: bool = False  # a wire is meant for each slot, rightly or wrongly; the unit on the supply reports at rest

    def setup_for(self, vehicle: Vehicle) -> Setup:
        """The setup with what is said of this vehicle's wires; every other time the wires that are meant are right."""
        setup = self.setup
        if self.lamp:
            setup = replace(setup, loads=frozenset(vehicle.wires))
        if self.meant:
            right = vehicle.rng.random() < 0.5
            roles = {slot: [n for n, w in vehicle.wires.items() if w.role == ROLE_OF[slot]] for slot in ROLE_OF}
            chosen = {slot: vehicle.rng.choice(roles[slot] if right else list(vehicle.wires)) for slot in ROLE_OF}
            setup = replace(setup, meant=tuple(chosen.items()), to_come=BY_REPORTS)
        return setup

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
    Case("12 V, a lamp at hand", lamp=True),
    Case("12 V, a lamp, meant, unit reports", lamp=True, meant=True),
    Case("12 V, a lamp, meant, 1 ms hold, slips 1 %", meter="service", lamp=True, meant=True, habits={"slips": 0.01}),
    Case("12 V, wires meant, no lamp", meant=True),
    Case("24 V, a lamp, meant, unit reports", system_V=24, lamp=True, meant=True),
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
    tally = Tally(vehicles=count)
    for number in range(seed, seed + count):
        rng = random.Random(f"{case.name} {number}")
        vehicle = make_vehicle(rng, system_V=case.system_V, has_crank=case.has_crank, has_accessory=case.has_accessory)
        technician = Technician(vehicle, case.setup_for(vehicle), **case.habits)
        outcome = drive(technician, declare=case.meant or number % 3 == 0)
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
