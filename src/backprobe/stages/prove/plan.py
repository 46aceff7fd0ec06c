"""A script worth turning the key through: every state long enough, and no two alike.

Each state lasts longer than the unit's debounce and two of its report intervals, so that a unit which only reports by
interval shows it twice, and the lengths differ, so that nothing that beats in time is taken for the key. The order
asks every question once: accessory (is the lead on an accessory wire?), on without a crank (is the start only
sensed?), crank and run (does it stay live, does the unit survive?), off with the doors still shut, then the doors
(is it retained power?).
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.key_turn import ScriptKey
from backprobe.stages.prove.setup import ProveSetup, timing_of

CRANK_S = 3.0  # until the engine runs
# how much longer than the least each state lasts: no two alike, and no small ratio between any two
STRETCH = (1.07, 1.31, 1.19, 1.61, 1.43, 1.11, 1.51)
WAIT = "key off; wait"
WHY = {
    ScriptKey.ACCESSORY: "accessory, no further: the unit must not go on",
    ScriptKey.ON: "ignition on, do not start: the unit must go on without the engine",
    ScriptKey.CRANK: "start; brake on, out of gear, nobody beneath, and an agreed caller",
    ScriptKey.RUNNING: "engine runs",
    ScriptKey.OFF: "key off, doors still shut: the unit must go off with the key",
    ScriptKey.DOORS_SHUT: "get out, shut the doors, and wait for the last report",
}


@dataclass(frozen=True, slots=True)
class Step:
    """What to do `at_s` seconds from the start, and how long to leave it so [s]."""

    at_s: int
    key: ScriptKey
    hold_s: int
    why: str

    def as_json(self) -> dict[str, object]:
        """The step as answered."""
        return {"t": self.at_s, "key": str(self.key), "hold_s": self.hold_s, "do": self.why}


def plan_of(setup: ProveSetup) -> tuple[Step, ...]:
    """The steps for a unit and a vehicle; positions that the vehicle lacks are left out."""
    least_s = timing_of(setup.sheet).hold_s
    keys = [ScriptKey.OFF]
    keys += [ScriptKey.ACCESSORY, ScriptKey.OFF] if setup.has_accessory else []
    keys += [ScriptKey.ON, *([ScriptKey.CRANK] if setup.has_crank else []), ScriptKey.RUNNING]
    keys += [ScriptKey.OFF, ScriptKey.DOORS_SHUT]
    steps: list[Step] = []
    at_s, stretched = 0, 0
    last_off = len(keys) - 2
    for index, key in enumerate(keys):
        if key is ScriptKey.CRANK:
            hold_s = round(CRANK_S)
        else:
            hold_s = int(least_s * STRETCH[stretched]) + 1
            stretched += 1
        why = WAIT if key is ScriptKey.OFF and index != last_off else WHY[key]
        steps.append(Step(at_s, key, hold_s, why))
        at_s += hold_s
    return tuple(steps)
