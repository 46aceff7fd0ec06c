"""The whole loop of a probing: write down what `next` asks for until it asks no more, and note what was promised."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace

from tests.samples.awkward_vehicles import Technician

from backprobe.errors import UnreadableError
from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable
from backprobe.formats.readings_csv import read_readings
from backprobe.stages.probe.answer import answer_table
from backprobe.stages.probe.wires import ProbeResult
from backprobe.stages.prove.supply_levels import OFF_BY_SHARE, OFF_BY_V

HEADER = "wire,key,volts,capture,after_min,load_A,circuit,marks"
MOST_STEPS = 400
UNIT_AFTER_MIN = 60.0


@dataclass(slots=True)
class Outcome:
    """What came of one vehicle: the table's lines, unsafe choices, promises broken, and the last answer."""

    lines: list[str]
    unsafe: list[str] = field(default_factory=list)
    broken: list[str] = field(default_factory=list)
    result: ProbeResult | None = None

    @property
    def readings(self) -> int:
        """How many readings were taken."""
        return sum(1 for line in self.lines[1:] if line.split(",")[1])

    @property
    def found(self) -> bool:
        """Whether a pair was chosen."""
        return self.result is not None and None not in (self.result.supply, self.result.ignition)


def drive(technician: Technician, *, declare: bool = False) -> Outcome:
    """Answer what `next` asks, from a table with nothing but a header, or with every wire declared first."""
    vehicle = technician.vehicle
    waiting = list(vehicle.wires)
    vehicle.rng.shuffle(waiting)
    outcome = Outcome([HEADER])
    if declare:
        outcome.lines += [_declared(technician, name) for name in waiting]
        waiting = []
    asked: Counter[tuple[str, Key, Capture]] = Counter()
    for _ in range(MOST_STEPS):
        table = read_readings(outcome.lines, file="readings.csv", system_V=vehicle.system_V)
        result = outcome.result = answer_table(table, technician.setup).result
        _note_unsafe(outcome, result, technician)
        upcoming = result.next
        if upcoming is None or (upcoming.wire is None and not waiting):
            return _told_by_the_unit(outcome, table, technician)
        name = upcoming.wire or waiting.pop()
        asked[name, upcoming.key, upcoming.capture] += 0 if upcoming.loaded else 1
        _note_broken(outcome, technician, upcoming.key, upcoming.capture)
        if asked[name, upcoming.key, upcoming.capture] > 2:
            outcome.broken.append(f"asked three times: {name} {upcoming.key} {upcoming.capture}")
        outcome.lines.append(_written(technician, name, upcoming.key, upcoming.capture, under_lamp=upcoming.loaded))
    outcome.broken.append("the loop does not end")
    return outcome


def _told_by_the_unit(outcome: Outcome, table: ReadingsTable, technician: Technician) -> Outcome:
    """The outcome with what a unit on the meant supply reports at key on and an hour after key-off, where that comes.

    It shows up to 0.7 V less than the wire has, and is out by up to 2 % besides.
    """
    wire, vehicle = technician.setup.meant_for("supply"), technician.vehicle
    if wire is None or not technician.setup.to_come:
        return outcome
    told = []
    for key in sorted(technician.setup.to_come):
        held = key is Key.AFTER and (vehicle.wires[wire].hold_min or 0.0) > UNIT_AFTER_MIN
        true_V = vehicle.level(wire, Key.OFF if held else key)
        volts = max(0.0, (true_V - vehicle.rng.uniform(0.0, 0.7)) * vehicle.rng.uniform(0.98, 1.02))
        told.append(
            Reading(
                wire=wire,
                key=key,
                volts=volts,
                typed=f"{volts:.2f}",
                count_V=0.01,
                after_min=UNIT_AFTER_MIN if key is Key.AFTER else None,
                source="the unit's reports",
                spread_V=OFF_BY_V + OFF_BY_SHARE * volts,
            )
        )
    wires = table.wires if wire in table.wires else (*table.wires, wire)
    full = replace(table, readings=(*told, *table.readings), wires=wires)
    outcome.result = answer_table(full, technician.setup).result
    _note_unsafe(outcome, outcome.result, technician)
    return outcome


def _written(technician: Technician, name: str, key: Key, capture: Capture, *, under_lamp: bool) -> str:
    """The row as it stays: one that the reader refuses is looked at once more and, as like as not, put right."""
    line = technician.row(name, key, capture, under_lamp=under_lamp)
    try:
        table = read_readings([HEADER, line], file="readings.csv", system_V=technician.vehicle.system_V)
        refused = bool(table.skipped)
    except UnreadableError:
        refused = True
    return technician.row(name, key, capture, under_lamp=under_lamp) if refused else line


def _declared(technician: Technician, name: str) -> str:
    wire = technician.vehicle.wires[name]
    return f"{name},,,,,,{wire.circuit},{wire.marks}"


def _note_unsafe(outcome: Outcome, result: ProbeResult, technician: Technician) -> None:
    vehicle = technician.vehicle
    for slot, name in (("supply", result.supply), ("ignition", result.ignition)):
        if name is not None and vehicle.is_unsafe(name, slot, technician.minutes):
            wire = vehicle.wires[name]
            lowest = f", lowest {vehicle.crank_min(name):.2f} V" if vehicle.has_crank else ""
            said = f"{slot} {name}: {wire.kind} ({wire.role}){lowest}"
            if said not in outcome.unsafe:
                outcome.unsafe.append(said)


def _note_broken(outcome: Outcome, technician: Technician, key: Key, capture: Capture) -> None:
    setup = technician.setup
    if capture not in setup.captures:
        outcome.broken.append(f"asked for {capture}, which the meter lacks")
    lacking = {Key.CRANK: not setup.has_crank, Key.ACCESSORY: not setup.has_accessory}
    if lacking.get(key):
        outcome.broken.append(f"asked at {key}, which the vehicle lacks")
