"""Every attempt to crank the engine that a recording shows, each with how sure that is and why.

A crank begins with the fall of the supply and ends where the starter is released, at the foot of the recovery edge.
Where a key column is recorded it is the truth. Otherwise falls of the supply, wires that are dead or live for just
that time, the engine speed and, on slow recordings, changes of the level are weighed (signs.py).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from backprobe.evidence.keys import Key
from backprobe.stages.probe.recording.crank_wires import add_wires, refined
from backprobe.stages.probe.recording.engine_speed import SpeedStart, speed_starts
from backprobe.stages.probe.recording.evidence import (
    CHARGING_V,
    SHORTEST_S,
    SLOW_STEP_S,
    SOON_S,
    Candidate,
    Evidence,
    add_afterwards,
    shape_of,
)
from backprobe.stages.probe.recording.falls import falls
from backprobe.stages.probe.recording.regions import RESTING_V
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.recording.signs import Sign, in_words, sureness
from backprobe.stages.probe.recording.switching import LONGEST_CRANK_S

LISTED = 0.2  # what is less likely than this is called a load, not a crank
LIKELY = 0.5
SURE = 0.8  # from here on a crank is evidence
# A later fall ends the time in which a start would have shown if it is this much as deep and looks this much as likely.
RIVALS = ((0.8, 0.2), (0.4, 0.5))
AT_ONCE_S = 0.5  # a fall that begins so soon after another one's recovery is its rival whatever its depth
GENERATOR_S = 3.0  # a rise to charging this soon after a fall belongs to it: generators come in late
TELLING_S = 2.0  # a recording that ends sooner after the last crank does not show whether the engine ran


@dataclass(frozen=True, slots=True, kw_only=True)
class Crank:
    """One attempt: its times [s], whether the engine ran afterwards, how sure it is that this was a crank, and why."""

    start_s: float
    end_s: float
    started: bool
    sure: float
    why: tuple[str, ...]


def cranks(scene: Scene) -> tuple[Crank, ...]:
    """Everything that may have been a crank, in order of time; also loads, with a `sure` below `LISTED`."""
    if any(mark.key is Key.CRANK for mark in scene.recording.keys):
        return _by_key_column(scene)
    found_at = [refined(scene, candidate) for candidate in _candidates(scene)]
    seen = [(candidate, shape_of(scene, candidate)) for candidate in found_at]
    add_wires(scene, seen)
    shapes = [sureness(shape.signs) for _, shape in seen]
    untils = [_until([candidate for candidate, _ in seen], shapes, at=at) for at in range(len(seen))]
    found: list[Crank] = []
    for (candidate, shape), until_s in zip(seen, untils, strict=True):
        add_afterwards(shape, scene, candidate=candidate, until_s=min(until_s, scene.recording.end_s))
        _just_started(scene, candidate, found=shape, before=found)
        found.append(_weighed(scene, candidate, found=shape))
    return tuple(found)


def _just_started(scene: Scene, candidate: Candidate, *, found: Evidence, before: Sequence[Crank]) -> None:
    """Add that the engine was started shortly before and the generator has not come in since: then it still runs."""
    starts = (crank for crank in reversed(before) if crank.started and crank.sure >= SURE)
    last = next(starts, None)
    if last is None or candidate.start_s - last.end_s > SOON_S:
        return
    levels = scene.supply_levels(last.end_s, candidate.start_s)
    if not levels or max(levels) < CHARGING_V * scene.scale:
        found.add(Sign.JUST_STARTED, since_s=candidate.start_s - last.end_s)


def _candidates(scene: Scene) -> list[Candidate]:
    """All candidates; where two describe the same moment, the one that the supply's level shows is kept."""
    found = [
        Candidate(fall.start_s, fall.end_s, fall)
        for from_s, to_s in scene.regions
        for fall in falls(scene.supply(from_s, to_s), scale=scene.scale)
    ]
    found = _with_speed(scene, found)
    found += [each for each in _by_wires(scene) if not _overlaps(each, found)]
    lead_s = max(GENERATOR_S, 3 * scene.supply_step_s)
    changes = (each for each in _by_change(scene) if not _overlaps(replace(each, start_s=each.start_s - lead_s), found))
    found += changes
    return sorted(found, key=lambda candidate: candidate.start_s)


def _overlaps(candidate: Candidate, others: Sequence[Candidate]) -> bool:
    return any(other.start_s <= candidate.end_s and candidate.start_s <= other.end_s for other in others)


def _with_speed(scene: Scene, found: list[Candidate]) -> list[Candidate]:
    """The candidates with those that only the engine speed shows; on slow recordings it also ends the others."""
    if scene.speed is None:
        return found
    speed_step_s = scene.speed.step_s
    for start in speed_starts(scene.speed):
        step_s = max(scene.supply_step_s, speed_step_s)
        near = [at for at, each in enumerate(found) if _belongs(each, start, step_s=step_s)]
        if not near:
            found = [*found, Candidate(start.turned_s, start.ran_s, None, "speed")]
        elif step_s > SLOW_STEP_S:
            last = found[near[-1]]
            earlier = last.start_s < start.stood_s - 2 * step_s  # another load, still on when the starter turned
            start_s = start.stood_s - speed_step_s if earlier else last.start_s
            end_s = min(last.end_s, start.ran_s) if start.ran_s > start_s else last.end_s
            changed = Candidate(start_s, max(start_s, end_s), last.fall)
            found = [*found[: near[-1]], changed, *found[near[-1] + 1 :]]
    return found


def _belongs(candidate: Candidate, start: SpeedStart, *, step_s: float) -> bool:
    """Whether a fall of the supply goes with a start that the engine speed shows."""
    return candidate.start_s <= start.ran_s + step_s and candidate.end_s >= start.stood_s - 2.0


def _by_wires(scene: Scene) -> list[Candidate]:
    """The times at which a switched wire was dead, or live, for about as long as a crank lasts.

    Nothing where a reference that stays live was sampled fast enough to show a crank itself.
    """
    own = scene.wires[scene.reference.name] if scene.reference else None
    if own and scene.supply_step_s <= SLOW_STEP_S and not own.blinks(live=False, least_s=0, most_s=LONGEST_CRANK_S):
        return []
    least_s = SHORTEST_S if scene.supply_step_s < SHORTEST_S / 3 else 0.0
    spells = [
        spell
        for wire in scene.switched.values()
        for live in (False, True)
        for spell in wire.blinks(live=live, least_s=least_s, most_s=LONGEST_CRANK_S)
    ]
    found: list[Candidate] = []
    for spell in sorted(spells, key=lambda spell: spell.length_s):
        candidate = Candidate(spell.from_s, spell.to_s, None, "wire")
        if not _overlaps(candidate, found):
            found.append(candidate)
    return found


def _by_change(scene: Scene) -> list[Candidate]:
    """On slow recordings: rises from rest to charging within a few samples, whose dip may have been missed."""
    if scene.supply_step_s <= SLOW_STEP_S:
        return []
    rest_V, charging_V = RESTING_V * scene.scale, CHARGING_V * scene.scale
    found = []
    for from_s, to_s in scene.regions:
        line = scene.supply(from_s, to_s)
        for at in range(3, len(line) - 1):
            before, here = line.values[at - 3 : at], line.values[at : at + 2]
            if max(before) <= rest_V and min(here) >= charging_V:
                found.append(Candidate(line.time_s[at - 1], line.time_s[at], None, "change"))
    return found


def _weighed(scene: Scene, candidate: Candidate, *, found: Evidence) -> Crank:
    why = in_words(found.signs, found.figures)
    if _cut(scene, candidate, found=found):
        why = (*why, "the recording ends too soon to show whether the engine ran")
    sure = sureness(found.signs)
    return Crank(start_s=candidate.start_s, end_s=candidate.end_s, started=found.started, sure=sure, why=why)


def _until(candidates: Sequence[Candidate], shapes: Sequence[float], *, at: int) -> float:
    """The beginning of the next candidate that may have started the engine instead of this one."""
    own = candidates[at]
    if own.fall is not None and own.fall.taken_over:
        return own.fall.end_s
    later = zip(candidates[at + 1 :], shapes[at + 1 :], strict=True)
    rivals = (each.start_s for each, shape in later if _rivals(own, each, odds=(shapes[at], shape)))
    return next(rivals, math.inf)


def _rivals(own: Candidate, later: Candidate, *, odds: tuple[float, float]) -> bool:
    own_V, later_V = (each.fall.depth_V if each.fall is not None else None for each in (own, later))
    at_once = later.start_s - own.end_s < AT_ONCE_S
    for depth, likely in RIVALS:
        deep = own_V is None or later_V is None or later_V >= depth * own_V or at_once
        if deep and odds[1] >= likely * odds[0]:
            return True
    return False


def _cut(scene: Scene, candidate: Candidate, *, found: Evidence) -> bool:
    return not found.started and scene.recording.end_s - candidate.end_s < TELLING_S


def _by_key_column(scene: Scene) -> tuple[Crank, ...]:
    """The attempts that the key column shows; whether the engine ran, the column says, or the level or speed."""
    marks = scene.recording.keys
    ends = [*(mark.time_s for mark in marks[1:]), scene.recording.end_s]
    turns = [(mark.time_s, end_s, at) for at, (mark, end_s) in enumerate(zip(marks, ends, strict=True))]
    turns = [turn for turn in turns if marks[turn[2]].key is Key.CRANK]
    found = []
    for number, (start_s, end_s, at) in enumerate(turns):
        last = number == len(turns) - 1
        until_s = scene.recording.end_s if last else turns[number + 1][0]
        after = marks[at + 1].key if at + 1 < len(marks) else None
        started, said = _ran(scene, Candidate(start_s, end_s, None, "key"), after=after, until_s=until_s)
        why = ("the key column says so", said)
        found.append(Crank(start_s=start_s, end_s=end_s, started=started, sure=1.0, why=why))
    return tuple(found)


def _ran(scene: Scene, candidate: Candidate, *, after: Key | None, until_s: float) -> tuple[bool, str]:
    """Whether the engine ran after an attempt that the key column shows, and what says so."""
    if after is Key.RUNNING:
        return True, "the key column goes to running"
    if after is None:
        return False, "the recording ends in the crank"
    found = Evidence()
    add_afterwards(found, scene, candidate=candidate, until_s=until_s)
    if found.started:
        return True, "the level or the engine speed shows that the engine ran"
    seen = {Sign.STAYS_AT_REST, Sign.SPEED_STANDS, Sign.SPEED_TURNS} & set(found.signs)
    if seen or after is not Key.ON:
        return False, "the engine did not run afterwards"
    if until_s < scene.recording.end_s:
        return False, "another attempt follows"
    return True, "no attempt follows: taken for the one that started the engine"
