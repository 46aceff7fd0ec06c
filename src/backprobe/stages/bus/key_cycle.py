"""The key's turns as the bus shows them from inside: on, each turn of the starter, running, off.

A bus has no key on it. It shows what follows from a turn: computers wake and talk, the engine turns, runs and stands,
computers that hang on the key fall silent. What was so when the log began, or still is when it ends, is no turn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.keys import Key
from backprobe.stages.bus.engine import Attempt, EngineTrack
from backprobe.stages.bus.nodes import SILENCE_S, NodeTrack
from backprobe.stages.bus.volts import VoltTrack

BEGINS_S = 1.0  # an engine computer that talks so soon after the log's first frame talked before
WAKES_S = 5.0  # it talks at most so long after the key woke the bus
TOGETHER_S = 6.0  # computers that hang on the key fall silent within this time
STOPS_S = (3.0, 5.0)  # the engine stands at most so long before the first, and after the last of them fell silent
SHARE_WITH_STOP, SHARE_ALONE = 1 / 3, 1 / 2  # of those that talked: where the engine stopped as well, and where not
OFF_LABEL_S = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Crank:
    """One turn of the starter [s]; `started` is None where the log breaks off in it."""

    start_s: float
    end_s: float
    started: bool | None
    starter_rpm: float
    lowest_V: float | None = None
    lowest_s: float | None = None
    rest_V: float | None = None
    samples: int = 0
    step_s: float | None = None


def cranked(attempt: Attempt, volts: VoltTrack) -> Crank:
    """A turn of the starter with what the supply did in it, so far as reports of it are still at hand."""
    seen = volts.in_crank(attempt.start_s, attempt.end_s, stood_s=attempt.stood_s)
    return Crank(
        start_s=seen.start_s,
        end_s=attempt.end_s,
        started=attempt.started,
        starter_rpm=attempt.starter_rpm,
        lowest_V=seen.lowest_V,
        lowest_s=seen.lowest_s,
        rest_V=seen.rest_V,
        samples=seen.samples,
        step_s=seen.step_s,
    )


@dataclass(frozen=True, slots=True)
class KeyOff:
    """The key went off: at the latest when the first computers fell silent, `silent_s`; the engine stood at `off_s`."""

    silent_s: float
    off_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyCycle:
    """The turns seen in a log, in seconds from its first frame.

    `on_at_start` says that the key was on when the log began. `stops_s` are the moments when the engine stood again.
    """

    on_at_start: bool = False
    ons_s: tuple[float, ...] = ()
    cranks: tuple[Crank, ...] = ()
    stops_s: tuple[float, ...] = ()
    offs: tuple[KeyOff, ...] = ()
    end_s: float = 0.0
    runs_at_start: bool = False

    @property
    def on_s(self) -> float | None:
        """The first turn to on; None where none was seen."""
        return self.ons_s[0] if self.ons_s else None

    @property
    def off(self) -> KeyOff | None:
        """The turn to off that ends the log; None where the key was not seen to go off, or went on again."""
        last = self.offs[-1] if self.offs else None
        return None if last is None or any(on_s > last.off_s for on_s in self.ons_s) else last

    @property
    def off_s(self) -> float | None:
        """When the engine stood, or the first computers fell silent, after the last turn to off."""
        return None if self.off is None else self.off.off_s


def key_offs(engine: EngineTrack | None, nodes: Sequence[NodeTrack], *, end_s: float) -> tuple[KeyOff, ...]:
    """Where computers fell silent together as they do when the key goes off; the log ends at `end_s`."""
    found: list[KeyOff] = []
    for group in _groups(nodes, end_s=end_s):
        first_s, last_s = group[0], group[-1]
        talking = sum(1 for node in nodes if _talks(node, first_s))
        stop_s = _stop(engine, first_s, last_s=last_s)
        share = SHARE_WITH_STOP if stop_s is not None else SHARE_ALONE
        if len(group) < share * talking or (stop_s is None and _runs(engine, first_s)):
            continue
        found.append(KeyOff(first_s, first_s if stop_s is None else max(first_s, stop_s)))
    return tuple(found)


def first_offs(offs: Sequence[KeyOff], ons_s: Sequence[float]) -> tuple[KeyOff, ...]:
    """Each off after which the key was on again before the next: a computer that sleeps later is no turn of the key."""
    kept: list[KeyOff] = []
    for off in offs:
        if not kept or any(kept[-1].silent_s < on_s < off.silent_s for on_s in ons_s):
            kept.append(off)
    return tuple(kept)


def _groups(nodes: Sequence[NodeTrack], *, end_s: float) -> Iterator[list[float]]:
    """The ends of talk that lie close together; an end of talk that the log does not outlast is none."""
    ends = sorted(
        spell.to_s for node in nodes for spell in node.spells if spell.steady and spell.to_s < end_s - SILENCE_S
    )
    group: list[float] = []
    for at_s in ends:
        if group and at_s - group[0] > TOGETHER_S:
            yield group
            group = []
        group.append(at_s)
    if group:
        yield group


def _talks(node: NodeTrack, at_s: float) -> bool:
    return any(spell.steady and spell.from_s < at_s <= spell.to_s for spell in node.spells)


def _stop(engine: EngineTrack | None, first_s: float, *, last_s: float) -> float | None:
    """The moment when the engine stood, where it lies near the silence."""
    stops = () if engine is None else engine.stops_s
    before_s, after_s = STOPS_S
    return next((stop_s for stop_s in stops if first_s - before_s <= stop_s <= last_s + after_s), None)


def _runs(engine: EngineTrack | None, at_s: float) -> bool:
    """Whether the engine ran at a moment, as far as its starts and stops tell."""
    if engine is None:
        return False
    ran = [(attempt.end_s, True) for attempt in engine.attempts if attempt.started]
    turns = sorted([*ran, *((stop_s, False) for stop_s in engine.stops_s)])
    before = [runs for time_s, runs in turns if time_s <= at_s]
    if before:
        return before[-1]
    after = [runs for time_s, runs in turns if time_s > at_s]
    return bool(after and not after[0]) or (not turns and engine.state == "runs")


def key_spans(cycle: KeyCycle) -> tuple[tuple[float, Key], ...]:
    """From when on the key stood where: (time, position), in order; nothing is said of the time before the first.

    Whether the key is at accessory, and whether retained power has gone, no bus shows.
    """
    turns: list[tuple[float, Key]] = []
    if cycle.on_at_start:
        turns.append((0.0, Key.RUNNING if cycle.runs_at_start else Key.ON))
    turns += [(on_s, Key.ON) for on_s in cycle.ons_s]
    for crank in cycle.cranks:
        turns += [(crank.start_s, Key.CRANK), (crank.end_s, Key.RUNNING if crank.started else Key.ON)]
    off_at = [off.silent_s for off in cycle.offs]
    turns += [(silent_s, Key.OFF) for silent_s in off_at]
    for stop_s in cycle.stops_s:
        if not any(off.silent_s <= stop_s <= off.off_s for off in cycle.offs):
            turns.append((stop_s, Key.ON))
    ordered = sorted(turns, key=lambda turn: turn[0])
    return tuple(turn for i, turn in enumerate(ordered) if not i or turn[1] is not ordered[i - 1][1])
