"""Everything that a voltage recording says, in one look."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.keys import Key
from backprobe.evidence.reading import Reading
from backprobe.evidence.recording import Recording
from backprobe.findings import rounded
from backprobe.stages.probe.recording.channels import ChannelView, channel_view, counted
from backprobe.stages.probe.recording.cranks import LIKELY, LISTED, Crank, cranks
from backprobe.stages.probe.recording.dip import Hidden, deeper_V
from backprobe.stages.probe.recording.in_crank import windows
from backprobe.stages.probe.recording.key_events import (
    RUNNING_FROM_S,
    Events,
    Stretch,
    events,
    key_off_s,
    starting_crank,
    stretches,
)
from backprobe.stages.probe.recording.readings import look_spans, readings
from backprobe.stages.probe.recording.scene import CONTACT_LOST_V, Scene, scene_of
from backprobe.stages.probe.setup import Setup

NOTED_LOADS = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordingView:
    """What a recording says: the key's events, every attempt to crank, every channel, notes, and the readings in it.

    `time_known` is False where the file's clock stood still: then all times are estimates from the row numbers.
    """

    events: Events
    cranks: tuple[Crank, ...]
    channels: tuple[ChannelView, ...]
    notes: tuple[str, ...]
    readings: tuple[Reading, ...]
    time_known: bool

    def as_json(self) -> dict[str, object]:
        """The view as plain JSON values, times rounded to 3 digits."""
        return {
            "events": {
                "key_on_s": rounded(self.events.key_on_s, 3),
                "crank_start_s": rounded(self.events.crank_start_s, 3),
                "crank_end_s": rounded(self.events.crank_end_s, 3),
            },
            "time_known": self.time_known,
            "cranks": [
                {
                    "start_s": rounded(crank.start_s, 3),
                    "end_s": rounded(crank.end_s, 3),
                    "started": crank.started,
                    "sure": rounded(crank.sure, 2),
                    "why": list(crank.why),
                }
                for crank in self.cranks
            ],
            "channels": [channel.as_json() for channel in self.channels],
            "notes": list(self.notes),
        }


def look(recording: Recording, setup: Setup, *, hidden_V: Hidden = deeper_V) -> RecordingView:
    """What `recording` says of a vehicle of `setup`.

    `hidden_V(shown_V, rest_V)` returns how much deeper [V] the true minimum of a crank may lie than the lowest value of
    a channel that was sampled too slowly for the inrush trough. Raises nothing for any recording with a row in it.
    """
    scene = scene_of(recording, system_V=setup.system_V)
    found = cranks(scene)
    turns = events(scene, found)
    stood = stretches(scene, found, found=turns)
    judged_by = counted(found)
    scene.sight.fetch([*windows(scene, judged_by), *look_spans(scene, stood)])
    running = _running(scene, found)
    views = tuple(
        channel_view(scene, channel, setup=setup, cranks=judged_by, running=running, hidden_V=hidden_V)
        for channel in recording.voltages
    )
    return RecordingView(
        events=turns,
        cranks=tuple(crank for crank in found if crank.sure >= LISTED),
        channels=views,
        notes=tuple(_notes(scene, found)),
        readings=readings(scene, views, stretches=stood, cranks=judged_by),
        time_known=recording.time_known,
    )


def readings_from(view: RecordingView) -> tuple[Reading, ...]:
    """The readings that a recording holds: one per candidate wire and key position that it shows with certainty."""
    return view.readings


def _running(scene: Scene, found: Sequence[Crank]) -> Stretch | None:
    """From shortly after the start until the key goes off, the engine is cranked again or the recording ends."""
    crank = starting_crank(found)
    if crank is None:
        return None
    again = (later.start_s for later in found if later.start_s > crank.end_s and later.sure >= LIKELY)
    to_s = min(next(again, scene.recording.end_s), key_off_s(scene, crank), scene.recording.end_s)
    from_s = min(crank.end_s + RUNNING_FROM_S, (crank.end_s + to_s) / 2)
    return Stretch(Key.RUNNING, from_s, to_s)


def _notes(scene: Scene, found: Sequence[Crank]) -> Iterator[str]:
    """What the technician should know beside the figures."""
    recording = scene.recording
    if recording.time_note:
        yield recording.time_note
    elif not recording.time_known:
        yield "the file's time stands still: all times are estimates from the row numbers"
    if recording.skipped_count:
        yield f"{recording.skipped_count} lines could not be read and were left out"
    yield from _reference_notes(scene)
    if not any(crank.sure >= LISTED for crank in found):
        yield "no crank was found"
    elif starting_crank(found) is None:
        yield "no start of the engine is shown: no level above rest, or the recording ends too soon"
    loads = [crank for crank in found if 0.0 < crank.sure < LISTED]  # nobody takes the others for cranks
    for load in loads[:NOTED_LOADS]:
        reasons = "; ".join(load.why[:2])
        yield f"a load from {load.start_s:.2f} to {load.end_s:.2f} s is not taken for a crank: {reasons}"
    if len(loads) > NOTED_LOADS:
        yield f"{len(loads) - NOTED_LOADS} more loads are not taken for cranks"


def _reference_notes(scene: Scene) -> Iterator[str]:
    """Which channel stood in for the battery, and whether the battery's contact was lost."""
    if scene.reference is None:
        yield "no channel stands at the level of a supply"
        return
    if scene.battery is None:
        yield f"no battery channel: cranks were looked for on {scene.reference.name}"
    elif scene.reference is not scene.battery:
        yield f"the battery channel does not show a battery: cranks were looked for on {scene.reference.name}"
    elif scene.battery.lowest < CONTACT_LOST_V * scene.scale:
        yield (
            f"the battery channel reads {scene.battery.lowest:.2f} V at {scene.battery.lowest_s:.2f} s: "
            "taken for lost contact there"
        )
