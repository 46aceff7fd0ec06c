"""The probe's answer for people: every wire with its reasons, the pair, and the next reading."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.findings import Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.probe.answer import SKIPPED_SHOWN, Answer
from backprobe.stages.probe.findings import next_sentence
from backprobe.stages.probe.permission import identified
from backprobe.stages.probe.recording.view import RecordingView
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.slots import PROOF
from backprobe.stages.probe.wires import Wire, cranks_V
from backprobe.stages.probe.wording import words


def as_text(answer: Answer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: Answer) -> Iterator[str]:
    for wire in answer.result.wires:
        yield _heading(wire)
        yield from (f"    {reason}" for reason in answer.reasons(wire))
    if answer.view is not None:
        yield ""
        yield from _recording(answer.view)
    yield ""
    yield f"supply: {answer.result.supply or 'none yet'}"
    yield f"ignition: {answer.result.ignition or 'none yet'}"
    yield next_line(answer)
    if answer.skipped_count:
        lines = "1 line was" if answer.skipped_count == 1 else f"{answer.skipped_count} lines were"
        yield f"{lines} passed over:"
        yield from (f"    {skipped}" for skipped in answer.skipped[:SKIPPED_SHOWN])


def _heading(wire: Wire) -> str:
    named = "not settled yet" if wire.role is Role.UNKNOWN else words(wire.role)
    verdict = "" if wire.verdict is Verdict.OPEN else f", {wire.verdict}"
    tap = {"no": "do not tap", "never": "never tap"}.get(wire.tap, f"fit for the {wire.tap} by its volts")
    return f"{wire.name}: {named}{verdict}, {tap}"


def _recording(view: RecordingView) -> Iterator[str]:
    for crank in view.cranks:
        what = "engine started" if crank.started else "no start seen"
        yield f"crank from {crank.start_s:.2f} to {crank.end_s:.2f} s: {what}, {crank.sure:.0%} sure"
    for channel in view.channels:
        yield f"{channel.channel}: lowest {channel.lowest_V:.2f} V; {channel.dip.verdict}: {channel.dip.because}"
    yield from (f"note: {note}" for note in view.notes)


def next_line(answer: Answer) -> str:
    """What to measure next, in one line."""
    result = answer.result
    asked = next_sentence(result.next, result.setup)
    if asked is not None:
        return f"next: {asked}"
    if result.supply is not None and result.ignition is not None:
        unnamed = [name for name in (result.supply, result.ignition) if not identified(answer.facts.get(name))]
        then = f"; before tapping, name the circuit of {' and '.join(unnamed)}" if unnamed else ""
        return f"next: nothing to measure, one pair is proven on its volts{then}"
    if result.setup.has_crank and not set(PROOF) & result.setup.captures:
        return "next: a meter with a MIN hold, or a fast recorder: a display cannot prove a wire in the crank"
    lowest = max(cranks_V(result.wires, result.setup), default=None)
    if lowest is not None and lowest < limit("supply_in_crank", system_V=result.setup.system_V).value:
        return f"next: charge and test the battery: in the crank no wire stayed above {lowest:.2f} V"
    return "next: no further reading with this meter would settle it"
