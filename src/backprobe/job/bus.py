"""The bus logs of a job: out of its journal, into its findings, and as key positions onto its recordings.

A log is heard where it is read; the journal keeps what was heard, and it is judged from that everywhere alike.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.recording import Recording
from backprobe.findings import Finding, Verdict
from backprobe.job.canonical import Body
from backprobe.job.fold import JobState
from backprobe.job.kinds import BUS_LOG, table, text
from backprobe.stages.bus.answer import answer as answer_log
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.label import ahead_of, labelled
from backprobe.stages.bus.script_check import script_finding
from backprobe.stages.bus.summary import heard_from, summary
from backprobe.stages.probe.answer import Answer, answer_recording
from backprobe.stages.probe.recording.view import RecordingView
from backprobe.stages.probe.setup import Setup

# what a log adds to a job whatever it came to, and what it adds only where it does not hold; the rest is the log's own
ALWAYS = ("bus_vin", "bus_distance")
WHERE_SEEN = ("bus_key", "bus_dip")  # a log may be without a start: the job has other evidence for that
WHERE_WRONG = ("bus_errors", "bus_load", "bus_silent")


def buses_of(state: JobState) -> tuple[Heard, ...]:
    """What the journal's bus logs came to; those of a later version are left out."""
    heard = (heard_from(table(one.body, "heard")) for one in state.of_kind(BUS_LOG))
    return tuple(each for each in heard if each is not None)


def bus_findings(buses: Sequence[Heard], sheet: JobSheet, *, script: KeyScript | None) -> tuple[Finding, ...]:
    """What the logs say of the vehicle, the bus and the script, each with its log's name."""
    return tuple(
        replace(finding, what=f"{heard.file}: {finding.what}")
        for heard in buses
        for finding in _of_log(heard, sheet, script=script)
    )


def _of_log(heard: Heard, sheet: JobSheet, *, script: KeyScript | None) -> Iterator[Finding]:
    vehicle = sheet.vehicle
    wanted = vehicle.vin if heard.vins else None
    said = answer_log(heard, vin=wanted, system_V=vehicle.system_V, has_crank=vehicle.has_crank)
    for finding in said.findings:
        proves = finding.verdict in (Verdict.HOLDS, Verdict.FAILS)
        wrong = finding.verdict is not Verdict.HOLDS
        if finding.id in ALWAYS or (finding.id in WHERE_SEEN and proves) or (finding.id in WHERE_WRONG and wrong):
            yield finding
    against = script_finding(heard, script)
    if against is not None:
        yield against


def log_body(heard: Heard) -> Body:
    """What a log came to, as an entry holds it."""
    return summary(heard)


def known_logs(state: JobState) -> dict[str, Body]:
    """What the journal's logs came to, by the digest of their file: a log is not listened to twice."""
    logs = {text(one.body, "sha256") or "": table(one.body, "heard") for one in state.of_kind(BUS_LOG)}
    return {sha256: said for sha256, said in logs.items() if heard_from(said) is not None}


def listened(
    recordings: Sequence[Recording], setup: Setup, *, buses: Sequence[Heard]
) -> Iterator[tuple[Recording, Answer]]:
    """Each recording and what it came to, with the key's positions of a bus log where one fits it."""
    for recording in recordings:
        answer = answer_recording(recording, setup)
        keyed = keyed_by(recording, answer.view, buses=buses)
        yield (recording, answer) if keyed is None else (keyed, answer_recording(keyed, setup))


def keyed_by(recording: Recording, view: RecordingView | None, *, buses: Sequence[Heard]) -> Recording | None:
    """The recording with the key's positions of the log that was made with it, as its name says; else None.

    `bus/start.log` was made with `recordings/start.csv`: all starts of a vehicle look alike, so likeness alone does not
    show that two files are of one start. Their clocks are held together by the turns of the starter that both show;
    where those do not match, and where there is a key column, nothing is labelled.
    """
    if view is None or recording.keys:
        return None
    for heard in buses:
        ahead_s = ahead_of(heard.key, view.cranks) if _stem(heard.file) == _stem(recording.name) else None
        if ahead_s is not None:
            return labelled(recording, heard, ahead_s=ahead_s)
    return None


def _stem(name: str) -> str:
    return name.partition(".")[0].casefold()
