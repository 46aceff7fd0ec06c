"""`backprobe sky`: what of the sky is left to a unit in each place that was thought of, before anything is fixed."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from backprobe.cases.sky import draw_sky, sky_files
from backprobe.cli.sky_text import as_text
from backprobe.errors import OptionError
from backprobe.findings import Verdict
from backprobe.stages.mount.question import question


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("--mount", metavar="FILE", required=True, help="the places and what is around them: mount.toml")
    parser.add_argument("--at", metavar="LAT,LON", required=True, help="where: degrees north and east, others negative")
    parser.add_argument("--date", metavar="DAY", required=True, help="24 hours from 0 h UTC of this day on: 2026-03-31")
    parser.add_argument("--time", metavar="HH:MM", help="also where each satellite stands at this time, UTC")
    parser.add_argument("--nav", metavar="FILE", help="orbits: RINEX navigation, YUMA or SEM; else the nominal ones")
    parser.add_argument("--picture", metavar="FILE.svg", help="draw the sky over the best place")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer: 0 when the best place holds, 1 when it is thin or fails."""
    asked = question(degrees_of(chosen.at), chosen.date, time=chosen.time)
    answer = sky_files(Path(chosen.mount), asked, nav=None if chosen.nav is None else Path(chosen.nav))
    if chosen.picture is not None:
        draw_sky(answer, Path(chosen.picture))
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0 if answer.verdict is Verdict.HOLDS else 1


def degrees_of(text: str) -> tuple[float, float]:
    """The two figures of LAT,LON; whether there is such a place is asked later. Raises OptionError.

    >>> degrees_of("−33.1, 151.2")
    (-33.1, 151.2)
    """
    try:
        north, east = (float(part) for part in text.replace("−", "-").split(","))
    except ValueError:
        raise OptionError(
            f"--at {text}: degrees north and east are expected, south and west negative: --at -33.1,151.2"
        ) from None
    return north, east
