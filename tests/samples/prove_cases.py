"""Small scripts and reports, written out: what a test needs to see on one screen."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from backprobe.evidence.report import Report
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.reports_csv import read_reports
from backprobe.stages.prove.alignment import Alignment, align
from backprobe.stages.prove.observed import Observed, observe
from backprobe.stages.prove.prove import Answer, prove
from backprobe.stages.prove.script import Script, script_of
from backprobe.stages.prove.setup import ProveSetup, Timing

START = datetime(2026, 3, 31, 8, 0, tzinfo=UTC)
START_S = START.timestamp()
HERE = VehiclePlace(lat_deg=-33.1, lon_deg=151.2, accuracy_m=5.0)
HEADER = "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event"
# the script that most tests turn: on at 300 s, cranked at 500 s, off at 800 s
STEPS = ((0, "off"), (100, "accessory"), (200, "off"), (300, "on"), (500, "crank"), (502, "running"), (800, "off"))


def at(seconds: float) -> str:
    """The moment that many seconds after the start of the script."""
    return (START + timedelta(seconds=seconds)).isoformat().replace("+00:00", "Z")


def script(steps: Sequence[tuple[float, str]] = STEPS) -> Script:
    """A script of (seconds, key)."""
    return script_of(read_key_script(["t,key", *(f"{at(t)},{key}" for t, key in steps)], file="script.csv"))


def row(t: float, event: str = "", ignition: int | None = None, **more: object) -> str:
    """A report `t` seconds from the start, arrived a second later unless `late` says otherwise."""
    late = more.get("late", 1.0)
    arrived = "" if late is None else at(t + float(str(late)) - float(str(more.get("shift", 0.0))))
    shown = "" if ignition is None else str(ignition)
    place = more.get("place", "-33.1,151.2,4")
    return f"{more.get('unit', 'L1')},{at(t)},{arrived},{place},0,9,0.9,12.4,{shown},{event}"


def healthy(on_s: float = 2.0, off_s: float = 20.0, **more: object) -> list[str]:
    """What a healthy unit reports of STEPS: power-up, both events, and a heartbeat every minute."""
    rows = [
        row(-60, "boot", **more),
        row(300 + on_s, "ignition_on", 1, **more),
        row(800 + off_s, "ignition_off", 0, **more),
    ]
    beats = (t for t in range(-30, 1200, 60) if t not in (300, 800))
    return rows + [row(t, "heartbeat", int(300 + on_s <= t < 800 + off_s), **more) for t in beats]


def reports(rows: Sequence[str]) -> tuple[Report, ...]:
    """The rows as reports."""
    return read_reports([HEADER, *rows], file="reports.csv").reports


def observed(rows: Sequence[str]) -> Observed:
    """What the rows say of the ignition."""
    return observe(sorted(((report.time_s, report) for report in reports(rows)), key=lambda each: each[0]))


def aligned(rows: Sequence[str], steps: Sequence[tuple[float, str]] = STEPS, timing: Timing | None = None) -> Alignment:
    """Script and reports, laid over one another."""
    return align(reports(rows), script(steps), timing=timing or Timing())


def proven(rows: Sequence[str], steps: Sequence[tuple[float, str]] = STEPS, **setup: object) -> Answer:
    """The answer to script and reports of unit L1."""
    key_script = read_key_script(["t,key", *(f"{at(t)},{key}" for t, key in steps)], file="script.csv")
    table = read_reports([HEADER, *rows], file="reports.csv")
    known = {"unit_id": "L1", "place": HERE, **setup}
    return prove(key_script, table, setup=ProveSetup(**known))


def named(answer: Answer) -> list[str]:
    """The patterns that an answer names, the strongest first."""
    return [str(pattern.id) for pattern in answer.proof.patterns]


def states(answer: Answer) -> list[str]:
    """The state of each row of the script."""
    return [str(outcome.state) for outcome in answer.proof.turns]
