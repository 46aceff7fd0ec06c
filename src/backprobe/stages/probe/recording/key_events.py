"""When the key was turned, and where it stood meanwhile: from the key column, or as far as the waveforms prove it.

Without a key column only off, on, crank and running can be told, and only where wires prove them: 'on' begins where a
wire comes alive that stays so through the crank. Accessory and after are never inferred.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise

from backprobe.evidence.keys import Key
from backprobe.stages.probe.recording.cranks import LIKELY, LISTED, SURE, Crank
from backprobe.stages.probe.recording.evidence import ABOVE_REST_V, CHARGING_V, RESTING_V, rest_V
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.recording.switching import Spell

TOGETHER_S = 1.0  # wires that come alive within this time were switched by one turn of the key
KEY_LEAD_S = 0.6  # an accessory wire may go dead this long before the starter turns
SLOW_S = 0.1
OFF_S, AFTER_S = 60.0, 600.0
RUNNING_FROM_S = 2.0
RUNNING_TO_S = (12.0, 6.0)  # the generator may come in late; the engine may stop early
LEAST_S = 0.2
THROUGH_S = 0.3  # a start wire may stay live this long after the starter was released
LIVE_KEYS = (Key.ON, Key.CRANK, Key.RUNNING)
AS_THEY_STAND = (Key.ACCESSORY, Key.ISOLATED, Key.CHARGING, Key.RUNNING)


@dataclass(frozen=True, slots=True)
class Events:
    """The turn of the key that started the engine; times in s, None where the recording does not show them."""

    key_on_s: float | None = None
    crank_start_s: float | None = None
    crank_end_s: float | None = None


@dataclass(frozen=True, slots=True)
class Stretch:
    """The key stood at `key` from `from_s` to `to_s`; `after_min` is minutes since key-off at its middle."""

    key: Key
    from_s: float
    to_s: float
    after_min: float | None = None

    @property
    def length_s(self) -> float:
        """How long it lasted [s]."""
        return self.to_s - self.from_s


def starting_crank(cranks: Sequence[Crank]) -> Crank | None:
    """The first attempt after which the engine ran and that is more likely a crank than not."""
    return next((crank for crank in cranks if crank.started and crank.sure >= LIKELY), None)


def events(scene: Scene, cranks: Sequence[Crank]) -> Events:
    """The events of the crank that started the engine; key-on is the last one before it."""
    crank = starting_crank(cranks)
    likely = [each for each in cranks if each.sure >= LIKELY]
    first = crank or (likely[0] if likely else None)
    key_on_s = _key_on_by_column(scene, first) if scene.recording.keys else _key_on_by_wires(scene, first)
    return Events(key_on_s, crank.start_s if crank else None, crank.end_s if crank else None)


def stretches(scene: Scene, cranks: Sequence[Crank], *, found: Events) -> tuple[Stretch, ...]:
    """Where the key stood, position by position; only what is certain."""
    if scene.recording.keys:
        return tuple(_by_column(scene, cranks))
    return tuple(stretch for stretch in _by_wires(scene, cranks, found=found) if stretch.length_s >= LEAST_S)


def _key_on_by_column(scene: Scene, crank: Crank | None) -> float | None:
    """The last change from a dead position to on before the crank; a first word further down is such a change too."""
    marks = scene.recording.keys
    turned = [b.time_s for a, b in pairwise(marks) if b.key in LIVE_KEYS and a.key not in LIVE_KEYS]
    if marks[0].key in LIVE_KEYS and marks[0].time_s > scene.recording.start_s:
        turned.insert(0, marks[0].time_s)
    before = [time_s for time_s in turned if crank is None or time_s <= crank.start_s]
    return before[-1] if before else None


def _key_on_by_wires(scene: Scene, crank: Crank | None) -> float | None:
    """Where most wires came alive that were live when the crank began; those that live through it count first."""
    through = [spell.from_s for spell in _alive_before(scene, crank, through=True)]
    dying = [spell.from_s for spell in _alive_before(scene, crank, through=False)]
    if not through:
        return max(dying, default=None)
    together = {
        time_s: sum(1 for other in (*through, *dying) if abs(other - time_s) <= TOGETHER_S) for time_s in through
    }
    most = max(together.values())
    latest = max(time_s for time_s, count in together.items() if count == most)
    return min(time_s for time_s in through if latest - TOGETHER_S <= time_s <= latest) if crank else latest


def _alive_before(scene: Scene, crank: Crank | None, *, through: bool) -> Iterator[Spell]:
    """The live spells, with a beginning that was seen, in which the crank began; through it, or ending with it."""
    for channel in scene.candidates:
        for spell in scene.wires[channel.name].spells:
            seen = spell.live and spell.from_s > scene.recording.start_s
            if seen and _holds_crank(spell, crank, through=through, late_s=late_s(scene)):
                yield spell


def late_s(scene: Scene) -> float:
    """A wire that goes dead no later than this after a crank did not live through it [s]."""
    return THROUGH_S + 1.5 * scene.supply_step_s


def _holds_crank(spell: Spell, crank: Crank | None, *, through: bool, late_s: float) -> bool:
    """Whether a crank began in a live spell and ended in it (or with it); without a crank every spell will do."""
    if crank is None:
        return through
    if spell.from_s >= crank.start_s - LEAST_S / 2 or spell.to_s < crank.start_s - KEY_LEAD_S:
        return False
    return (spell.to_s > crank.end_s + late_s) is through


def _by_column(scene: Scene, cranks: Sequence[Crank]) -> Iterator[Stretch]:
    """The stretches of the key column; 'on' after a start counts as running, after a failed start as nothing."""
    marks = scene.recording.keys
    ends = [*(mark.time_s for mark in marks[1:]), scene.recording.end_s]
    off_s: float | None = None
    for mark, end_s in zip(marks, ends, strict=True):
        before = [crank for crank in cranks if crank.end_s <= mark.time_s]
        if mark.key is Key.OFF:
            off_s = mark.time_s
            yield from _off(mark.time_s, end_s)
        elif mark.key is Key.AFTER:
            since_min = None if off_s is None else ((mark.time_s + end_s) / 2 - off_s) / 60
            yield Stretch(Key.AFTER, mark.time_s, end_s, since_min)
        elif mark.key in AS_THEY_STAND or (mark.key is Key.ON and not before):
            yield Stretch(mark.key, mark.time_s, end_s)
        elif mark.key is Key.ON and before[-1].started:
            yield Stretch(Key.RUNNING, min(mark.time_s + RUNNING_FROM_S, end_s), end_s)


def _off(from_s: float, to_s: float) -> Iterator[Stretch]:
    """The first minute of a key-off, and what lies ten minutes later."""
    yield Stretch(Key.OFF, from_s, min(to_s, from_s + OFF_S))
    if to_s - from_s >= AFTER_S:
        yield Stretch(Key.AFTER, from_s + AFTER_S, to_s, ((to_s + from_s + AFTER_S) / 2 - from_s) / 60)


def _by_wires(scene: Scene, cranks: Sequence[Crank], *, found: Events) -> Iterator[Stretch]:
    """Off and on as switched wires prove them, running as level or engine speed prove it."""
    likely = [crank for crank in cranks if crank.sure >= LIKELY]
    step_s = scene.supply_step_s
    clear_s = step_s if step_s > LEAST_S / 4 else LEAST_S / 2  # a turn of the key lies somewhere between two samples
    proven = likely and any(_alive_before(scene, likely[0], through=True))
    if proven and found.key_on_s is not None and found.key_on_s < likely[0].start_s:
        if not _accessory_before(scene, likely[0], key_on_s=found.key_on_s):
            yield Stretch(Key.OFF, scene.recording.start_s, _first_edge_s(scene, found.key_on_s) - clear_s)
        first_s = _first_fall_s(cranks, found.key_on_s, slow=step_s > SLOW_S)
        yield Stretch(Key.ON, found.key_on_s + clear_s, first_s - clear_s)
    yield from _running(scene, cranks)


def _first_fall_s(cranks: Sequence[Crank], key_on_s: float, *, slow: bool) -> float:
    """When the first thing after key-on began that may have been a crank; on slow recordings any load may."""
    least = 0.0 if slow else LISTED
    return min(crank.start_s for crank in cranks if crank.end_s > key_on_s and crank.sure >= least)


def _accessory_before(scene: Scene, crank: Crank, *, key_on_s: float) -> bool:
    """Whether a wire that is dead in the crank was live from the recording's beginning: the key was not off then."""
    start_s = scene.recording.start_s
    for channel in scene.candidates:
        wire = scene.wires[channel.name]
        if wire.live_at(start_s) and wire.live_at((crank.start_s + crank.end_s) / 2) is False:
            return True
    return key_on_s <= start_s


def _first_edge_s(scene: Scene, key_on_s: float) -> float:
    """When the first of all wires changed, at the latest at key-on."""
    edges = [spell.from_s for wire in scene.switched.values() for spell in wire.spells[1:]]
    return min([*edges, key_on_s])


def _running(scene: Scene, cranks: Sequence[Crank]) -> Iterator[Stretch]:
    """Some seconds after a sure start, where the supply still stands above rest or the engine speed says so."""
    for at, crank in enumerate(cranks):
        if not crank.started or crank.sure < SURE:
            continue
        next_s = min((later.start_s for later in cranks[at + 1 :] if later.sure >= LIKELY), default=float("inf"))
        latest_s = min(next_s, scene.recording.end_s, key_off_s(scene, crank))
        from_s = crank.end_s + min(RUNNING_FROM_S, (latest_s - crank.end_s) / 2)
        tried = (Stretch(Key.RUNNING, from_s, min(latest_s, crank.end_s + to_s)) for to_s in RUNNING_TO_S)
        proven = (each for each in tried if each.length_s >= LEAST_S and _runs(scene, crank, stretch=each))
        yield from islice(proven, 1)


def key_off_s(scene: Scene, crank: Crank) -> float:
    """When the key column, or the first wire that lived through the crank, goes dead; else the recording's end."""
    dead = (mark.time_s for mark in scene.recording.keys if mark.time_s > crank.end_s and mark.key not in LIVE_KEYS)
    if scene.recording.keys:
        return next(dead, scene.recording.end_s)
    spells = (spell for channel in scene.candidates for spell in scene.wires[channel.name].spells if spell.live)
    past_s = crank.end_s + late_s(scene)
    held = (spell.to_s for spell in spells if spell.from_s < crank.start_s and spell.to_s > past_s)
    return min(held, default=scene.recording.end_s)


def _runs(scene: Scene, crank: Crank, *, stretch: Stretch) -> bool:
    levels = scene.supply_levels(stretch.from_s, stretch.to_s)
    resting = rest_V(scene, crank.start_s) or RESTING_V * scene.scale
    enough_V = min(CHARGING_V * scene.scale, resting + ABOVE_REST_V * scene.scale)
    if scene.speed is not None:
        speeds = scene.speed.between(stretch.from_s, stretch.to_s).values
        return bool(speeds) and min(speeds) > 0
    return bool(levels) and min(levels) >= enough_V
