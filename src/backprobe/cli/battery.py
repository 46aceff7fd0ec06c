"""`backprobe battery`: how full a battery is, from its volts at rest."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator

from backprobe.cases.probe import meter_of
from backprobe.cli.numbers import figure, written
from backprobe.stages.parked.battery_calc import BatteryAnswer, BatteryCase, battery_answer
from backprobe.stages.parked.rest_voltage import KINDS


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("--rest-V", type=written, required=True, metavar="V", help="at the posts, no load, as shown")
    parser.add_argument("--hours-since-charge", type=figure, required=True, metavar="H", help="since it was charged")
    parser.add_argument("--temperature-C", type=figure, metavar="T", help="of the battery")
    parser.add_argument("--system", type=int, choices=(12, 24), default=12, help="24 for two in series; 12 if left out")
    parser.add_argument("--kind", choices=KINDS, default="unknown", help="flooded (filler caps), agm, or unknown")
    parser.add_argument("--meter", metavar="CLASS|FILE", default="basic", help="basic, service, precise, or a .toml")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer; there is nothing to judge."""
    answer = battery_answer(
        BatteryCase(
            rest_V=chosen.rest_V.value(),
            count_V=chosen.rest_V.count(),
            hours_since_charge=chosen.hours_since_charge,
            meter=meter_of(chosen.meter),
            system_V=chosen.system,
            temperature_C=chosen.temperature_C,
            kind=chosen.kind,
        )
    )
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0


def as_text(answer: BatteryAnswer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: BatteryAnswer) -> Iterator[str]:
    case, charge = answer.case, answer.charge
    yield f"{case.rest_V:g} V, {case.hours_since_charge:g} h after its charge, {case.system_V} V system"
    yield f"  state of charge {charge.likely:.0%}, anywhere from {charge.low:.0%} to {charge.high:.0%}"
    yield from (f"note: {note}" for note in answer.notes)
    yield from (f"question: {question}" for question in answer.questions)
