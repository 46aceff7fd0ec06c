"""`backprobe fuse`: whether a fuse protects its wire."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator

from backprobe.cli.numbers import figure
from backprobe.cli.wire import size_options
from backprobe.findings import Verdict
from backprobe.limits.fuse_lookup import TYPES
from backprobe.limits.fuses import HOT_AMBIENT_C
from backprobe.limits.wires import INSULATIONS
from backprobe.stages.given import said
from backprobe.stages.join.ampacity import USUAL_INSULATION, insulation_of
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.fuse_calc import FuseAnswer, FuseCase, fuse_answer
from backprobe.stages.join.fuse_opening import fuse_of


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("--rating-A", type=figure, required=True, metavar="I", help="what stands on the fuse")
    size_options(parser)
    parser.add_argument(
        "--loop-ohm", type=figure, required=True, metavar="R", help="battery, fuse, joints, lead and ground, in ohms"
    )
    parser.add_argument("--system", type=int, choices=(12, 24), required=True, help="the vehicle's system voltage")
    parser.add_argument(
        "--type", choices=TYPES, help="C medium, E high current, F miniature; by its rating if left out"
    )
    parser.add_argument("--insulation", choices=tuple(INSULATIONS), help=f"of the wire; {USUAL_INSULATION} if left out")
    parser.add_argument("--temperature-C", type=figure, metavar="T", help="of the surroundings, hot; 60 if left out")
    parser.add_argument("--load-A", type=figure, metavar="I", help="also whether the fuse carries this load for good")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer; 0 when the fuse holds, 1 when it is thin, fails or is open."""
    answer = fuse_answer(_case(chosen))
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0 if answer.verdict is Verdict.HOLDS else 1


def _case(chosen: argparse.Namespace) -> FuseCase:
    fuse = fuse_of(chosen.rating_A, chosen.type)
    insulation = insulation_of(chosen.insulation or USUAL_INSULATION)
    hot_C = HOT_AMBIENT_C if chosen.temperature_C is None else chosen.temperature_C
    given = {
        f"type {fuse.type} is taken": chosen.type,
        f"insulation is taken as {insulation.what}": chosen.insulation,
        f"surroundings are taken as {hot_C:g} °C, behind a dashboard in the sun": chosen.temperature_C,
    }
    return FuseCase(
        fuse=fuse,
        conductor=conductor_of(awg=chosen.awg, mm2=chosen.mm2, solid=chosen.solid),
        insulation=insulation,
        loop_ohm=chosen.loop_ohm,
        system_V=chosen.system,
        ambient_C=hot_C,
        load_A=chosen.load_A,
        assumed=tuple(words for words, value in given.items() if value is None),
    )


def as_text(answer: FuseAnswer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: FuseAnswer) -> Iterator[str]:
    case = answer.case
    yield f"{case.fuse.rating_A:g} A fuse on {case.conductor.name}, {case.system_V} V: {answer.verdict}"
    yield f"  a dead short at the unit's end draws {said(case.short_A)} A"
    for finding in answer.findings:
        yield f"  {finding.verdict}: {finding.what}"
        yield f"      {finding.because}"
        if finding.limit is not None:
            limit = finding.limit
            yield f"      limit {limit.side} {said(limit.value)} {limit.unit}, {limit.warrant}"
    yield f"next: {answer.next or 'nothing more'}"
    largest = "none" if answer.largest_A is None else f"{answer.largest_A:g} A"
    yield f"largest fuse of type {case.fuse.type} that holds here: {largest}"
    yield from (f"note: {note}" for note in answer.notes)
    yield from (f"question: {question}" for question in answer.questions)
