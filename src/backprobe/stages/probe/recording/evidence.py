"""Gathers the signs that a recording shows of one possible crank."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from statistics import median

from backprobe.stages.probe.recording.engine_speed import RUNS_RPM, TURNS_RPM
from backprobe.stages.probe.recording.falls import Fall
from backprobe.stages.probe.recording.ripple import AFTER_S, Ripple, ripple, ripple_span_s
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.recording.signs import Sign
from backprobe.stages.probe.recording.switching import LONGEST_CRANK_S

# Levels of a 12 V system [V], common practice, no source
CHARGING_V = 13.2
RESTING_V = 13.0  # what lies above is not taken for a battery at rest
ABOVE_REST_V = 0.4
SAME_LEVEL_V = 0.5
DEPTHS = ((2.0, Sign.VERY_DEEP), (1.2, Sign.DEEP), (0.7, Sign.MIDDLING))
TROUGH_SHARE = 0.4  # a trough counts as this much of a plateau
# Times [s]
STEEP_S = 0.05
SOON_S = 15.0
REST_WITHIN_S = 30.0
SETTLED_S = 0.3
SHORTEST_S = 0.15
LENGTHS = ((LONGEST_CRANK_S, Sign.LONG), (10.5, Sign.LONGER), (5.0, Sign.LONGISH))
RIPPLE_STEP_S = 0.0025  # slower, the ripple of a pump may be folded into the band of compressions
FAST_STEP_S, COARSE_STEP_S, MISSING_STEP_S, SLOW_STEP_S = 0.01, 0.02, 0.1, 0.25
INRUSH_SHARE = 1.25
ROUGH_SAMPLES, ROUGH_V = 4, 0.06
RIPPLE_LEAST_S, RIPPLE_SURELY_S = 0.3, 0.8  # a slow ripple needs the longer time to be seen


@dataclass(frozen=True, slots=True)
class Candidate:
    """What may have been a crank: its times [s] and, where the supply's level showed it, the fall."""

    start_s: float
    end_s: float
    fall: Fall | None = None
    seen_in: str = "level"  # or "wire", "speed", "change"


@dataclass(slots=True)
class Evidence:
    """The signs found, the figures for their words, and whether the engine ran afterwards."""

    signs: list[Sign] = field(default_factory=list)
    figures: dict[str, float | str] = field(default_factory=dict)
    started: bool = False

    def add(self, sign: Sign, **figures: float | str) -> None:
        """Take a sign down with its figures."""
        self.signs.append(sign)
        self.figures.update(figures)


def shape_of(scene: Scene, candidate: Candidate) -> Evidence:
    """The signs of a candidate itself: its shape and its length."""
    found = Evidence()
    if candidate.fall is not None:
        _shape(found, candidate.fall, scale=scene.scale)
        _ripple(found, ripple_of(scene, candidate), fall=candidate.fall)
        _unrest(found, scene, fall=candidate.fall)
    elif candidate.seen_in == "wire":
        found.add(Sign.WIRE_ONLY)
    else:
        found.add(Sign.LEVEL_ONLY)
    _length(found, candidate)
    return found


def add_afterwards(found: Evidence, scene: Scene, *, candidate: Candidate, until_s: float) -> None:
    """Add what level and engine speed say before and after; what comes later than `until_s` belongs to another."""
    _afterwards(found, scene, candidate=candidate, until_s=until_s)
    _speed(found, scene, candidate=candidate, until_s=until_s)


def ripple_of(scene: Scene, candidate: Candidate) -> Ripple | None:
    """The ripple of the supply between inrush and release."""
    from_s, to_s = ripple_span_s(candidate.start_s, candidate.end_s)
    return ripple(scene.supply(from_s, to_s), scale=scene.scale)


def rest_V(scene: Scene, time_s: float) -> float | None:
    """The level at which the battery rested in the half minute before a time [V]: the highest below charging."""
    levels = scene.supply_levels(max(time_s - REST_WITHIN_S, scene.recording.start_s), time_s)
    return max((level for level in levels if level < RESTING_V * scene.scale), default=None)


def _shape(found: Evidence, fall: Fall, *, scale: float) -> None:
    shallow = Sign.SHALLOW if fall.step_s <= MISSING_STEP_S else Sign.SHALLOW_COARSE
    found.add(
        next((sign for least_V, sign in DEPTHS if fall.depth_V >= least_V * scale), shallow), depth_V=fall.depth_V
    )
    if fall.step_s <= COARSE_STEP_S:
        steep = fall.fall_s <= STEEP_S + fall.step_s
        found.add(Sign.STEEP if steep else Sign.SLOW_FALL, fall_ms=max(fall.fall_s, fall.step_s) * 1000)
    if fall.step_s <= FAST_STEP_S and fall.length_s >= SHORTEST_S:
        inrush = fall.before_V - fall.trough_V >= INRUSH_SHARE * fall.depth_V
        found.add(Sign.INRUSH if inrush else Sign.NO_INRUSH, inrush_V=fall.plateau_V - fall.trough_V)
    if not fall.recovered:
        found.add(Sign.TAKEN_OVER if fall.taken_over else Sign.UNFINISHED)


def _ripple(found: Evidence, seen: Ripple | None, *, fall: Fall) -> None:
    if seen is not None:
        sign = Sign.RIPPLE if fall.step_s <= RIPPLE_STEP_S else Sign.RIPPLE_COARSE
        found.add(sign, ripple_Hz=seen.frequency_Hz)
    elif fall.step_s <= COARSE_STEP_S and fall.length_s - AFTER_S >= RIPPLE_LEAST_S:
        long_enough = fall.length_s - AFTER_S >= RIPPLE_SURELY_S
        found.add(Sign.NO_RIPPLE if long_enough else Sign.NO_RIPPLE_YET)


def _unrest(found: Evidence, scene: Scene, *, fall: Fall) -> None:
    """Where the sampling is too slow for a ripple: whether the plateau is rough or smooth against the level before."""
    if not COARSE_STEP_S < fall.step_s <= SLOW_STEP_S:
        return
    plateau = scene.supply(fall.start_s + 0.5 * fall.step_s + AFTER_S, fall.end_s - fall.step_s).values
    before = scene.supply(fall.start_s - 1.0 - 5 * fall.step_s, fall.start_s - fall.step_s).values
    if len(plateau) < ROUGH_SAMPLES or len(before) < ROUGH_SAMPLES:
        return
    least_V = max(ROUGH_V * scene.scale, 4.0 * _roughness_V(before))
    found.add(Sign.ROUGH if _roughness_V(plateau) >= least_V else Sign.SMOOTH)


def _roughness_V(values: Sequence[float]) -> float:
    """The median change from sample to sample [V]."""
    return median(abs(b - a) for a, b in pairwise(values))


def _length(found: Evidence, candidate: Candidate) -> None:
    length_s = candidate.end_s - candidate.start_s
    step_s = candidate.fall.step_s if candidate.fall else length_s
    if length_s < SHORTEST_S and step_s < SHORTEST_S / 3:
        found.add(Sign.BRIEF, length_s=length_s)
    for least_s, sign in LENGTHS:
        if length_s > least_s:
            found.add(sign, length_s=length_s)
            break


def _afterwards(found: Evidence, scene: Scene, *, candidate: Candidate, until_s: float) -> None:
    """Whether the level shows a running engine afterwards, and whether it did so before."""
    after = scene.supply_levels(candidate.end_s + SETTLED_S, min(until_s, candidate.end_s + SOON_S))
    before = scene.supply_levels(max(candidate.start_s - 1.0, scene.recording.start_s), candidate.start_s - 0.02)
    before_V = candidate.fall.before_V if candidate.fall else max(before, default=None)
    if not after or before_V is None:
        return
    after_V, charging_V = max(after), CHARGING_V * scene.scale
    if before_V >= charging_V and after_V - before_V < SAME_LEVEL_V * scene.scale:
        found.add(Sign.RAN_BEFORE, before_V=before_V)
        return
    if before_V >= charging_V:
        found.add(Sign.CHARGED_BEFORE, before_V=before_V)
    rest = rest_V(scene, candidate.start_s) or before_V
    found.started = after_V >= charging_V or after_V >= rest + ABOVE_REST_V * scene.scale
    slow = scene.supply_step_s > SLOW_STEP_S
    charges = Sign.CHARGES_COARSE if slow else Sign.CHARGES
    found.add(charges if found.started else Sign.STAYS_AT_REST, after_V=after_V)


def _speed(found: Evidence, scene: Scene, *, candidate: Candidate, until_s: float) -> None:
    """What the engine speed says, where it is recorded; it outweighs the level."""
    if scene.speed is None or not len(scene.speed):
        return
    step_s = max(scene.speed.step_s, 0.1)
    before = scene.speed.between(candidate.start_s - 2.0 - 2 * step_s, candidate.start_s).values
    after_s = min(until_s, candidate.end_s + 2.0 + 4 * step_s)
    then = scene.speed.between(candidate.start_s, after_s).values
    most_rpm, last_rpm = max(then, default=0.0), before[-1] if before else 0.0
    if last_rpm >= RUNS_RPM:
        found.add(Sign.SPEED_RAN, speed_rpm=last_rpm)
        found.started = False
    elif most_rpm >= RUNS_RPM:
        found.add(Sign.SPEED_RUNS, speed_rpm=most_rpm)
        found.started = True
    elif most_rpm >= TURNS_RPM:
        found.add(Sign.SPEED_TURNS, speed_rpm=most_rpm)
        found.started = False
    elif then:
        found.add(Sign.SPEED_STANDS)
        found.started = False
