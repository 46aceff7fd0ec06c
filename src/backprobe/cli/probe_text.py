"""The probe's answer for people: every wire with its reasons, the pair, and the next reading."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.stages.probe.answer import SKIPPED_SHOWN, Answer
from backprobe.stages.probe.recording.view import RecordingView
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.wires import Wire


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
        yield f"{answer.skipped_count} lines were passed over:"
        yield from (f"    {skipped}" for skipped in answer.skipped[:SKIPPED_SHOWN])


def _heading(wire: Wire) -> str:
    named = "role open" if wire.role is Role.UNKNOWN else f"{_words(wire.role)} ({wire.probability:.0%})"
    tap = {"no": "no tap", "never": "never tap"}.get(wire.tap, f"may be tapped for the {wire.tap} on its volts")
    return f"{wire.name}: {named}, {wire.verdict}, {tap}"


def _words(role: Role) -> str:
    return str(role).replace("_", " ")


def _recording(view: RecordingView) -> Iterator[str]:
    for crank in view.cranks:
        what = "engine started" if crank.started else "no start seen"
        yield f"crank from {crank.start_s:.2f} to {crank.end_s:.2f} s: {what}, {crank.sure:.0%} sure"
    for channel in view.channels:
        yield f"{channel.channel}: lowest {channel.lowest_V:.2f} V; {channel.dip.verdict}: {channel.dip.because}"
    yield from (f"note: {note}" for note in view.notes)


def next_line(answer: Answer) -> str:
    """What to measure next, in one line."""
    upcoming = answer.result.next
    if upcoming is not None:
        wire = upcoming.wire or "a wire not yet in the table"
        return f"next: {wire}, key {upcoming.key}, capture {upcoming.capture}: {upcoming.why}"
    if answer.result.supply is not None and answer.result.ignition is not None:
        return "next: nothing, one pair is proven on its volts"
    return "next: no further reading with this meter would settle it"
