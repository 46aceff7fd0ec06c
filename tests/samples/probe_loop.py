"""The whole loop of a probing: write down what `next` asks for until it asks no more, and note what was promised."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from tests.samples.awkward_vehicles import Technician

from backprobe.errors import UnreadableError
from backprobe.evidence.keys import Capture, Key
from backprobe.formats.readings_csv import read_readings
from backprobe.stages.probe.answer import answer_table
from backprobe.stages.probe.wires import ProbeResult

HEADER = "wire,key,volts,capture,after_min,load_A,circuit,marks"
MOST_STEPS = 400


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
            return outcome
        name = upcoming.wire or waiting.pop()
        asked[name, upcoming.key, upcoming.capture] += 1
        _note_broken(outcome, technician, upcoming.key, upcoming.capture)
        if asked[name, upcoming.key, upcoming.capture] > 2:
            outcome.broken.append(f"asked three times: {name} {upcoming.key} {upcoming.capture}")
        outcome.lines.append(_written(technician, name, upcoming.key, upcoming.capture))
    outcome.broken.append("the loop does not end")
    return outcome


def _written(technician: Technician, name: str, key: Key, capture: Capture) -> str:
    """The row as it stays: one that the reader refuses is looked at once more and, as like as not, put right."""
    line = technician.row(name, key, capture)
    try:
        table = read_readings([HEADER, line], file="readings.csv", system_V=technician.vehicle.system_V)
        refused = bool(table.skipped)
    except UnreadableError:
        refused = True
    return technician.row(name, key, capture) if refused else line


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
