"""An invented unit in an invented vehicle: the examination of the prove stage.

Made without a look at the engine's own tables. A hand works the key; a wire follows it, or something else; a unit
samples the wire four times a second, debounces it, stamps and sends reports; a network carries them; a server writes
them down. Each fault changes one of these and nothing else.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime

STEP_S = 0.25
START_S = 1_774_944_000.0  # 31 March 2026, 08:00 UTC
IGNITION = {"on", "crank", "running"}
BENCH = ((0.0, "boot"), (20.0, "ignition_on"), (50.0, "ignition_off"), (90.0, "ignition_on"), (200.0, "power_lost"))
HEADER = "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event"
PLACE = (-33.1000, 151.2000)
FAULTS = (
    *("not_live_in_crank", "resets_in_crank", "on_in_accessory", "follows_door_or_timer", "never_off"),
    *("sensed_not_wired", "body_wake", "inverted", "floating", "script_too_short", "time_zone", "gps_time"),
    *("date_rollover", "backlog", "late_attach", "interval_reporting", "stale_position", "swapped_serial"),
)


@dataclass
class Unit:
    """How the unit, its clock and the network behave; figures in seconds."""

    debounce_on: float = 2.0
    debounce_off: float = 20.0
    sends_events: bool = True
    shows_column: bool = True
    bare_column: bool = False  # the column shows the input before its debounce
    moving_interval: float = 60.0
    stopped_interval: float = 60.0
    least_latency: float = 0.6
    mean_latency: float = 1.5
    whole_seconds: bool = False
    has_received: bool = True
    clock_offset: float = 0.0
    lost: float = 0.0
    doubled: float = 0.0
    buffered: tuple[float, float] | None = None  # out of reach between these moments: sent together after
    attached_at: float = -math.inf  # nothing before it is sent at all
    server_stamps: bool = False
    shift: float = 0.0  # added to every stamp of the unit
    place: tuple[float, float] = PLACE
    first_fix: float = -math.inf
    kept_place: tuple[float, float] | None = None


@dataclass
class World:
    """A script, a unit and what is wrong; `rows` are (seconds from the start, key)."""

    rng: random.Random
    rows: list[tuple[float, str]]
    unit: Unit
    faults: set[str] = field(default_factory=set)
    powered_at: float = -120.0
    boots: list[float] = field(default_factory=list)
    heard_until: float = 300.0
    hand_s: float = 0.5  # how well the hand writes its moments down
    timer_s: float = 120.0
    other_unit: bool = False
    stock_test: bool = False  # the unit was tried on a bench a week before
    drive_after: bool = False  # the driver leaves once the script is done
    hide_boot: bool = False
    shuffled: bool = False
    zoneless: bool = False

    @property
    def last(self) -> float:
        """The moment of the last row."""
        return self.rows[-1][0]


def level_of(world: World, times: list[float]) -> list[bool]:
    """The level on the wire that the ignition lead sits on, at each moment."""
    faults = world.faults
    levels: list[bool] = []
    rows = iter([*world.rows, *driven(world), (math.inf, "")])
    upcoming = next(rows)
    key, body, held, fell_at, flips = "off", set(), False, -math.inf, world.rng.random()
    next_flip = world.rng.uniform(5, 25)
    for t in times:
        while upcoming[0] <= t:
            what = upcoming[1]
            if what in ("unlock", "doors_open", "doors_shut"):
                if what == "unlock" and key == "off":
                    body.add("woken")
                if what == "doors_shut":
                    held = False
            else:
                if what == "off":
                    body.discard("woken")
                    if key in IGNITION or (key == "accessory" and "on_in_accessory" in faults):
                        fell_at, held = upcoming[0], True
                key = what
            upcoming = next(rows)
        live = key in IGNITION
        if "not_live_in_crank" in faults and key == "crank":
            live = False
        if "on_in_accessory" in faults:
            live = key in {"accessory", "on", "running"}
        if "sensed_not_wired" in faults:
            live = key == "running"
        if "follows_door_or_timer" in faults and key == "off":
            by_door = any(what == "doors_shut" for _, what in world.rows) and world.timer_s < 0
            live = held if by_door else t < fell_at + world.timer_s
        if "body_wake" in faults:
            live = live or "woken" in body
        if "never_off" in faults:
            live = True
        if "inverted" in faults:
            live = not live
        if "floating" in faults:
            if t > next_flip:
                flips, next_flip = (
                    1 - flips,
                    t + world.rng.choice([world.rng.uniform(3, 40), world.rng.uniform(20, 90)]),
                )
            live = live if flips < 0.5 else not live
        levels.append(live)
    return levels


def driven(world: World) -> list[tuple[float, str]]:
    """What the driver does with the key once the script is done, which is no business of the script."""
    if not world.drive_after:
        return []
    rng, t, rows = random.Random(round(world.last * 100)), world.last + 150.0, []
    for _ in range(3):
        for key, least, most in (("on", 2, 9), ("crank", 0.6, 2), ("running", 60, 900), ("off", 90, 600)):
            rows.append((t, key))
            t += rng.uniform(least, most)
    return rows


@dataclass
class Sent:
    """A report on its way: when, in true time, it was stamped and why."""

    at: float
    event: str = ""
    ignition: bool | None = None


def reports_of(world: World) -> list[Sent]:
    """What the unit makes of the level, in true time."""
    unit = world.unit
    times = [world.powered_at + STEP_S * i for i in range(int((world.heard_until - world.powered_at) / STEP_S))]
    levels = level_of(world, times)
    sent: list[Sent] = []
    boots = sorted([world.powered_at, *world.boots])
    state, since, due, down_until = None, 0.0, 0.0, -math.inf
    for t, level in zip(times, levels, strict=True):
        if boots and t >= boots[0]:
            boots.pop(0)
            down_until = t + (0 if t == times[0] else 4.0)
            sent.append(Sent(max(t, down_until), "boot", level if unit.shows_column else None))
            if state is not None and unit.sends_events and world.rng.random() < 0.5:
                sent.append(Sent(down_until + 1, "ignition_on" if level else "ignition_off"))
            state, since, due = (level if state is None else state), t, down_until + 5
            if t == times[0] and level and unit.sends_events:
                sent.append(Sent(t + 1.5, "ignition_on", True if unit.shows_column else None))
            continue
        if t < down_until:
            continue
        if level is state:
            since = t
        elif t - since >= (unit.debounce_on if level else unit.debounce_off):
            state, since = level, t
            if unit.sends_events:
                word = "ignition_on" if state else "ignition_off"
                sent.append(Sent(t, word, state if unit.shows_column else None))
        if t >= due:
            shown = level if unit.bare_column else state
            sent.append(Sent(t, "" if unit.sends_events else "heartbeat", shown if unit.shows_column else None))
            due = t + (unit.moving_interval if state else unit.stopped_interval)
    return sent


def lines_of(world: World, *, unit_id: str = "LN2-00417") -> list[str]:
    """The server's rows, in the order of arrival."""
    unit, rng = world.unit, world.rng
    rows: list[tuple[float, str]] = []
    earlier = [Sent(t - 7 * 86_400.0, event) for t, event in BENCH] if world.stock_test else []
    for sent in [*earlier, *reports_of(world)]:
        if sent.event == "boot" and world.hide_boot:
            continue
        if sent.at < unit.attached_at or rng.random() < unit.lost:
            continue
        arrived = sent.at + unit.least_latency + rng.expovariate(1 / unit.mean_latency)
        if unit.buffered and unit.buffered[0] <= sent.at < unit.buffered[1]:
            arrived = unit.buffered[1] + 0.4
        line = _line(world, sent, arrived, unit_id)
        rows.append((arrived, line))
        if rng.random() < unit.doubled:  # the network delivers it again: the same report, another arrival
            again = arrived + rng.uniform(0, 3)
            rows.append((again, _line(world, sent, again, unit_id, like=line)))
    rows.sort()
    if world.shuffled:
        rng.shuffle(rows)
    return [line.replace("Z,", ",") if world.zoneless else line for _, line in rows]


def _line(world: World, sent: Sent, arrived: float, unit_id: str, like: str = "") -> str:
    unit, rng = world.unit, world.rng
    received = iso(arrived, unit.whole_seconds) if unit.has_received else ""
    if like and not unit.server_stamps:
        cells = like.split(",")
        return ",".join([*cells[:2], received, *cells[3:]])
    stamp = sent.at + unit.clock_offset + unit.shift
    if unit.server_stamps:
        stamp = arrived
    lat = lon = accuracy = ""
    if unit.kept_place is not None:
        lat, lon, accuracy = f"{unit.kept_place[0]:.6f}", f"{unit.kept_place[1]:.6f}", "4"
    elif sent.at >= unit.first_fix:
        lat, lon = f"{unit.place[0] + rng.gauss(0, 2e-5):.6f}", f"{unit.place[1] + rng.gauss(0, 2e-5):.6f}"
        accuracy = f"{rng.uniform(3, 6):.1f}"
    else:
        lat = lon = "0.0"
    shown = "" if sent.ignition is None else str(int(sent.ignition))
    supply = f"{12.4 + rng.gauss(0, 0.02):.2f}"
    cells = (
        unit_id,
        iso(stamp, unit.whole_seconds),
        received,
        lat,
        lon,
        accuracy,
        "0",
        "9",
        "0.9",
        supply,
        shown,
        sent.event,
    )
    return ",".join(cells)


def iso(seconds: float, whole: bool = False) -> str:
    """A moment, seconds from the start, in UTC as servers write it."""
    moment = datetime.fromtimestamp(START_S + (math.floor(seconds) if whole else round(seconds, 3)), tz=UTC)
    return moment.isoformat(timespec="seconds" if whole else "milliseconds").replace("+00:00", "Z")


def script_text(world: World) -> str:
    """The script as the hand wrote it down."""
    rows, before = [], -math.inf
    for t, key in world.rows:
        before = max(before + 0.1, t + world.rng.gauss(0, world.hand_s))  # a hand is late, but keeps the order
        rows.append(f"{iso(before)},{key}")
    return "\n".join(["t,key", *rows]) + "\n"


def reports_text(world: World) -> str:
    """The table that the server exports: this unit's reports, with those of others of the yard among them."""
    own_id = "LN2-00777" if "swapped_serial" in world.faults else "LN2-00417"
    rows = lines_of(world, unit_id=own_id)
    if "swapped_serial" in world.faults or world.other_unit:
        rows += lines_of(neighbour(world), unit_id="LN2-00417" if "swapped_serial" in world.faults else "LN2-00500")
        rows.sort(key=lambda row: row.split(",")[2])
    return "\n".join([HEADER, *rows]) + "\n"


def neighbour(world: World) -> World:
    """Another truck of the yard, whose driver turns the key as it suits him."""
    rng, t, rows = world.rng, -600.0, []
    while t < world.heard_until:
        rows.append((t, "on"))
        t += rng.uniform(60, 900)
        rows.append((t, "off"))
        t += rng.uniform(60, 1500)
    place = (PLACE[0] + 0.0006, PLACE[1] + 0.0004)
    return World(
        rng,
        rows,
        replace(healthy_unit(rng), has_received=world.unit.has_received, place=place),
        powered_at=-900.0,
        heard_until=world.heard_until,
    )


def healthy_unit(rng: random.Random) -> Unit:
    """A unit that does what its makers promise, each a little different."""
    return Unit(
        debounce_on=rng.choice([0.5, 1.0, 2.0, 3.0, 5.0]),
        debounce_off=rng.choice([3.0, 5.0, 10.0, 20.0, 30.0, 45.0, 60.0]),
        shows_column=rng.random() < 0.7,
        bare_column=rng.random() < 0.2,
        moving_interval=rng.choice([30.0, 60.0, 120.0]),
        stopped_interval=rng.choice([60.0, 120.0, 300.0, 3600.0]),
        least_latency=rng.uniform(0.3, 1.5),
        mean_latency=rng.uniform(0.5, 4.0),
        whole_seconds=rng.random() < 0.5,
        has_received=rng.random() < 0.7,
        clock_offset=rng.choice([0.0, 0.0, rng.uniform(-3, 3)]),
        doubled=rng.choice([0.0, 0.1]),
    )


def long_script(rng: random.Random, hold: float = 150.0, *, doors: bool = True) -> list[tuple[float, str]]:
    """The script that the product's plan asks for: each state longer than `hold`."""
    steps = ["off", *(["unlock"] if doors else []), "accessory", "off", "on", "crank", "running", "off"]
    steps += ["doors_open", "doors_shut"] if doors else []
    rows, t = [], 0.0
    for step in steps:
        rows.append((round(t, 2), step))
        t += {"crank": rng.uniform(0.6, 3.0), "unlock": rng.uniform(15, 40), "doors_open": rng.uniform(4, 15)}.get(
            step, hold * rng.uniform(1.0, 1.7)
        )
    return rows


def two_cycles(rng: random.Random, hold: float = 90.0) -> list[tuple[float, str]]:
    """A script with a failed start and two off turns whose doors follow at different lags."""
    rows, t = [], 0.0
    steps = ["off", "on", "crank", "on", "crank", "running", "off", "doors_open", "doors_shut"]
    steps += ["unlock", "accessory", "off", "on", "off", "doors_shut"]
    for step in steps:
        rows.append((round(t, 2), step))
        t += rng.uniform(0.6, 3.0) if step == "crank" else hold * rng.uniform(0.8, 2.2)
    return rows


def world_of(fault: str | None, seed: int, **changes: object) -> World:
    """A world with one fault, or none, and whatever else the seed brings."""
    rng = random.Random(f"{fault}-{seed}")
    unit = healthy_unit(rng)
    rows = long_script(rng) if rng.random() < 0.7 else two_cycles(rng)
    world = World(rng, rows, unit, {fault} if fault else set(), powered_at=-rng.uniform(60, 400))
    world.heard_until = world.last + rng.choice([200.0, 600.0, 4000.0])
    world.other_unit = rng.random() < 0.3
    if fault:
        afflict(world, fault)
    for name, value in changes.items():
        setattr(world.unit if hasattr(world.unit, name) else world, name, value)
    return world


def brisk_script(rng: random.Random) -> list[tuple[float, str]]:
    """A hurried hand: states of 15 to 60 seconds, doors not always written down."""
    steps = ["off", "accessory", "off", "on", "crank", "running", "off"]
    if rng.random() < 0.3:
        steps = ["off", "on", "off", "accessory", "on", "crank", "on", "crank", "running", "off"]
    if rng.random() < 0.5:
        steps = [steps[0], "unlock", *steps[1:], "doors_open", "doors_shut"]
    rows, t = [], 0.0
    for step in steps:
        rows.append((round(t, 2), step))
        t += rng.uniform(0.6, 4.0) if step == "crank" else rng.uniform(15, 60)
    return rows


def awkward_world(fault: str | None, seed: int) -> World:
    """A world whose unit, hand and export are as awkward as is still legal."""
    rng = random.Random(f"awkward-{fault}-{seed}")
    world = World(rng, long_script(rng) if rng.random() < 0.5 else brisk_script(rng), healthy_unit(rng))
    unit = world.unit
    kind = rng.choice(["events", "events alone", "column alone", "both"])
    unit.sends_events = kind != "column alone"
    unit.shows_column = kind in ("column alone", "both")
    if kind == "events alone":
        unit.moving_interval = unit.stopped_interval = 1e9
    if kind == "column alone":
        unit.moving_interval = unit.stopped_interval = rng.choice([10.0, 20.0, 30.0])
        unit.debounce_off = min(unit.debounce_off, 20.0)
        world.rows = long_script(rng, 100.0)
    world.powered_at = -rng.uniform(30, 20_000)
    world.heard_until = world.last + rng.choice([150.0, 900.0, 5000.0])
    world.stock_test, world.drive_after, world.shuffled = (rng.random() < 0.3 for _ in range(3))
    world.hide_boot, world.zoneless, world.other_unit = (rng.random() < 0.2 for _ in range(3))
    if world.drive_after:
        world.heard_until = max(world.heard_until, world.last + 900)
    world.hand_s = rng.choice([0.2, 0.5, 1.0])
    unit.clock_offset = rng.choice([0.0, rng.uniform(-12, 12), rng.uniform(25, 90), rng.uniform(-90, -25)])
    if rng.random() < 0.3:
        begin = rng.uniform(0, world.last)
        unit.buffered = (begin, begin + 40.0)
    if fault:
        afflict(world, fault)
    return world


def afflict(world: World, fault: str) -> None:
    """Make a world in which the fault can show, and let it happen."""
    rng, unit = world.rng, world.unit
    world.faults.add(fault)
    crank = next((t for t, key in world.rows if key == "crank"), 0.0)
    on = next(t for t, key in world.rows if key in IGNITION)
    if fault == "not_live_in_crank":
        unit.debounce_off, unit.debounce_on = 0.25, min(unit.debounce_on, 2.0)
        world.rows = _longer_crank(world.rows, rng)
    if fault == "resets_in_crank":
        world.boots = [t + rng.uniform(0.2, 1.0) for t, key in world.rows if key == "crank"]
    if fault == "follows_door_or_timer":
        world.timer_s = rng.uniform(80, 500)
        world.heard_until = world.last + 1500
        if sum(key == "doors_shut" for _, key in world.rows) > 1 and rng.random() < 0.7:
            world.timer_s = -1.0  # until the doors are shut, whenever that is
            unit.debounce_off = min(unit.debounce_off, 20.0)
    if fault == "inverted":
        unit.shows_column = unit.shows_column or rng.random() < 0.5
    if fault == "script_too_short":
        off = max(t for t, key in world.rows if key == "off")
        world.rows = [row for row in world.rows if row[0] <= off + 10]
        unit.debounce_off, unit.bare_column = max(unit.debounce_off, 20.0), False
        world.heard_until = off + unit.debounce_off * rng.uniform(0.3, 0.9)
    if fault == "time_zone":
        unit.shift += 900.0 * rng.choice([4, 8, 22, 40, -12, -20, -32, 23])
    if fault == "gps_time":
        unit.shift += 18.0
        unit.has_received, unit.clock_offset = True, 0.0
    if fault == "date_rollover":
        by_weeks = rng.random() < 0.5
        unit.shift += -1024 * 604_800.0 if by_weeks else 315_964_800.0 - START_S - world.powered_at
    if fault == "backlog":
        unit.has_received = True
        if rng.random() < 0.7:
            unit.buffered = (-rng.uniform(5, 60), world.last + rng.uniform(60, 180))
        else:
            unit.server_stamps = True
            unit.buffered = (-rng.uniform(5, 60), world.last + rng.uniform(60, 180))
        world.heard_until = world.last + 600
    if fault == "late_attach":
        world.powered_at = on - rng.uniform(20, 50)
        world.rows = [row for row in world.rows if row[0] >= on - 15 and row[1] != "accessory"]
        world.rows = [(on - 16.0, "off"), *world.rows]
        after = next(t for t, key in world.rows if t > on and key != "crank")
        unit.attached_at = on + max(unit.debounce_on + 2, 0.6 * (after - on))
        unit.sends_events = True
    if fault == "interval_reporting":
        unit.sends_events, unit.shows_column = False, True
        unit.moving_interval = unit.stopped_interval = 120.0
        world.rows = long_script(rng, 40.0)
        world.heard_until = world.last + 900
    if fault == "stale_position":
        north = rng.uniform(0.003, 2.0) * rng.choice([-1, 1])
        unit.kept_place = (PLACE[0] + north, PLACE[1] + rng.uniform(-1, 1))
    if fault == "floating":
        unit.debounce_on, unit.debounce_off = min(unit.debounce_on, 2.0), min(unit.debounce_off, 3.0)
    if crank < 0:
        raise ValueError("a script begins at zero")


def _longer_crank(rows: list[tuple[float, str]], rng: random.Random) -> list[tuple[float, str]]:
    """The same script with cranks of two to five seconds."""
    longer, moved = [], 0.0
    for (t, key), after in zip(rows, [*rows[1:], (math.inf, "")], strict=True):
        longer.append((t + moved, key))
        if key == "crank" and after[0] - t < 2:
            moved += rng.uniform(2, 4)
    return longer
