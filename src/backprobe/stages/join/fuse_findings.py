"""What a fuse is judged by beside a dead short: its wire, its breaking capacity, its load."""

from __future__ import annotations

from backprobe.findings import Finding, Limit, Side, Stage, Verdict, judge
from backprobe.limits.fuses import (
    BREAKING_A,
    BREAKING_BASIS,
    LOAD_PART,
    LOAD_PART_BASIS,
    RERATING_BASIS,
    WIRE_OVER_FUSE,
    WIRE_OVER_FUSE_BASIS,
)
from backprobe.physics.span import Span, exactly
from backprobe.stages.given import said
from backprobe.stages.join.fuse_opening import Fuse, hot_rating_A

CURRENT_DIGITS = 2
WIRE_OVER_FUSE_ID, BREAKING_ID, LOAD_ID = "wire_over_fuse", "fuse_breaking", "fuse_load"


def wire_over_fuse(fuse: Fuse, carries_A: Span, *, ambient_C: float) -> Finding:
    """Whether the wire carries 1.35 times its fuse for good in hot surroundings [A]."""
    least_A = round(WIRE_OVER_FUSE * fuse.rating_A, CURRENT_DIGITS)
    basis = WIRE_OVER_FUSE_BASIS
    limit = Limit(WIRE_OVER_FUSE_ID, least_A, "A", Side.AT_LEAST, basis.text, basis.standing)
    because = f"at {ambient_C:g} °C the wire carries {said(carries_A.likely)} A for good, alone or in a small bundle"
    if carries_A.likely < least_A:
        because += f"; a {fuse.rating_A:g} A fuse can let {said(least_A)} A flow for minutes, and the wire gets too hot"
    then = f"fit a fuse of at most {carries_A.low / WIRE_OVER_FUSE:.2g} A, or thicker wire"
    if carries_A.likely <= 0.0:
        because = f"at {ambient_C:g} °C the surroundings are as hot as the insulation may get: the wire carries nothing"
        then = "lead the wire where it is cooler, or take wire with better insulation"
    return in_amperes(
        limit, carries_A, what=f"is the wire thick enough for its {fuse.rating_A:g} A fuse", because=because, then=then
    )


def breaking(short_A: float) -> Finding:
    """Whether the fuse can break the short at all [A]."""
    basis = BREAKING_BASIS
    limit = Limit(BREAKING_ID, BREAKING_A, "A", Side.AT_MOST, basis.text, basis.standing)
    because = f"a dead short at the unit's end draws {said(short_A)} A"
    then = "check the loop's resistance: so little is rare; otherwise put a fuse that breaks more near the battery"
    return in_amperes(limit, exactly(short_A), what="what the fuse can break", because=because, then=then)


def load(fuse: Fuse, load_A: Span, *, ambient_C: float) -> Finding:
    """Whether the fuse carries the load for good in hot surroundings [A]."""
    hot_A = hot_rating_A(fuse, ambient_C=ambient_C)
    basis = f"{LOAD_PART_BASIS.text}; {RERATING_BASIS.text}"
    most_A = round(LOAD_PART * hot_A, CURRENT_DIGITS)
    limit = Limit(LOAD_ID, most_A, "A", Side.AT_MOST, basis, LOAD_PART_BASIS.standing)
    because = f"at {ambient_C:g} °C {said(hot_A)} A are left of {fuse.rating_A:g} A, and {LOAD_PART:g} of that for good"
    then = "fit a larger fuse, if the wire allows it, or put the load on another circuit"
    return in_amperes(limit, load_A, what="the load on the fuse", because=because, then=then)


def in_amperes(limit: Limit, seen: Span, *, what: str, because: str, then: str) -> Finding:
    """A current [A] against its limit, with what to do where it does not hold."""
    low, value, high = (round(figure, CURRENT_DIGITS) for figure in (seen.low, seen.likely, seen.high))
    verdict = judge(limit, value, low=low, high=high)
    return Finding(
        id=limit.id,
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
        value=value,
        low=low,
        high=high,
        unit=limit.unit,
        digits=CURRENT_DIGITS,
        limit=limit,
    )
