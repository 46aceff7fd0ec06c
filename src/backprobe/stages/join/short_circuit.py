"""A dead short: whether the fuse clears it before the wire's insulation is damaged.

A short can happen anywhere along the lead. At the unit's end the loop is longest and the current smallest; nearer the
fuse it is larger. So the wire must be protected at every current from that at the unit's end upwards, except where it
carries the current for good.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from backprobe.findings import Finding, Limit, Side, Stage, Verdict, worst
from backprobe.limits.sourced import Insulation
from backprobe.physics.adiabatic import VALID_TO_S, withstands_s
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.conductor import Conductor
from backprobe.stages.join.fuse_opening import Fuse, Opening

TIME_DIGITS = 4
JUST_ABOVE = 1e-4  # of the current that the wire carries for good
CLEARS = "fuse_clears"
TOO_RESISTIVE = "shorten the loop, mend its joints and ground, take thicker wire, or fit a smaller fuse"
SMALLER_FUSE = "fit a smaller fuse or thicker wire"
ASK_MAKER = "look up when this fuse opens in its maker's data sheet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Short:
    """A short at some current: when the fuse opens, how long the wire stands it [s], whether it carries it for good.

    `named_s` is for the copper that the wire's name says, `withstands_s` for as little as a wire of that name may have:
    that is what counts.
    """

    current_A: float
    opening: Opening
    named_s: float
    withstands_s: float
    for_good: bool

    @property
    def limit_s(self) -> float:
        """How long the short may last [s]: infinite where the wire carries it for good."""
        return math.inf if self.for_good else rounded_down(self.withstands_s)

    @property
    def room(self) -> float:
        """How many times as long as the fuse may take the wire stands it; 0 where the fuse is not sure to open."""
        return 0.0 if self.opening.most_s is None else self.limit_s / self.opening.most_s

    @property
    def verdict(self) -> Verdict:
        """Whether the fuse opens in time: it may lie anywhere between its gates, a usual one in their middle."""
        opening = self.opening
        if opening.most_s is None or opening.middle_s is None:
            return Verdict.FAILS
        if round(opening.middle_s, TIME_DIGITS) > self.limit_s:
            return Verdict.FAILS
        return Verdict.HOLDS if round(opening.most_s, TIME_DIGITS) <= self.limit_s else Verdict.THIN


def rounded_down(time_s: float) -> float:
    """A time to three digits that count, never more than it is [s].

    >>> rounded_down(1.119259), rounded_down(0.0209999)
    (1.11, 0.0209)
    """
    if not 0.0 < time_s < math.inf:
        return time_s
    digits = 2 - math.floor(math.log10(time_s))
    down = math.floor(time_s * 10.0**digits * (1.0 + 1e-12)) / 10.0**digits
    return round(down, max(0, digits))


def short_at(current_A: float, fuse: Fuse, *, conductor: Conductor, k: float, carries_A: Span) -> Short:
    """The short of `current_A` behind a fuse on a wire that carries `carries_A` for good."""
    return Short(
        current_A=current_A,
        opening=fuse.opening(current_A),
        named_s=withstands_s(current_A, area_mm2=conductor.area_mm2, k=k),
        withstands_s=withstands_s(current_A, area_mm2=conductor.least_area_mm2, k=k),
        for_good=round(current_A, TIME_DIGITS) <= round(carries_A.low, TIME_DIGITS),
    )


def worst_short(short_A: float, fuse: Fuse, *, conductor: Conductor, k: float, carries_A: Span) -> Short:
    """The worst short of all from `short_A` upwards.

    Judged at `short_A`, just above what the wire carries for good, and at each gate of the fuse: in between and beyond
    a fuse's time falls at least as fast as the wire's.
    """
    from_A = max(short_A, fuse.clears_from_A)
    above_A = carries_A.low * (1.0 + JUST_ABOVE)
    currents = [short_A, *(current for current in (above_A, *fuse.gate_currents_A) if current > from_A)]
    shorts = [short_at(current, fuse, conductor=conductor, k=k, carries_A=carries_A) for current in currents]
    bad = worst(short.verdict for short in shorts)
    return min((short for short in shorts if short.verdict is bad), key=lambda short: short.room)


def short_finding(short: Short, fuse: Fuse, *, at_end_A: float, insulation: Insulation) -> Finding:
    """The finding on the worst short [s]; `at_end_A` is the short at the unit's end."""
    verdict, unread = short.verdict, fuse.gates.only_faster_read
    if unread and verdict is not Verdict.FAILS:
        verdict = Verdict.OPEN
    limit = Limit(
        CLEARS,
        rounded_down(short.withstands_s),
        "s",
        Side.AT_MOST,
        f"{insulation.what}, k {insulation.k:g}: {insulation.basis.text}",
        insulation.basis.standing,
    )
    opening = short.opening
    return Finding(
        id=CLEARS,
        stage=Stage.JOIN,
        what=f"a dead short behind a {fuse.rating_A:g} A fuse of type {fuse.type}",
        verdict=verdict,
        because=_because(short, fuse, at_end_A=at_end_A),
        next=_next(verdict, opening),
        value=opening.middle_s,
        low=None if opening.most_s is None else opening.least_s,
        high=opening.most_s,
        unit="s",
        digits=TIME_DIGITS,
        limit=None if short.for_good or opening.most_s is None else limit,
    )


def _next(verdict: Verdict, opening: Opening) -> str | None:
    if verdict is Verdict.HOLDS:
        return None
    if verdict is Verdict.OPEN:
        return ASK_MAKER
    return TOO_RESISTIVE if opening.most_s is None else SMALLER_FUSE


def _because(short: Short, fuse: Fuse, *, at_end_A: float) -> str:
    opening = short.opening
    if opening.most_s is None:
        sure = f"the fuse is sure to open from {said(fuse.clears_from_A)} A only"
        return f"the loop is too resistive: {said(short.current_A)} A flow, {sure}"
    where = "at the unit's end" if short.current_A == at_end_A else "nearer the fuse"
    opens = f"at {said(short.current_A)} A {where} {_opens(fuse, opening.most_s)}"
    if short.for_good:
        return f"{opens}, and the wire carries that current for good"
    stands = f"{opens}; a wire with the least copper that its name allows stands {said(short.withstands_s)} s"
    if max(short.withstands_s, opening.most_s) <= VALID_TO_S:
        return stands
    return f"{stands}; beyond {VALID_TO_S:g} s that leaves cooling out, and the wire does not carry it for good"


def _opens(fuse: Fuse, most_s: float) -> str:
    if not fuse.gates.only_faster_read:
        return f"the fuse opens within {said(most_s)} s at the latest"
    return f"one of {fuse.gates.as_A:g} A opens within {said(most_s)} s, one of {fuse.rating_A:g} A later"
