"""`backprobe prove`: what the hand did with the key, held against what the unit reported."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from backprobe.cases.prove import Sheets, prove_files, seen_of, setup_of
from backprobe.cli.prove_text import as_text, plan_text
from backprobe.errors import OptionError
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.findings import Verdict
from backprobe.stages.prove.plan import plan_of

MOST_ACCURACY_M = 10_000.0


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("--script", metavar="FILE", help="what was done with the key, and when (t,key)")
    parser.add_argument("--reports", metavar="FILE", help="the unit's reports as its server exports them (CSV)")
    parser.add_argument("--job", metavar="FILE", help="the job sheet, job.toml: unit, its sheet, vehicle, place")
    parser.add_argument("--unit", metavar="FILE", help="the unit's sheet, where there is no job sheet")
    parser.add_argument("--unit-id", metavar="ID", help="the job's unit as the reports name it")
    parser.add_argument("--at", metavar="LAT,LON", help="where the vehicle stands; a third figure is its accuracy in m")
    parser.add_argument("--corners", metavar="FILE", help="an index of corners, to say where the unit reports itself")
    parser.add_argument("--columns", metavar="MAP", help="name=theirs,… or a .toml, where the columns have other names")
    parser.add_argument("--lights", metavar="FILE", help="what was seen of the unit's lights (light,pattern,after_s)")
    parser.add_argument("--idle-volts", metavar="V", help="the unit's supply as it shows it while it does nothing")
    parser.add_argument("--transmit-volts", metavar="V", help="and while it transmits")
    parser.add_argument("--plan", action="store_true", help="print a script worth turning the key through")
    parser.add_argument("--no-crank", action="store_true", help="electric or hybrid: 'running' is READY")
    parser.add_argument("--no-accessory", action="store_true", help="the key has no accessory position")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the proof: 0 when it holds, 1 when something is thin, fails or is open. A plan is always 0."""
    sheets = Sheets(
        job=_path(chosen.job),
        unit=_path(chosen.unit),
        unit_id=chosen.unit_id,
        place=None if chosen.at is None else place_of(chosen.at),
        has_crank=not chosen.no_crank,
        has_accessory=not chosen.no_accessory,
        corners=_path(chosen.corners),
    )
    if chosen.plan:
        return _print_plan(sheets, as_json=chosen.json)
    if chosen.script is None or chosen.reports is None:
        raise OptionError("--script and --reports are needed, or --plan\nsee: backprobe prove --help")
    answer = prove_files(
        Path(chosen.script),
        Path(chosen.reports),
        sheets=sheets,
        names=chosen.columns,
        seen=seen_of(_path(chosen.lights), idle=chosen.idle_volts, transmit=chosen.transmit_volts),
    )
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0 if answer.proof.verdict is Verdict.HOLDS else 1


def _print_plan(sheets: Sheets, *, as_json: bool) -> int:
    setup, notes = setup_of(sheets)
    steps = plan_of(setup)
    if as_json:
        print(json.dumps({"ok": True, "plan": [step.as_json() for step in steps], "notes": list(notes)}))
    else:
        print(plan_text(steps, notes))
    return 0


def _path(text: str | None) -> Path | None:
    return None if text is None else Path(text)


def place_of(text: str) -> VehiclePlace:
    """The place that is typed as LAT,LON or LAT,LON,ACCURACY. Raises OptionError.

    >>> place_of("-33.1,151.2").lat_deg
    -33.1
    """
    try:
        figures = [float(part) for part in text.replace("−", "-").split(",")]
        north, east, *accuracy = figures
    except ValueError:
        raise _no_place(text) from None
    known = accuracy[0] if accuracy else None
    plausible = known is None or 0 <= known <= MOST_ACCURACY_M
    if len(accuracy) > 1 or not (abs(north) <= 90 and abs(east) <= 180) or not plausible:
        raise _no_place(text)
    return VehiclePlace(lat_deg=north, lon_deg=east, accuracy_m=known)


def _no_place(text: str) -> OptionError:
    return OptionError(f"--at {text}: degrees north and east are expected, south and west negative: --at -33.1,151.2")
