"""The picture of a proof: what the hand did with the key, beneath it what the unit said, by its own stamps."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from backprobe.drawings.roomy import BELOW
from backprobe.drawings.turns import WIDTH, Mark, Stretch, Turned, Turns, described_turns, turns
from backprobe.drawings.turns_narrow import turns_narrow
from backprobe.evidence.key_turn import BODY_KEYS, IGNITION_KEYS
from backprobe.job.judge import JobJudgement
from backprobe.stages.prove.observed import Edge, Observed
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.turns import Outcome, TurnState

TITLE = "What the unit reported"
CAPTION = (
    "Hatched above: an ignition must be live. Hatched below: unit {unit} said on. Between: how late it said so. "
    "UTC, {day}."
)
BEFORE_S, AFTER_S = 20.0, 60.0
MOST_MARKS = 12  # of a unit whose ignition flips all the time
TICK_STEPS_S = (60.0, 120.0, 300.0, 600.0, 1800.0, 3600.0, 14_400.0)
MOST_TICKS = 9
DAY_S = 86_400.0


def turns_picture(judged: JobJudgement, *, width: float = WIDTH) -> tuple[str, str, str] | None:
    """The two strips as (SVG, caption, the picture in words); None where there is no proof.

    `width` is that of the page; on a narrow one the words stand in a list below.
    """
    if judged.proof is None:
        return None
    proof = judged.proof.proof
    content = turns_of(proof)
    first = proof.script.rows[0].turn.written[:10]
    draw = turns_narrow if width < BELOW else turns
    caption = CAPTION.format(unit=proof.unit_id or "(no id)", day=first)
    return draw(content, width=width), caption, described_turns(content)


def turns_of(proof: Proof) -> Turns:
    """What to draw of a proof."""
    rows = proof.script.rows
    zero_s = rows[0].time_s - BEFORE_S
    edges = [] if proof.alignment is None else list(proof.alignment.best.span.observed.edges)
    told = [edge.hi_s for edge in edges if rows[0].time_s <= edge.hi_s <= rows[-1].time_s + 600.0]
    end_s = max([rows[-1].time_s, *told]) + AFTER_S
    observed = None if proof.alignment is None else proof.alignment.best.span.observed
    return Turns(
        hand=tuple(_hand(proof, zero_s, end_s=end_s)),
        unit=tuple(_unit(observed, zero_s, end_s=end_s)),
        turned=tuple(_turned(proof, zero_s)),
        by_hand=tuple(
            Mark(row.time_s - zero_s, str(row.turn.key).replace("_", " ")) for row in rows if row.turn.key in BODY_KEYS
        ),
        by_unit=tuple(_by_unit(proof, observed, zero_s=zero_s, end_s=end_s))[:MOST_MARKS],
        ticks=tuple(_ticks(zero_s, end_s)),
    )


def _hand(proof: Proof, zero_s: float, *, end_s: float) -> Iterator[Stretch]:
    """The key's positions; before the first row it stood as the vehicle stood."""
    keys = [row for row in proof.script.rows if row.turn.key not in BODY_KEYS]
    edges = [(zero_s, "off", False)]
    edges += [(row.time_s, str(row.turn.key), row.turn.key in IGNITION_KEYS) for row in keys]
    merged = [edge for before, edge in pairwise([(zero_s, "", None), *edges]) if edge[1] != before[1]]
    for (start, label, on), (end, _, _) in pairwise([*merged, (end_s, "", None)]):
        yield Stretch(start - zero_s, end - zero_s, label, on)


def _unit(observed: Observed | None, zero_s: float, *, end_s: float) -> Iterator[Stretch]:
    """What the unit said of its ignition, stretch by stretch; a change between two reports lies anywhere between."""
    if observed is None or not observed.times_s:
        yield Stretch(0.0, end_s - zero_s, "no report")
        return
    state, start = observed.state_at(zero_s), zero_s
    heard_s = min(end_s, observed.times_s[-1])
    for edge in observed.edges:
        if edge.restated or not zero_s < edge.hi_s <= end_s:
            continue
        low_s = max(start, edge.lo_s)
        yield from _said(start, low_s, state=state, zero_s=zero_s)
        if edge.hi_s > low_s:
            yield Stretch(low_s - zero_s, edge.hi_s - zero_s, "", None)
        state, start = edge.on, edge.hi_s
    yield from _said(start, heard_s, state=state, zero_s=zero_s)
    if heard_s < end_s:
        yield Stretch(max(start, heard_s) - zero_s, end_s - zero_s, "not heard", None)


def _said(start_s: float, end_s: float, *, state: bool | None, zero_s: float) -> Iterator[Stretch]:
    if end_s > start_s:
        word = "" if state is None else "on" if state else "off"
        yield Stretch(start_s - zero_s, end_s - zero_s, word, state)


def _turned(proof: Proof, zero_s: float) -> Iterator[Turned]:
    guess_s = 0.0 if proof.alignment is None else proof.alignment.best.shift.guess_s
    for outcome in proof.turns:
        if outcome.row.on is None:
            continue
        at_s = outcome.row.time_s
        reported = None if outcome.edge is None else outcome.edge.hi_s - zero_s
        yield Turned(at_s - zero_s, reported, _late(outcome, guess_s))


def _late(outcome: Outcome, guess_s: float) -> str:
    """How late a turn was reported, as a word beside its line; `guess_s` is an offset that only the turns speak for."""
    word = "on" if outcome.row.on else "off"
    edge = outcome.edge
    if edge is None:
        return f"{word} {'not reported' if outcome.state is TurnState.MISSING else 'not seen'}"
    late_s = edge.hi_s - outcome.row.time_s + guess_s
    return f"{word} {late_s:.1f} s late" if edge.exact else f"{word} within {late_s:.0f} s"


def _by_unit(proof: Proof, observed: Observed | None, *, zero_s: float, end_s: float) -> Iterator[Mark]:
    """What the unit said besides: that it restarted, and that its ignition changed though nobody turned the key."""
    if observed is None:
        return
    yield from (Mark(at - zero_s, "restart") for at in observed.restarts_s if zero_s <= at <= end_s)
    yield from (Mark(edge.hi_s - zero_s, _unasked(edge)) for edge in proof.false_events if zero_s <= edge.hi_s <= end_s)


def _unasked(edge: Edge) -> str:
    return f"{'on' if edge.on else 'off'}: no ignition was turned"


def _ticks(zero_s: float, end_s: float) -> Iterator[Mark]:
    """Whole minutes of the day, a few of them."""
    span_s = end_s - zero_s
    step_s = next((step for step in TICK_STEPS_S if span_s / step <= MOST_TICKS), DAY_S)
    at = -(-zero_s // step_s) * step_s
    while at <= end_s:
        minutes = int(at % DAY_S) // 60
        yield Mark(at - zero_s, f"{minutes // 60:02d}:{minutes % 60:02d}")
        at += step_s
