"""When a wire goes live and when it goes dead.

A wire counts as live above half of the system voltage and as dead below 0.15 of it; in between it stays what it was,
so that a deep crank (6.0 V of 24 V in ISO 16750-2) does not switch anything off, and a 5 V signal never counts as live.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.recording import Channel
from backprobe.stages.probe.recording.trace import Line, Sight, buckets, merged

LIVE_SHARE = 0.5
DEAD_SHARE = 0.15
RESTLESS_CHANGES = 60  # a wire that switches more often is pulsed: a dimmed lamp, a data line
LONGEST_CRANK_S = 30.0
CONTACT_S = 0.1  # a shorter spell is a bad contact, where the sampling is fast enough to tell
CONTACT_STEP_S = 0.02


@dataclass(frozen=True, slots=True)
class Spell:
    """A wire was live, or dead, from `from_s` to `to_s`; the recording's own ends cut the first and the last."""

    from_s: float
    to_s: float
    live: bool

    @property
    def length_s(self) -> float:
        """How long it lasted [s]."""
        return self.to_s - self.from_s


@dataclass(frozen=True, slots=True)
class Switching:
    """A wire's spells in order of time; none where it is `restless`, which means pulsed."""

    spells: tuple[Spell, ...]
    restless: bool = False

    def live_at(self, time_s: float) -> bool | None:
        """Whether the wire was live at a time; None where that is not known."""
        return next((spell.live for spell in self.spells if spell.from_s <= time_s < spell.to_s), None)

    @property
    def live_s(self) -> float:
        """How long the wire was live altogether [s]."""
        return math.fsum(spell.length_s for spell in self.spells if spell.live)

    @property
    def rests_dead(self) -> bool:
        """Whether the wire is dead but for short spells, as a start wire is."""
        ends = self.spells[:1] + self.spells[-1:]
        lives = (spell for spell in self.spells if spell.live)
        return not any(spell.live for spell in ends) and all(spell.length_s <= LONGEST_CRANK_S for spell in lives)

    def blinks(self, *, live: bool, least_s: float, most_s: float) -> tuple[Spell, ...]:
        """The spells of one state that lasted so long, with the other state on both sides."""
        inner = self.spells[1:-1]
        return tuple(spell for spell in inner if spell.live is live and least_s <= spell.length_s <= most_s)


Places = dict[str, list[tuple[float, float]]]


def unsettled(sight: Sight, channels: Sequence[Channel], *, system_V: int) -> Places:
    """For each channel, by name, the stretches [s] in which it may have switched, told from the envelope alone.

    Of a recording that is at hand whole, the whole. A pulsed channel has more than `RESTLESS_CHANGES` stretches.
    """
    whole = [(sight.recording.start_s, sight.recording.end_s)]
    return {each.name: whole if sight.whole else _unsettled(sight, each, system_V=system_V) for each in channels}


def is_restless(spans: Sequence[tuple[float, float]]) -> bool:
    """Whether a channel with so many stretches is pulsed."""
    return len(spans) > RESTLESS_CHANGES


def switchings(sight: Sight, places: Places, *, system_V: int) -> dict[str, Switching]:
    """The spells of each channel, by name; `places` are those of `unsettled`, whose rows are fetched already."""
    return {
        name: Switching((), restless=True)
        if is_restless(spans)
        else _switching(sight, name, spans=merged(spans), system_V=system_V)
        for name, spans in places.items()
    }


def _unsettled(sight: Sight, channel: Channel, *, system_V: int) -> list[tuple[float, float]]:
    """The buckets that hold both states, and those between a bucket of one state and one of the other."""
    live_V, dead_V = LIVE_SHARE * system_V, DEAD_SHARE * system_V
    spans: list[tuple[float, float]] = []
    since_s, state = sight.recording.start_s, None
    for start_s, end_s, low, high in buckets(sight.recording, channel):
        if low >= live_V or high <= dead_V:
            if state is not None and state is not (low >= live_V):
                spans.append((since_s, end_s))
            since_s, state = start_s, low >= live_V
        elif low <= dead_V and high >= live_V:
            spans.append((start_s, end_s))
    return spans


def _switching(sight: Sight, name: str, *, spans: list[tuple[float, float]], system_V: int) -> Switching:
    recording = sight.recording
    changes = [
        change
        for from_s, to_s in spans
        for change in _changes(sight.line(name, from_s=from_s, to_s=to_s), system_V=system_V)
    ]
    if not changes:
        middle = sight.channels[name].mean >= LIVE_SHARE * system_V
        return Switching((Spell(recording.start_s, recording.end_s, middle),))
    spells = _spells(changes, start_s=recording.start_s, end_s=recording.end_s)
    settled = _settled(spells) if recording.interval_s <= CONTACT_STEP_S else spells
    return Switching(tuple(settled), restless=len(settled) > RESTLESS_CHANGES)


def _changes(line: Line, *, system_V: int) -> Iterator[tuple[float, bool]]:
    """The states found in a line, each with its beginning: the first state, then every change."""
    live_V, dead_V = LIVE_SHARE * system_V, DEAD_SHARE * system_V
    state: bool | None = None
    left = 0  # the last sample that still held the state
    for index, volts in enumerate(line.values):
        if volts >= live_V:
            if not state:
                yield _between(line, index - 1), True
            state, left = True, index
        elif volts <= dead_V:
            if state is None or state:
                yield _between(line, left if state else index - 1), False
            state, left = False, index


def _between(line: Line, index: int) -> float:
    """The moment half way between a sample and the next one."""
    if index < 0:
        return line.time_s[0]
    return (line.time_s[index] + line.time_s[min(index + 1, len(line) - 1)]) / 2


def _spells(changes: list[tuple[float, bool]], *, start_s: float, end_s: float) -> list[Spell]:
    """Spells from the recording's beginning to its end; changes that change nothing are dropped."""
    kept = [change for i, change in enumerate(changes) if i == 0 or changes[i - 1][1] is not change[1]]
    begins = [start_s, *(time_s for time_s, _ in kept[1:])]
    ends = [*begins[1:], end_s]
    return [Spell(begin, end, live) for begin, end, (_, live) in zip(begins, ends, kept, strict=True)]


def _settled(spells: list[Spell]) -> list[Spell]:
    """The spells without bad contacts: one that is too short becomes part of the spell before it."""
    found: list[Spell] = []
    for spell in spells:
        same = found and (spell.length_s < CONTACT_S or spell.live is found[-1].live)
        if same:
            found[-1] = Spell(found[-1].from_s, spell.to_s, found[-1].live)
        else:
            found.append(spell)
    return found
