"""What all looks at one recording share: its rows, how its wires switch, which channel shows the battery."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.recording import Channel, Recording
from backprobe.stages.probe.recording.engine_speed import speed_line
from backprobe.stages.probe.recording.reference import battery, reference, steadiest
from backprobe.stages.probe.recording.regions import regions
from backprobe.stages.probe.recording.switching import Switching, is_restless, switchings, unsettled
from backprobe.stages.probe.recording.trace import EMPTY, Line, Sight

BEFORE_S, AFTER_S = 5.0, 13.0  # what else is asked of a crank lies this near to it,
BEFORE_ROWS, AFTER_ROWS = 15_000, 30_000  # or within so many rows
CONTACT_LOST_V = 1.5  # no crank pulls a 12 V battery below this: what lies lower is lost contact


@dataclass(frozen=True, slots=True)
class Scene:
    """A recording in a system of `system_V`, looked through once for wires, reference and engine speed."""

    sight: Sight
    system_V: int
    wires: dict[str, Switching]
    reference: Channel | None
    speed: Line | None
    regions: tuple[tuple[float, float], ...]  # where it is worth looking for cranks [s]

    @property
    def recording(self) -> Recording:
        """The recording itself."""
        return self.sight.recording

    @property
    def scale(self) -> float:
        """System voltage / 12: what figures for a 12 V system are multiplied by."""
        return self.system_V / 12

    def step_s(self, channel: Channel | None) -> float:
        """The step between a channel's own values [s]: rows in which it is empty do not count."""
        rows = channel.rows if channel is not None else 0
        return self.recording.interval_s * self.recording.rows / rows if rows else self.recording.interval_s

    @property
    def supply_step_s(self) -> float:
        """The step between the reference channel's values [s]."""
        return self.step_s(self.reference)

    @property
    def battery(self) -> Channel | None:
        """The channel on the battery itself, whatever it shows."""
        return battery(self.recording.voltages)

    @property
    def candidates(self) -> tuple[Channel, ...]:
        """The wires under the probe: every voltage but the battery."""
        return tuple(channel for channel in self.recording.voltages if channel is not self.battery)

    @property
    def switched(self) -> dict[str, Switching]:
        """How each wire under the probe switches, by name; the battery does not switch, its clip falls off."""
        return {channel.name: self.wires[channel.name] for channel in self.candidates}

    def supply(self, from_s: float, to_s: float) -> Line:
        """The reference channel between two times, lost contacts taken out; nothing where there is none."""
        if self.reference is None:
            return EMPTY
        line = self.sight.line(self.reference.name, from_s=from_s, to_s=to_s)
        return line.above(CONTACT_LOST_V * self.scale)

    def supply_levels(self, from_s: float, to_s: float) -> list[float]:
        """The reference's level second by second, lost contacts taken out."""
        if self.reference is None or to_s <= from_s:
            return []
        levels = self.sight.levels(self.reference.name, from_s=from_s, to_s=to_s)
        return [level for level in levels if level >= CONTACT_LOST_V * self.scale]


def scene_of(recording: Recording, *, system_V: int) -> Scene:
    """Looks a recording through for the first time; all rows that will be wanted are read again in one go."""
    sight = Sight(recording)
    speed = speed_line(sight)
    places = unsettled(sight, recording.voltages, system_V=system_V)
    first_guess = battery(recording.voltages) or steadiest(recording)
    spans = regions(sight, first_guess, speed=speed, scale=system_V / 12)
    calm = (span for found in places.values() if not is_restless(found) for span in found)
    before_s, after_s = min(BEFORE_S, sight.seconds_of(BEFORE_ROWS)), min(AFTER_S, sight.seconds_of(AFTER_ROWS))
    sight.fetch((from_s - before_s, to_s + after_s) for from_s, to_s in (*calm, *spans))
    wires = switchings(sight, places, system_V=system_V)
    supply = reference(sight, wires, system_V=system_V)
    if supply is not first_guess:
        spans = regions(sight, supply, speed=speed, scale=system_V / 12)
    return Scene(sight, system_V, wires, supply, speed, tuple(spans))
