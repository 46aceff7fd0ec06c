"""Judge a recording that has no key column by the key's positions in a log of the vehicle's bus."""

from __future__ import annotations

from pathlib import Path

from backprobe.cases.bus import listen_to
from backprobe.cases.probe import first_line, is_readings_header, open_recording
from backprobe.errors import OptionError
from backprobe.evidence.recording import Recording
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.label import ahead_of, labelled
from backprobe.stages.probe.answer import Answer, answer_recording
from backprobe.stages.probe.setup import Setup

NO_HOLD = (
    "no start of the engine that is surely the same stands in both: say with --bus-ahead what the recording's clock "
    "shows when the log's first frame comes"
)


def probe_keyed(path: Path, setup: Setup, *, bus: Path, ahead_s: float | None) -> Answer:
    """The answer to a recording, labelled by the log at `bus`; both were made at the same time.

    Without `ahead_s` the clocks are held together by the starts that both show. Raises UnreadableError, and OptionError
    where there is nothing to label, or nothing to hold the clocks together by.
    """
    if is_readings_header(first_line(path)):
        raise OptionError(f"--bus labels a recording; {path.name} is a readings table, which says the key in each row")
    recording = open_recording(path, setup)
    if recording.keys:
        raise OptionError(f"--bus labels a recording that has no key; {path.name} has a key column of its own")
    return answer_recording(_labelled(recording, listen_to(bus).heard, setup=setup, ahead_s=ahead_s), setup)


def _labelled(recording: Recording, heard: Heard, *, setup: Setup, ahead_s: float | None) -> Recording:
    if ahead_s is None:
        view = answer_recording(recording, setup).view
        ahead_s = None if view is None else ahead_of(heard.key, view.cranks)
    if ahead_s is None:
        raise OptionError(NO_HOLD)
    found = labelled(recording, heard, ahead_s=ahead_s)
    if not found.keys:
        raise OptionError(f"{heard.file} shows no position of the key within the time of {recording.name}")
    return found
