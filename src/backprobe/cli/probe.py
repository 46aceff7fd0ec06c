"""`backprobe probe FILE`: which wire is which."""

from __future__ import annotations

import argparse
import json
from dataclasses import replace
from pathlib import Path

from backprobe.cases.probe import meter_of, probe_file
from backprobe.cli.probe_text import as_text
from backprobe.errors import OptionError
from backprobe.evidence.keys import Capture
from backprobe.files.open import small_text
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.stages.probe.answer import Answer
from backprobe.stages.probe.setup import Setup

MOST_AHEAD_S = 1e7


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("file", metavar="FILE", help="a readings table (wire,key,volts) or a recording (time_s,…)")
    parser.add_argument("--system", type=int, choices=(12, 24), required=True, help="the vehicle's system voltage")
    parser.add_argument("--no-crank", action="store_true", help="electric or hybrid: 'running' is READY")
    parser.add_argument("--no-accessory", action="store_true", help="the key has no accessory position")
    parser.add_argument("--captures", metavar="LIST", help="what the meter can hold: display,min,max,logged")
    parser.add_argument("--meter", metavar="CLASS|FILE", default="basic", help="basic, service, precise, or a .toml")
    parser.add_argument("--unit", metavar="FILE", help="the unit's sheet, for its own lowest supply voltage")
    parser.add_argument("--cylinders", type=int, metavar="N", help="turns a recording's ripple into cranking speed")
    parser.add_argument(
        "--bus", metavar="FILE", help="a log of the vehicle's bus, made with a recording that has no key"
    )
    parser.add_argument("--bus-ahead", metavar="S", help="the recording's clock at the log's first frame, in seconds")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Judge the file and print the answer; 0 whenever it could be judged."""
    answer = answer_of(chosen)
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0


def answer_of(chosen: argparse.Namespace) -> Answer:
    """The answer to the file, with the key's positions of a bus log where one is given. Raises OptionError."""
    setup, path = setup_of(chosen), Path(chosen.file)
    if chosen.bus is None:
        if chosen.bus_ahead is not None:
            raise OptionError("--bus-ahead belongs to --bus")
        return probe_file(path, setup)
    from backprobe.cases.keyed import probe_keyed  # loaded only where it is asked for

    ahead_s = None if chosen.bus_ahead is None else seconds_of(chosen.bus_ahead)
    return probe_keyed(path, setup, bus=Path(chosen.bus), ahead_s=ahead_s)


def seconds_of(text: str) -> float:
    """The seconds that are typed as --bus-ahead; negative where the recording began later. Raises OptionError.

    >>> seconds_of("-12,5")
    -12.5
    """
    try:
        value = float(text.replace("−", "-").replace(",", "."))
    except ValueError:
        value = float("nan")
    if not abs(value) <= MOST_AHEAD_S:
        raise OptionError(f"--bus-ahead {text}: seconds are expected, -12.5 where the recording began 12.5 s later")
    return value


def setup_of(chosen: argparse.Namespace) -> Setup:
    """The setup that the options describe. Raises OptionError."""
    meter = meter_of(chosen.meter)
    captures = meter.captures if chosen.captures is None else captures_of(chosen.captures)
    if chosen.cylinders is not None and not 1 <= chosen.cylinders <= 24:
        raise OptionError(f"--cylinders {chosen.cylinders}: an engine has 1 to 24")
    least = None
    if chosen.unit is not None:
        least = read_unit_sheet(small_text(Path(chosen.unit)), chosen.unit).supply.least_V
    return Setup(
        system_V=chosen.system,
        meter=replace(meter, captures=captures),
        has_crank=not chosen.no_crank,
        has_accessory=not chosen.no_accessory,
        captures=captures,
        unit_least_V=least,
        cylinders=chosen.cylinders,
    )


def captures_of(text: str) -> frozenset[Capture]:
    """The captures in a list parted by commas. Raises OptionError for a word that is none."""
    words = [word.strip().lower() for word in text.split(",") if word.strip()]
    unknown = [word for word in words if word not in list(Capture)]
    if unknown or not words:
        raise OptionError(f"--captures {text}: a list of {', '.join(Capture)} is expected")
    return frozenset(Capture(word) for word in words)
