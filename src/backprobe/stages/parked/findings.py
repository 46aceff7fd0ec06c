"""Findings on a parked vehicle: was its drain read asleep, are the two batteries alike, does it stand long enough."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.errors import OptionError
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.limits.parked import ASLEEP, BALANCE
from backprobe.stages.join.policy import tightened
from backprobe.stages.parked.days import MOST_DAYS, bound_by
from backprobe.stages.parked.parked import ParkedAnswer, ParkedCase, parked_answer

SURELY_ASLEEP_MIN = 60.0
ALIKE = "look for a load on the centre tap, charge both singly, rest a day, read each"
BOUNDS = {
    "crank_at_coldest": "there is no more in it than a start at the coldest may need",
    "vehicle_drain": "the vehicle's own drain takes most",
    "unit": "the unit takes most",
    "self_discharge": "the battery's own loss takes most",
}


def parked_findings(case: ParkedCase) -> tuple[Finding, ...]:
    """The findings; a reading that cannot be one of a battery at rest is left open, in words."""
    try:
        return findings_of(parked_answer(case))
    except OptionError as fault:
        because, _, then = str(fault).partition("\n")
        return (_open("parked_days", "Days parked", because=because, then=then or "measure the battery at rest again"),)


def findings_of(answer: ParkedAnswer) -> tuple[Finding, ...]:
    """The findings of an answer."""
    return (*_asleep(answer.case), *_balance(answer), _days(answer))


def _open(name: str, what: str, *, because: str, then: str) -> Finding:
    return Finding(id=name, stage=Stage.JOIN, what=what, verdict=Verdict.OPEN, because=because, next=then)


def _asleep(case: ParkedCase) -> Iterator[Finding]:
    """Whether the drain was read late enough; nothing where none was read."""
    minutes = case.sheet.minutes_after_lock
    if case.sheet.vehicle_drain_mA is None:
        return
    what, then = "Vehicle's own drain", f"read it again {SURELY_ASLEEP_MIN:g} min after locking, doors left shut"
    if minutes is None:
        yield _open("parked_asleep", what, because="nobody wrote how long after locking it was read", then=then)
        return
    early = minutes < ASLEEP.value
    verdict = Verdict.OPEN if early else Verdict.THIN if minutes < SURELY_ASLEEP_MIN else Verdict.HOLDS
    state = "modules may be awake still" if early else "most sleep by then" if verdict is Verdict.THIN else "asleep"
    yield Finding(
        id="parked_asleep",
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=f"{case.sheet.vehicle_drain_mA.value:g} mA, read {minutes:g} min after locking: {state}",
        next=None if verdict is Verdict.HOLDS else then,
        value=minutes,
        low=minutes,
        high=minutes,
        unit="min",
        digits=0,
        limit=ASLEEP,
    )


def _balance(answer: ParkedAnswer) -> Iterator[Finding]:
    """Whether two batteries in series rest alike. A meter's gain is the same for both, its counts are not."""
    if len(answer.batteries) < 2:
        return
    first, second = (battery.case for battery in answer.batteries)
    apart = abs(first.rest_V - second.rest_V)
    meter = answer.case.meter
    spread = apart * meter.percent / 100.0 + meter.counts * (first.count_V + second.count_V)
    low, high = max(0.0, apart - spread), apart + spread
    verdict = judge(BALANCE, apart, low=low, high=high)
    weaker = "first" if first.rest_V < second.rest_V else "second"
    found = Finding(
        id="parked_balance",
        stage=Stage.JOIN,
        what="Two batteries in series",
        verdict=verdict,
        because=f"{first.rest_V:g} V and {second.rest_V:g} V at rest"
        + (", alike" if verdict is Verdict.HOLDS else f": the {weaker} is the weaker, and the weaker one counts"),
        next=None if verdict is Verdict.HOLDS else ALIKE,
        value=apart,
        low=low,
        high=high,
        unit="V",
        limit=BALANCE,
    )
    policy = answer.case.policy
    then = tightened(found, None if policy is None else policy.balance_V, policy=policy)
    yield then if then.verdict is Verdict.HOLDS else replace(then, next=ALIKE)


def _days(answer: ParkedAnswer) -> Finding:
    days, wanted_days, what = answer.days, answer.case.wanted_days, "Days parked"
    if days is None or answer.unsure is None:
        lacking = "; ".join(answer.lacking)
        return _open(
            "parked_days", what, because=f"cannot be reckoned without: {lacking}", then=f"find out: {answer.lacking[0]}"
        )
    bound = bound_by(answer.unsure.rests()[1])
    because = (
        f"starts at {answer.unsure.coldest_C:g} °C for {said_days(days.likely)}, "
        f"anywhere from {said_days(days.low)} to {said_days(days.high)}: {BOUNDS[bound]}"
    )
    if wanted_days is None:
        return _open(
            "parked_days", what, because=because, then="write into the sheet how long it shall stand: wanted_days"
        )
    limit = Limit(
        id="parked_days",
        value=wanted_days,
        unit="d",
        side=Side.AT_LEAST,
        basis=_wanted_by(answer.case),
        standing=Standing.COMMON_PRACTICE,
    )
    verdict = judge(limit, round(days.likely, 1), low=round(days.low, 1), high=round(days.high, 1))
    verdict = verdict if answer.case.asleep else Verdict.OPEN
    return Finding(
        id="parked_days",
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=because if answer.case.asleep else f"{because}; the vehicle's drain was not read asleep",
        next=_next(answer, verdict),
        value=days.likely,
        low=days.low,
        high=days.high,
        unit="d",
        digits=1,
        limit=limit,
    )


def _wanted_by(case: ParkedCase) -> str:
    """Who wants the days: the job sheet, or the fleet's policy where that asks for more."""
    if case.policy is None or case.wanted_days == case.sheet.wanted_days:
        return "as wanted in the job sheet"
    sheet = case.sheet.wanted_days
    without = "the job sheet wants none" if sheet is None else f"the job sheet wants {sheet:g}"
    return f"{case.policy.file}, the fleet's own policy; {without}"


def _next(answer: ParkedAnswer, verdict: Verdict) -> str | None:
    """The change that does most with least; the reading again where that is what is missing."""
    if verdict is Verdict.HOLDS:
        return None
    if not answer.case.asleep:
        return f"read the vehicle's own drain again {SURELY_ASLEEP_MIN:g} min after locking"
    sure = [change.in_words() for change in answer.changes if change.for_worst is not None]
    fit = [change.in_words() for change in answer.changes if change.for_likely is not None]
    if sure or (fit and verdict is Verdict.FAILS):
        return " or ".join(sure or fit)
    if verdict is Verdict.FAILS:
        return "charge the battery full and have it tested; nothing else alone is enough"
    return "charge the battery full and read it after a day of rest, have it tested: too much is unsure"


def said_days(days: float) -> str:
    """Days in words; ten years and more are not told apart.

    >>> said_days(12.345), said_days(3650)
    ('12.3 days', 'years')
    """
    return "years" if days >= MOST_DAYS else f"{days:.1f} days"
