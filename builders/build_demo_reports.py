"""Make what the demo's two units reported, out of a small model: two invented trucks in one export of a yard.

Truck 7's ignition lead sits where it should, and its unit stays heard for a night. Truck 12's sits on an accessory
wire, and its poor ground takes the unit below its least volts in every start, so that it restarts.

Run ``python builders/build_demo_reports.py``; ``--check`` only says whether the files in demo/ are those it makes.
"""

from __future__ import annotations

import math
import sys
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

YARD = Path(__file__).resolve().parents[1] / "demo" / "linden-yard"
HEADER = "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event"
MIDNIGHT = datetime(2026, 3, 31, tzinfo=UTC)
DEBOUNCE_ON_S, DEBOUNCE_OFF_S = 2.0, 20.0  # as unit.toml says
INTERVAL_S, STOPPED_S, AWAKE_S = 60.0, 3600.0, 300.0  # while on; while off; and how long after a turn it stays awake
DOWN_S = 6.0  # a restart takes so long
M_PER_DEG = 111_200.0

Turns = tuple[tuple[float, str], ...]


def clock(hours: int, minutes: int, *, seconds: float = 0.0) -> float:
    """A time of the day in seconds."""
    return hours * 3600 + minutes * 60 + seconds


@dataclass(frozen=True)
class Fitted:
    """A truck with its unit: what was done with the key, where the ignition lead sits, when the unit was heard."""

    folder: str
    unit: str
    powered: float
    first_fix: float
    until: float
    turns: Turns
    live: frozenset[str]  # key positions in which the lead's wire is live
    restarts: tuple[float, ...]  # moments at which the supply fell too low
    place: tuple[float, float]
    accuracy_m: float
    sagging_V: float  # what the ground takes off
    batteries: int = 1  # of 12 V, in series


SEVEN = Fitted(
    folder="truck-07",
    unit="LN2-00417",
    powered=clock(13, 41, seconds=8),
    first_fix=44.0,
    until=clock(24 + 6, 30),
    turns=(
        (clock(14, 5), "off"),
        (clock(14, 7, seconds=31), "accessory"),
        (clock(14, 10, seconds=38), "off"),
        (clock(14, 13, seconds=22), "on"),
        (clock(14, 17, seconds=11), "crank"),
        (clock(14, 17, seconds=14), "running"),
        (clock(14, 20, seconds=37), "off"),
        (clock(14, 23, seconds=16), "doors_shut"),
    ),
    live=frozenset({"on", "crank", "running"}),
    restarts=(),
    place=(-33.10012, 151.20031),
    accuracy_m=4.0,
    sagging_V=0.0,
)
TWELVE = Fitted(
    folder="truck-12",
    unit="LN2-00422",
    powered=clock(9, 38, seconds=20),
    first_fix=71.0,
    until=clock(10, 32),
    turns=(
        (clock(10, 2), "off"),
        (clock(10, 4, seconds=33), "accessory"),
        (clock(10, 7, seconds=40), "off"),
        (clock(10, 10, seconds=29), "on"),
        (clock(10, 14, seconds=17), "crank"),
        (clock(10, 14, seconds=20), "running"),
        (clock(10, 17, seconds=44), "off"),
        (clock(10, 20, seconds=25), "doors_shut"),
    ),
    live=frozenset({"accessory", "on", "running"}),
    restarts=(clock(10, 14, seconds=17.4),),
    place=(-33.10041, 151.19987),
    accuracy_m=9.0,
    sagging_V=0.2,
)


def key_at(fitted: Fitted, time_s: float) -> str:
    """Where the key stands at a moment."""
    turned = [key for at, key in fitted.turns if at <= time_s and not key.startswith("doors")]
    return turned[-1] if turned else "off"


def ignition_events(fitted: Fitted) -> list[tuple[float, str]]:
    """What the unit makes of its wire: a change that lasts as long as its debounce, stamped when that is over."""
    events, on, since = [], False, fitted.powered
    level = False
    edges = [at for at, key in fitted.turns if not key.startswith("doors")]
    for at in [*edges, math.inf]:
        due = since + (DEBOUNCE_ON_S if level else DEBOUNCE_OFF_S)
        if level is not on and due <= at and due < fitted.until:
            on = level
            events.append((due, "ignition_on" if on else "ignition_off"))
        now = key_at(fitted, at) in fitted.live if at < math.inf else level
        if now is not level:
            level, since = now, at
    return events


def sent(fitted: Fitted) -> list[tuple[float, str]]:
    """Every report of a unit: when it was stamped, and why."""
    events = ignition_events(fitted)
    boots = [(at + DOWN_S, "boot") for at in fitted.restarts]
    found = [(fitted.powered, "boot"), *events, *boots]
    changes = sorted([at for at, _ in found] + [at for at, _ in fitted.turns])
    at = fitted.powered + fitted.first_fix
    while at < fitted.until:
        if not any(down < at < down + DOWN_S for down in fitted.restarts):
            found.append((at, "heartbeat"))
        on = ignition_on(events, at)
        awake = on or any(0 <= at - change < AWAKE_S for change in changes)
        at += INTERVAL_S if awake else _until_next(at, changes)
    return sorted(found)


def _until_next(at: float, changes: list[float]) -> float:
    """How long a unit sleeps: its stopped interval, or until something wakes it."""
    waking = [change - at + INTERVAL_S / 2 for change in changes if change > at]
    return min([STOPPED_S, *waking])


def ignition_on(events: list[tuple[float, str]], time_s: float) -> bool:
    """What the unit says of its ignition at a moment."""
    before = [event for at, event in events if at <= time_s]
    return bool(before) and before[-1] == "ignition_on"


def wobble(number: int, size: float) -> float:
    """A little disturbance without chance: the same on every machine."""
    return size * math.sin(12.9898 * number + 0.7 * size)


def supply_V(fitted: Fitted, time_s: float, *, number: int) -> float:
    """The unit's own supply: the battery less its diode, less what the ground takes; charging while the engine runs."""
    key = key_at(fitted, time_s)
    ran = any(at <= time_s for at, name in fitted.turns if name == "running")
    last = fitted.turns[-1][0]
    rest = 12.31 + (0.35 * math.exp(-max(0.0, time_s - last) / 7200.0) if ran else 0.0)
    level = 13.72 if key == "running" else 12.12 if key in ("accessory", "on") else rest
    return fitted.batteries * level - fitted.sagging_V + wobble(number, 0.012)


def stamp(time_s: float) -> str:
    """A moment in UTC as servers write it."""
    at = MIDNIGHT + timedelta(seconds=round(time_s, 1))
    return at.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def rows_of(fitted: Fitted) -> list[tuple[float, str]]:
    """The rows of a unit, each with the moment at which it arrived."""
    events = ignition_events(fitted)
    rows = []
    for number, (at, event) in enumerate(sent(fitted)):
        arrived = at + 1.1 + abs(wobble(3 * number, 1.9))
        north, east = (wobble(number + shift, fitted.accuracy_m / 2) / M_PER_DEG for shift in (0, 400))
        lat, lon, accuracy, sats = "0.0", "0.0", "", "0"
        if at >= fitted.powered + fitted.first_fix:
            lat, lon = f"{fitted.place[0] + north:.6f}", f"{fitted.place[1] + east:.6f}"
            accuracy, sats = f"{fitted.accuracy_m + wobble(number, 0.8):.1f}", str(9 + number % 4)
        volts = f"{supply_V(fitted, at, number=number):.2f}"
        on = "" if event == "boot" else str(int(ignition_on(events, at)))
        name = "" if event == "heartbeat" and on == "1" else event
        cells = (fitted.unit, stamp(at), stamp(arrived), lat, lon, accuracy, "0", sats, "0.9", volts, on, name)
        rows.append((arrived, ",".join(cells)))
    return rows


def reports_text(until: float, units: tuple[Fitted, ...] = (SEVEN, TWELVE)) -> str:
    """The yard's export as it was fetched at a moment: the units in the order in which their reports arrived."""
    rows = sorted(row for fitted in units for row in rows_of(fitted) if row[0] < until)
    return "\n".join([HEADER, *(line for _, line in rows)]) + "\n"


def script_text(fitted: Fitted) -> str:
    """What was done with the key, to the second."""
    rows = (f"{stamp(at)[:19]}Z,{key}" for at, key in fitted.turns)
    return "\n".join(["t,key", *rows]) + "\n"


def files() -> dict[Path, str]:
    """Every file that is made, with its text. Truck 12's reports were fetched at noon, truck 7's the next morning."""
    return {
        YARD / "truck-07" / "key-script.csv": script_text(SEVEN),
        YARD / "truck-07" / "reports.csv": reports_text(clock(24 + 6, 40)),
        YARD / "truck-12" / "key-script.csv": script_text(TWELVE),
        YARD / "truck-12" / "reports.csv": reports_text(clock(12, 0)),
    }


def main() -> int:
    """Write the files, or with --check compare them."""
    stale = []
    for path, wanted in files().items():
        current = path.is_file() and path.read_text(encoding="utf-8") == wanted
        if "--check" in sys.argv[1:]:
            print(f"{path.parent.name}/{path.name}: {'current' if current else 'not what the builder would write'}")
            stale += [] if current else [path]
        else:
            path.write_text(wanted, encoding="utf-8")
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
