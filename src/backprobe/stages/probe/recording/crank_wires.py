"""Wires that are dead, or live, just while the starter turns: accessories, ignitions that drop out, the start wire."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from backprobe.stages.probe.recording.evidence import Candidate, Evidence
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.recording.signs import Sign
from backprobe.stages.probe.recording.switching import LONGEST_CRANK_S, Spell, Switching

# How much earlier and later than the crank itself a wire may switch [s]: one that goes dead follows the key.
LEAD_S = {False: 0.6, True: 0.15}
LAG_S = {False: 0.5, True: 0.25}
SHORT_S = 0.15  # a spell may begin so much later, or end so much earlier, than the crank


def add_wires(scene: Scene, seen: Sequence[tuple[Candidate, Evidence]]) -> None:
    """Add to each candidate's evidence which wires switched with it, and which did so only with others."""
    blinking = [frozenset(_blinking(scene, candidate)) for candidate, _ in seen]
    every = frozenset[tuple[str, bool]]().union(*blinking)
    for (candidate, found), own in zip(seen, blinking, strict=True):
        other = candidate.seen_in != "wire" or len(own) > 1  # what was seen on a wire is not confirmed by that wire
        dropped = sorted(name for name, live in own if not live and other)
        started = sorted(name for name, live in own if live and other)
        if dropped:
            found.add(Sign.WIRE_DROPS, dropped=dropped[0])
        if started:
            found.add(Sign.WIRE_LIVE, started=started[0])
        staying = sorted(name for name, live in every - own if _stays(scene, candidate, name=name, live=not live))
        if staying:
            found.add(Sign.WIRE_STAYS, staying=staying[0])


def refined(scene: Scene, candidate: Candidate) -> Candidate:
    """The candidate, begun later where a wire switched inside it and ended with it.

    Then a load was on before, and was switched off when the starter turned, so that the level hardly shows the crank.
    """
    if candidate.fall is None:
        return candidate
    step_s = 1.5 * scene.recording.interval_s
    inside = [
        spell.from_s
        for wire in scene.switched.values()
        for live in (False, True)
        for spell in _short_spells(wire, live=live)
        if candidate.start_s + LEAD_S[False] + step_s < spell.from_s < candidate.end_s
        and abs(spell.to_s - candidate.end_s) <= LAG_S[live] + step_s
    ]
    return replace(candidate, start_s=max(inside)) if inside else candidate


def _blinking(scene: Scene, candidate: Candidate) -> Iterator[tuple[str, bool]]:
    """The wires that were live (True), or dead (False), just while the candidate lasted."""
    step_s = 1.5 * scene.recording.interval_s
    for name, wire in scene.switched.items():
        for live in (False, True):
            if any(_covers(spell, candidate, step_s=step_s) for spell in _short_spells(wire, live=live)):
                yield name, live


def _short_spells(wire: Switching, *, live: bool) -> tuple[Spell, ...]:
    """The spells that may have been cranks; an accessory that is live between key-on and crank is no start wire."""
    if live and not wire.rests_dead:
        return ()
    return wire.blinks(live=live, least_s=0.0, most_s=LONGEST_CRANK_S)


def _covers(spell: Spell, candidate: Candidate, *, step_s: float) -> bool:
    early_s, late_s = candidate.start_s - spell.from_s, spell.to_s - candidate.end_s
    lag_s = LAG_S[spell.live] + step_s
    short_s = -SHORT_S - lag_s / 2
    return short_s <= early_s <= LEAD_S[spell.live] + step_s and short_s <= late_s <= lag_s


def _stays(scene: Scene, candidate: Candidate, *, name: str, live: bool) -> bool:
    """Whether a wire was in one state all the while, and around it."""
    spells = scene.wires[name].spells
    from_s, to_s = candidate.start_s - SHORT_S, candidate.end_s + SHORT_S
    return any(spell.live is live and spell.from_s <= from_s and to_s <= spell.to_s for spell in spells)
