"""`backprobe bus FILE`: what a vehicle's own bus says of its key, its supply, itself and how the bus does."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from backprobe.cases.bus import BusCase, bus_file, start_of
from backprobe.cli.bus_text import as_text
from backprobe.errors import OptionError
from backprobe.findings import Verdict


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("file", metavar="FILE", help="candump, candump -l, ASC, BLF, TRC, MDF, or engine data (CSV)")
    parser.add_argument("--job", metavar="FILE", help="the job sheet, job.toml: its VIN and system voltage")
    parser.add_argument("--vin", metavar="V", help="the vehicle's VIN as the job has it")
    parser.add_argument("--script-out", metavar="FILE", help="write the key's turns as a script for prove (CSV)")
    parser.add_argument("--start", metavar="TIME", help="when the first frame came, where the log does not say it")
    parser.add_argument("--picture", metavar="OUT.svg", help="write the picture of volts and engine speed")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer: 0 when everything holds, 1 when something is thin, fails or is open."""
    if chosen.start is not None and chosen.script_out is None:
        raise OptionError("--start belongs to --script-out\nsee: backprobe bus --help")
    start_s = None if chosen.start is None else start_of(chosen.start)
    case = bus_file(Path(chosen.file), vin=chosen.vin, job=None if chosen.job is None else Path(chosen.job))
    if chosen.script_out is not None:
        from backprobe.stages.bus.script import script_lines

        _write(Path(chosen.script_out), "\n".join(script_lines(case.answer.heard, start_s=start_s)) + "\n")
    if chosen.picture is not None:
        _write(Path(chosen.picture), _picture(case))
    print(json.dumps(case.answer.as_json(), ensure_ascii=False) if chosen.json else as_text(case.answer))
    return 0 if case.answer.verdict is Verdict.HOLDS else 1


def _picture(case: BusCase) -> str:
    from backprobe.drawings.bus_cycle import bus_cycle  # drawings load only where they are wanted
    from backprobe.stages.bus.picture import cycle_content

    return bus_cycle(cycle_content(case.listened, system_V=case.answer.system_V))


def _write(path: Path, text: str) -> None:
    try:
        path.write_text(text, encoding="utf-8")
    except OSError as problem:
        raise OptionError(f"{path}: cannot be written; the system says: {problem}") from None
