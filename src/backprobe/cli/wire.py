"""`backprobe wire`: what a length of wire resists."""

from __future__ import annotations

import argparse
import json

from backprobe.cli.numbers import figure, gauge
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.wire_calc import WireAnswer, wire_answer


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    size_options(parser)
    parser.add_argument("--length-m", type=figure, required=True, metavar="L", help="length of the lead once, in m")
    parser.add_argument("--temperature-C", type=figure, default=20.0, metavar="T", help="of the wire; 20 if left out")
    parser.add_argument("--current-A", type=figure, metavar="I", help="also the drop, there and back, at this current")
    parser.add_argument("--json", action="store_true", help="print JSON")


def size_options(parser: argparse.ArgumentParser) -> None:
    """The options that say a wire's size."""
    size = parser.add_mutually_exclusive_group(required=True)
    size.add_argument("--awg", type=gauge, metavar="N", help="gauge: 18, 2/0")
    size.add_argument("--mm2", type=figure, metavar="A", help="square millimetres: 0.75")
    parser.add_argument("--solid", action="store_true", help="solid wire; stranded if left out")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer; there is nothing to judge."""
    answer = wire_answer(
        conductor_of(awg=chosen.awg, mm2=chosen.mm2, solid=chosen.solid),
        length_m=chosen.length_m,
        temperature_C=chosen.temperature_C,
        current_A=chosen.current_A,
    )
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0


def as_text(answer: WireAnswer) -> str:
    """The answer in lines."""
    wire, once, back = answer.conductor, answer.single_ohm, answer.there_and_back_ohm
    strands = "solid" if wire.solid else "stranded"
    lines = [
        f"{wire.name} {strands}, {answer.length_m:g} m at {answer.temperature_C:g} °C",
        f"  once            {_mohm(once.likely)} mΩ ({_mohm(once.low)} to {_mohm(once.high)})",
        f"  there and back  {_mohm(back.likely)} mΩ ({_mohm(back.low)} to {_mohm(back.high)})",
    ]
    if answer.current_A is not None:
        lines.append(f"  there and back at {answer.current_A:g} A: {back.likely * answer.current_A:.3f} V lost")
    lines += [f"note: {note}" for note in answer.notes]
    lines += [f"source: {basis.warrant}" for basis in wire.bases]
    lines += [f"question: {question}" for question in answer.questions]
    return "\n".join(lines)


def _mohm(ohm: float) -> str:
    return f"{ohm * 1000.0:.2f}"
