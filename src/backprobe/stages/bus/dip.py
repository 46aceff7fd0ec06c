"""Did the supply hold while the starter turned, as far as the vehicle's own reports can show it?

They come about once a second; the inrush trough lasts some 15 ms. So a figure outside the limit disproves, a figure
inside it proves nothing: what lies between two reports was not seen.
"""

from __future__ import annotations

from backprobe.findings import Finding, Limit, Stage, Verdict, judge
from backprobe.limits.lookup import limit
from backprobe.stages.bus.caution import minded
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import Crank
from backprobe.stages.probe.recording.dip import NOTICEABLE_V, RECORD_A_START, RECORD_AGAIN
from backprobe.stages.probe.recording.sampling import TOLERANCE, basis, limit_s

COUNT_V = 0.05  # what one bit of a reported voltage is worth
WHAT = "lowest voltage reported while the starter turns"


def sampled_fast_enough(heard: Heard, *, system_V: int) -> bool:
    """Whether the voltage was reported so often that the shortest trough cannot have been missed."""
    if heard.volts is None or not heard.times_known:
        return False
    steps = [crank.step_s for crank in heard.key.cranks] or [heard.volts.step_s]
    return all(step_s is not None and step_s <= limit_s(system_V) * TOLERANCE for step_s in steps)


def dip(heard: Heard, *, system_V: int) -> Finding | None:
    """The finding on the supply over all cranks in the log, the worst of them; None where no voltage is reported."""
    if heard.volts is None:
        return None
    rule = limit("supply_in_crank", system_V=system_V)
    shown = [crank for crank in heard.key.cranks if crank.lowest_V is not None]
    if not shown:
        return _unseen(heard, rule)
    crank = min(shown, key=_lowest_V)
    fast = sampled_fast_enough(heard, system_V=system_V)
    value_V = _lowest_V(crank)
    low_V, high_V = value_V - COUNT_V, value_V + COUNT_V
    if not rule.allows(value_V):
        why = f"{_said(crank)}; a report outside the limit disproves however seldom they come"
        return _finding(Verdict.FAILS, why, rule=rule, shown=(value_V, low_V, high_V))
    if fast:
        verdict = judge(rule, value_V, low=low_V, high=high_V)
        why = f"{_said(crank)}; reported often enough to have seen the whole dip"
        return _finding(verdict, why, rule=rule, shown=(value_V, low_V, high_V))
    fell_V = None if crank.rest_V is None else crank.rest_V - value_V
    seen = fell_V is not None and fell_V >= NOTICEABLE_V * system_V / 12
    told = "the value shown is inside the limit" if seen else "no report fell noticeably"
    why = f"{_said(crank)}; {_too_slow(heard, crank, system_V=system_V)}: {told}"
    verdict = Verdict.THIN if seen else Verdict.OPEN
    then = _again(system_V)
    return _finding(verdict, why, rule=rule, shown=(value_V, None, high_V), then=then)


def _lowest_V(crank: Crank) -> float:
    return float("inf") if crank.lowest_V is None else crank.lowest_V


def _said(crank: Crank) -> str:
    rest = "" if crank.rest_V is None else f", from {crank.rest_V:.2f} V before it"
    return f"the vehicle's own computers reported {crank.lowest_V:.2f} V at the lowest in the crank{rest}"


def _too_slow(heard: Heard, crank: Crank, *, system_V: int) -> str:
    if not heard.times_known:
        return "the file's clock stands still, so it cannot be said to have been often enough to prove a dip"
    step_s = crank.step_s if crank.step_s is not None else heard.volts.step_s if heard.volts else None
    pace = "hardly ever" if step_s is None else f"every {step_s:.2f} s"
    asked_ms = 1000 * limit_s(system_V)
    return f"reported {pace}, too slow to prove the dip, which takes one every {asked_ms:.0f} ms ({basis(system_V)})"


def _again(system_V: int) -> str:
    return RECORD_AGAIN.format(per_s=1.0 / limit_s(system_V)) + ", with a recorder at the battery"


def _unseen(heard: Heard, rule: Limit) -> Finding:
    if heard.key.cranks:
        return _finding(Verdict.OPEN, "the starter turned between two reports of the voltage", rule=rule)
    return _finding(Verdict.OPEN, "the starter does not turn in this log", rule=rule, then=minded(RECORD_A_START))


def _finding(
    verdict: Verdict,
    because: str,
    *,
    rule: Limit,
    shown: tuple[float, float | None, float] | None = None,
    then: str | None = None,
) -> Finding:
    """The finding with the value shown, and the least and most that it may be [V]; without them none was reported."""
    value_V, low_V, high_V = shown or (None, None, None)
    return Finding(
        id="bus_dip",
        stage=Stage.PROBE,
        what=WHAT,
        verdict=verdict,
        because=because,
        next=then,
        value=value_V,
        low=low_V,
        high=high_V,
        unit="V",
        limit=rule,
    )
