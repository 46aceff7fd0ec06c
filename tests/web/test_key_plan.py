"""How far the turns of the key have come in the plan."""

from __future__ import annotations

from typing import Any

import pytest
from tests.web.test_core import Call, call, phone

from backprobe.stages.prove.plan import plan_of
from backprobe.stages.prove.setup import ProveSetup

__all__ = ["phone"]

PLAN = [step.as_json() for step in plan_of(ProveSetup())]
KEYS = [str(step["key"]) for step in PLAN]


def followed(phone: Call, turns: list[str]) -> dict[str, Any]:
    """What `follow` gives for these turns."""
    return dict(phone([call("key-plan.ts", "follow", PLAN, turns)])[0]["value"])


@pytest.mark.parametrize("done", range(len(KEYS) + 1))
def test_the_plan_is_followed_step_by_step(phone: Call, done: int) -> None:
    """After so many planned turns the next one is due, and the last is to be held as planned."""
    found = followed(phone, KEYS[:done])
    assert found["next"] == (done if done < len(KEYS) else None)
    assert found["turns"] == [at if at < done else None for at in range(len(KEYS))]
    assert found["hold_s"] == (PLAN[done - 1]["hold_s"] if done else None)


def test_a_failed_start_falls_back_to_on(phone: Call) -> None:
    """Crank, on again: the crank is due once more; then the engine runs."""
    crank = KEYS.index("crank")
    failed = [*KEYS[: crank + 1], "on"]
    assert followed(phone, failed)["next"] == crank
    again = followed(phone, [*failed, "crank", "running"])
    assert (again["next"], again["turns"][crank]) == (crank + 2, len(failed))


def test_what_else_happened_waits_beside_the_plan(phone: Call) -> None:
    """A door between two steps: the plan stands where it stood, and says nothing of how long to hold."""
    found = followed(phone, ["off", "doors_open"])
    assert (found["next"], found["hold_s"]) == (1, None)


def test_after_its_end_key_off_begins_anew(phone: Call) -> None:
    """The whole plan, then off: the first step is done, the second is due."""
    found = followed(phone, [*KEYS, "off"])
    assert (found["next"], found["turns"][0], found["turns"][1]) == (1, len(KEYS), None)


def test_a_hold_counts_from_the_stamp(phone: Call) -> None:
    """150 s from 08:00:00.500: at 08:02:00 there are 30.5 s left, said as 31; an hour later none."""
    since, stamp_ms = "2026-03-31T08:00:00.500Z", 1_774_944_000_500
    ask = [call("key-plan.ts", "left_s", 150, since, stamp_ms + more) for more in (119_500, 3_600_000)]
    shown = [call("key-plan.ts", "clockText", seconds) for seconds in (31, 185)]
    assert [each["value"] for each in phone([*ask, *shown])] == [31, 0, "0:31", "3:05"]
