"""A key script that a hand wrote, held against the turns that the vehicle's own bus shows."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.key_turn import KeyScript, ScriptKey
from backprobe.evidence.keys import Key
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import key_spans

MOST_APART = Limit(
    "bus_script", 10.0, "s", Side.AT_MOST, "what a hand writes down as it turns the key", Standing.COMMON_PRACTICE
)
NEAR_S = 120.0  # a turn further from any in the script is not in it
LIVE = {Key.ON: ScriptKey.ON, Key.CRANK: ScriptKey.CRANK, Key.RUNNING: ScriptKey.RUNNING, Key.OFF: ScriptKey.OFF}
RIGHT_IT = "find out which clock is wrong, the writer's or the logger's, and right the script before it proves anything"


def script_finding(heard: Heard, script: KeyScript | None) -> Finding | None:
    """How far the script's turns lie from the bus's; None where the log knows no time of day, or none is near.

    A turn that the bus shows within the script's time and that the script does not have fails it.
    """
    if script is None or heard.stamped_s is None:
        return None
    apart = list(_apart(heard, script, begun_s=heard.stamped_s))
    near = [(key, each) for key, each in apart if each is not None]
    if not near:
        return None
    missing = [key for key, each in apart if each is None]
    key, worst_s = max(near, key=lambda pair: abs(pair[1]))
    value_s = round(abs(worst_s), 1)
    verdict = Verdict.FAILS if missing else judge(MOST_APART, value_s, low=value_s, high=value_s)
    side = "later" if worst_s > 0 else "earlier"
    said = f"the bus shows {key} {value_s:.1f} s {side} than the script, of {len(near)} turns the furthest apart"
    lacks = f"; the script lacks {', '.join(missing)}, which the bus shows" if missing else ""
    return Finding(
        id="bus_script",
        stage=Stage.PROVE,
        what="key script against the bus",
        verdict=verdict,
        because=said + lacks,
        next=None if verdict is Verdict.HOLDS else RIGHT_IT,
        value=value_s,
        low=value_s,
        high=value_s,
        unit="s",
        digits=1,
        limit=MOST_APART,
    )


def _apart(heard: Heard, script: KeyScript, *, begun_s: float) -> Iterator[tuple[str, float | None]]:
    """Each turn that the bus shows within the script's time, and how much later it is; None where it is lacking."""
    first_s, last_s = script.turns[0].time_s, script.turns[-1].time_s
    for time_s, key in key_spans(heard.key):
        at_s = begun_s + time_s
        if time_s == 0 or not first_s - NEAR_S <= at_s <= last_s + NEAR_S:
            continue
        theirs = [at_s - turn.time_s for turn in script.turns if turn.key is LIVE[key]]
        nearest = min(theirs, key=abs, default=None)
        yield str(key), None if nearest is None or abs(nearest) > NEAR_S else nearest
