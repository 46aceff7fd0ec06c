"""What became of the turns of the key, as findings: on, off, the crank, and what nobody turned."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge, worst
from backprobe.stages.prove.delays import Estimate
from backprobe.stages.prove.patterns import WORDS, PatternId, look_at
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.setup import OVER_DEBOUNCE_S, Timing
from backprobe.stages.prove.turns import Outcome, TurnState

SHOWN = 3
SURE = 2.0  # times the standard uncertainty: the range in which nearly all of it lies
AGAIN = "turn the key through the script again (backprobe prove --plan)"
DEAD_IN_CRANK = (PatternId.NOT_LIVE_IN_CRANK, PatternId.RESETS_IN_CRANK)


def turned(proof: Proof, *, on: bool) -> Finding:
    """Whether every turn to on, or to off, was reported, and how late."""
    word = "on" if on else "off"
    estimate = proof.on_delay if on else proof.off_delay
    due = [outcome for outcome in proof.turns if outcome.row.on is on]
    limit = delay_limit(proof.timing, on=on)
    verdict = worst([_by_turns(due), _by_delay(estimate, limit, clock_known=proof.clock_offset is not None)])
    return Finding(
        id=f"prove_{word}",
        stage=Stage.PROVE,
        what=f"Ignition {word}, as the unit reported it",
        verdict=verdict,
        because=_said(due, word) + _of_clock(proof, estimate),
        next=None if verdict is Verdict.HOLDS else AGAIN,
        value=None if estimate is None else estimate.value_s,
        low=None if estimate is None else _low_s(estimate),
        high=None if estimate is None else estimate.value_s + SURE * estimate.u_s,
        unit="s",
        digits=1,
        limit=limit,
    )


def _low_s(estimate: Estimate) -> float:
    """The least that a delay can be: none is below zero, unless a clock is wrong."""
    return max(min(0.0, estimate.value_s), estimate.value_s - SURE * estimate.u_s)


def delay_limit(timing: Timing, *, on: bool) -> Limit:
    """How late a healthy unit reports a turn: by its sheet's debounce, or by what is usual."""
    word = "on" if on else "off"
    usual_s, limit_s = (timing.usual_on_s, timing.on_limit_s) if on else (timing.usual_off_s, timing.off_limit_s)
    from_sheet = limit_s == usual_s + OVER_DEBOUNCE_S
    by_sheet = f"{usual_s:g} s debounce by the unit's sheet, and {OVER_DEBOUNCE_S:g} s"
    basis = by_sheet if from_sheet else f"a healthy unit reports {word} within that time"
    return Limit(f"prove_{word}_delay", limit_s, "s", Side.AT_MOST, basis, Standing.COMMON_PRACTICE)


def _by_turns(due: Sequence[Outcome]) -> Verdict:
    states = {outcome.state for outcome in due}
    if TurnState.MISSING in states:
        return Verdict.FAILS
    return Verdict.HOLDS if states == {TurnState.MATCHED} else Verdict.OPEN


def _by_delay(estimate: Estimate | None, limit: Limit, *, clock_known: bool) -> Verdict:
    """The delay against its limit; where it may be the clock's offset as well, nothing fails by it."""
    if estimate is None:
        return Verdict.OPEN
    spread = SURE * estimate.u_s
    found = judge(limit, estimate.value_s, low=estimate.value_s - spread, high=estimate.value_s + spread)
    return Verdict.OPEN if found is Verdict.FAILS and not clock_known else found


def _said(due: Sequence[Outcome], word: str) -> str:
    """How many of the turns were reported, and which were not."""
    if not due:
        return f"the script holds no turn of the key to {word}"
    matched = sum(1 for outcome in due if outcome.state is TurnState.MATCHED)
    lacking = [outcome for outcome in due if outcome.state is not TurnState.MATCHED]
    named = "; ".join(f"'{each.row.turn.key}' at {each.row.turn.written}: {each.state}" for each in lacking[:SHOWN])
    more = f" and {len(lacking) - SHOWN} more" if len(lacking) > SHOWN else ""
    turns = "1 turn" if len(due) == 1 else f"{len(due)} turns"
    return f"{matched} of {turns} reported" + (f"; {named}{more}" if lacking else "")


def _of_clock(proof: Proof, estimate: Estimate | None) -> str:
    if estimate is None:
        return ""
    if proof.clock_offset is None:
        return "; the delay and the offset of the unit's clock together"
    return f"; the unit's clock, {proof.clock_offset.value_s:+.1f} s ± {proof.clock_offset.u_s:.1f} s, is taken off"


def through_crank(proof: Proof) -> Finding:
    """Whether the unit lived through the crank, and what its staying on is worth."""
    cranks = [end - begin for begin, end in proof.script.cranks()]
    verdict, because = _crank_said(proof, cranks)
    dead = next((each for each in proof.patterns if each.id in DEAD_IN_CRANK), None)
    again = f"{AGAIN}: what the unit does in a crank shows only there"
    if dead is not None:
        again = look_at(WORDS[dead.id].look_at)
    return Finding(
        id="prove_crank",
        stage=Stage.PROVE,
        what="The unit through the crank",
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else again,
    )


def _crank_said(proof: Proof, cranks: Sequence[float]) -> tuple[Verdict, str]:
    if not cranks:
        return Verdict.OPEN, "the script holds no crank"
    named = [pattern.id for pattern in proof.patterns if pattern.id in DEAD_IN_CRANK]
    if named:
        return Verdict.FAILS, f"pattern: {' and '.join(str(name).replace('_', ' ') for name in named)}"
    if not any(outcome.edge for outcome in proof.turns):
        return Verdict.OPEN, "no turn of the key was reported"
    times = "1 crank" if len(cranks) == 1 else f"{len(cranks)} cranks"
    lived = f"no restart in {times}, the longest {max(cranks):.1f} s"
    off = proof.off_delay
    if off is not None and off.value_s + off.u_s < max(cranks):
        return Verdict.HOLDS, f"{lived}; off is reported after {off.value_s:.1f} s: an ignition lost in it would show"
    late = "not known" if off is None else f"only after {off.value_s:.1f} s"
    return Verdict.HOLDS, (
        f"{lived}. That it stayed on proves nothing of the ignition wire, as off is reported {late}: "
        "that rests on the wire's own readings in the crank"
    )


def unturned(proof: Proof) -> tuple[Finding, ...]:
    """The finding on ignition events for which no key was turned; none where there is none."""
    edges = proof.false_events
    if not edges:
        return ()
    named = ", ".join(f"{'on' if edge.on else 'off'} at {edge.report.written}" for edge in edges[:SHOWN])
    more = f" and {len(edges) - SHOWN} more" if len(edges) > SHOWN else ""
    return (
        Finding(
            id="prove_false_events",
            stage=Stage.PROVE,
            what="Ignition events for which no key was turned",
            verdict=Verdict.OPEN,
            because=f"reported: {named}{more}",
            next="mend first what the pattern shows" if proof.patterns else f"{AGAIN}: nobody did it",
        ),
    )
