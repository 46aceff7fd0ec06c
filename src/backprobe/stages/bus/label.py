"""A bus log's key cycle laid over a voltage recording that has no key column."""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.recording import KeyMark, Recording
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import KeyCycle, key_spans
from backprobe.stages.probe.recording.cranks import Crank

SURE = 0.8  # cranks that a recording shows with less certainty are no hold for the two clocks
LENGTHS_S = 1.5  # how far the lengths of two cranks may differ, and the pauses between them


def labelled(recording: Recording, heard: Heard, *, ahead_s: float) -> Recording:
    """The recording with the key's positions that the bus shows; as it was where it has a key column or nothing fits.

    `ahead_s` is what the recording's clock shows when the log's first frame comes, its own zero counted as 0.
    """
    if recording.keys:
        return recording
    marks = [KeyMark(time_s + ahead_s, key) for time_s, key in key_spans(heard.key)]
    started = [mark for mark in marks if mark.time_s <= recording.start_s]
    within = [mark for mark in marks if recording.start_s < mark.time_s <= recording.end_s]
    first = [KeyMark(recording.start_s, started[-1].key)] if started and ahead_s + heard.length_s > 0 else []
    return replace(recording, keys=(*first, *within))


def ahead_of(key: KeyCycle, cranks: tuple[Crank, ...]) -> float | None:
    """What the recording's clock shows at the log's first frame, told from the turns of the starter that both show [s].

    Both must show as many, each as long and each started or not in both; None where they do not, or show none.

    >>> ahead_of(KeyCycle(), ()) is None
    True
    """
    sure = [crank for crank in cranks if crank.sure >= SURE]
    if not sure or len(sure) != len(key.cranks):
        return None
    leads = [own.start_s - theirs.start_s for own, theirs in zip(sure, key.cranks, strict=True)]
    alike = all(
        own.started is theirs.started and abs((own.end_s - own.start_s) - (theirs.end_s - theirs.start_s)) <= LENGTHS_S
        for own, theirs in zip(sure, key.cranks, strict=True)
    )
    if not alike or max(leads) - min(leads) > LENGTHS_S:
        return None
    return round(sorted(leads)[len(leads) // 2], 3)
