"""A proof and a plan for people."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.stages.prove.delays import Estimate
from backprobe.stages.prove.plan import Step
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.prove import Answer
from backprobe.stages.prove.turns import Outcome

MARK = {"matched": "  ", "missing": "✗ ", "open": "? "}


def as_text(answer: Answer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: Answer) -> Iterator[str]:
    proof = answer.proof
    yield f"unit {proof.unit_id or '(no id)'}: {proof.verdict}"
    yield ""
    yield from (_turn(outcome) for outcome in proof.turns)
    yield ""
    yield f"on reported after   {_estimate(proof.on_delay)}"
    yield f"off reported after  {_estimate(proof.off_delay)}"
    yield f"unit's clock ahead  {_estimate(proof.clock_offset)}"
    yield f"position            {_position(proof)}"
    yield from _where(proof)
    yield from _supply(proof)
    for light in proof.lights:
        seen = "not looked at" if light.seen is None else light.seen.pattern
        after = "" if light.seen is None or light.seen.after_s is None else f" after {light.seen.after_s:g} s"
        means = f" ({light.pattern}: {light.means})" if light.means else ""
        yield f"light {light.light}: {seen}{after}{means}"
    yield from (f"no turn for: {_event(proof, i)}" for i in range(len(proof.false_events)))
    for pattern in proof.patterns:
        words = pattern.as_json()
        yield ""
        yield f"{pattern.id} ({pattern.strength:.2f}): {words['means']}"
        yield f"    look at: {words['look_at']}"
        if pattern.other_unit:
            yield f"    the unit that fits: {pattern.other_unit}"
    yield ""
    yield from (f"left out: {count} × {reason.replace('_', ' ')}" for reason, count in proof.left_out.items())
    yield from (f"note: {note}" for note in answer.notes)
    yield f"next: {answer.next or 'nothing more'}"


def _turn(outcome: Outcome) -> str:
    row = outcome.row
    reported = "" if outcome.edge is None else f"  reported {outcome.edge.report.written}"
    expected = "" if row.on is None else f"  must go {row.expected}: {outcome.state}"
    odd = f"  {outcome.state}" if row.on is None and outcome.state != "matched" else ""
    return f"{MARK[outcome.state]}{row.turn.written}  {row.turn.key:<10}{expected}{odd}{reported}".rstrip()


def _estimate(estimate: Estimate | None) -> str:
    return "not known" if estimate is None else f"{estimate.value_s:.1f} s ± {estimate.u_s:.1f} s"


def _position(proof: Proof) -> str:
    position = proof.position
    fix = "" if proof.first_fix_s is None else f"; first fix {proof.first_fix_s:.0f} s after power-up"
    if position.distance_m is None or position.u_m is None:
        return f"{position.verdict}{fix}"
    return f"{position.verdict}: {position.distance_m:.1f} m off, joint accuracy {position.u_m:.1f} m{fix}"


def _where(proof: Proof) -> Iterator[str]:
    where = proof.position.where
    if where is not None:
        whose = "" if where.near is None else f" ({where.attribution})"
        yield f"reported from       {where.text}{whose}"


def _supply(proof: Proof) -> Iterator[str]:
    supply = proof.supply
    if supply.change_V is None or supply.u_V is None:
        return
    ohm = "" if supply.loop_ohm is None else f", {supply.loop_ohm:.2f} Ω in tap, lead and ground"
    change = f"falls by {supply.change_V:.3f} V ± {supply.u_V:.3f} V when it transmits"
    yield f"supply              {supply.verdict}: {change}{ohm}"


def _event(proof: Proof, index: int) -> str:
    edge = proof.false_events[index]
    return f"{'on' if edge.on else 'off'} at {edge.report.written}"


def plan_text(steps: Sequence[Step], notes: Sequence[str]) -> str:
    """The plan as a key script, with what to do behind each step; times count from the start."""
    lines = ["# write down the time of day of each step as you do it; do not hurry and do not be regular"]
    lines += [f"# note: {note}" for note in notes]
    lines.append("t,key,hold_s,do")
    lines += [f'{step.at_s},{step.key},{step.hold_s},"{step.why}"' for step in steps]
    return "\n".join(lines)
