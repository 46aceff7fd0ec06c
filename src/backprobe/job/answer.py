"""A job's judgement as plain JSON values, and its picture of the crank."""

from __future__ import annotations

from itertools import pairwise

from backprobe.drawings.trace import CrankSpan, KeySpan, LimitLine, Trace, Waveform
from backprobe.drawings.waveform import described_waveform, waveform
from backprobe.evidence.recording import Recording
from backprobe.job.judge import HeardRecording, JobJudgement
from backprobe.limits.lookup import limit
from backprobe.stages.probe.findings import share
from backprobe.stages.probe.recording.view import RecordingView
from backprobe.stages.probe.slots import CRANK_LIMIT, SlotName

BEFORE_S, AFTER_S = 1.5, 2.5  # what is drawn of a recording, round its crank
MOST_TRACES = 5


def judgement_json(judged: JobJudgement) -> dict[str, object]:
    """The judgement as plain JSON values; figures rounded to their declared digits."""
    vehicle = judged.evidence.sheet.vehicle
    probe = judged.probe.as_json()
    return {
        "ok": True,
        "verdict": str(judged.verdict),
        "next": judged.next,
        "vehicle": {
            "vin": vehicle.vin,
            "plate": vehicle.plate,
            "fleet_number": vehicle.fleet_number,
            "system_V": vehicle.system_V,
        },
        "unit": {"name": judged.evidence.unit.name, "serial": judged.evidence.sheet.unit_serial},
        "choice": {str(slot): judged.chosen(slot) for slot in SlotName},
        "findings": [finding.as_json() for finding in judged.findings],
        "wires": _wires_json(probe["wires"], judged),
        "next_reading": probe["next"],
        "skipped": probe["skipped"],
        "recordings": [_recording_json(each) for each in judged.heard],
    }


def _wires_json(wires: object, judged: JobJudgement) -> list[dict[str, object]]:
    """The wires, each with the use that this job may make of it: by its volts alone no wire is tapped in a job."""
    chosen = {judged.chosen(slot): str(slot) for slot in SlotName}
    rows = wires if isinstance(wires, list) else []
    return [{**row, "tap": row["tap"] if row["tap"] == "never" else chosen.get(row["wire"], "no")} for row in rows]


def _recording_json(each: HeardRecording) -> dict[str, object]:
    """What one recording shows: its events, cranks, channels and notes."""
    answer = each.answer.as_json()
    kept = ("events", "time_known", "cranks", "channels", "notes", "skipped")
    return {"file": each.recording.name, **{name: answer[name] for name in kept if name in answer}}


def crank_picture(judged: JobJudgement) -> tuple[str, str, str] | None:
    """The surest crank in the recordings as (SVG, caption, the picture in words); None where none was recorded."""
    cranked = [each for each in judged.heard if each.answer.view is not None and each.answer.view.cranks]
    if not cranked:
        return None
    best = max(cranked, key=lambda each: max(c.sure for c in _view(each).cranks))
    content = crank_waveform(best.recording, _view(best), system_V=judged.evidence.sheet.vehicle.system_V)
    caption = f"{best.recording.name}: the supply while the starter turns"
    return waveform(content), caption, described_waveform(content)


def _view(each: HeardRecording) -> RecordingView:
    assert each.answer.view is not None
    return each.answer.view


def crank_waveform(recording: Recording, view: RecordingView, *, system_V: int) -> Waveform:
    """What to draw of a recording: a few seconds round its surest crank, with limits, key positions and cranks."""
    crank = max(view.cranks, key=lambda c: c.sure)
    start = max(recording.start_s, crank.start_s - BEFORE_S)
    end = min(recording.end_s, crank.end_s + AFTER_S)
    window = recording.fine(start, end)
    names = [channel.name for channel in recording.voltages][:MOST_TRACES]
    traces = tuple(
        Trace(name, tuple((t, v, v) for t, v in zip(window.time_s, window.values[name], strict=True))) for name in names
    )
    limits = tuple(_limit_line(slot, system_V) for slot in SlotName)
    cranks = tuple(
        CrankSpan(c.start_s, c.end_s, f"crank, {share(c.sure)} sure")
        for c in view.cranks
        if c.end_s > start and c.start_s < end
    )
    note = "" if view.time_known else "The file's clock stood still: times are estimates from the row numbers."
    return Waveform(traces=traces, limits=limits, keys=key_spans(view, start, end=end), cranks=cranks, note=note)


def _limit_line(slot: SlotName, system_V: int) -> LimitLine:
    rule = limit(CRANK_LIMIT[slot], system_V=system_V)
    return LimitLine(rule.value, f"{slot} {rule.side} {rule.value:g} V")


def key_spans(view: RecordingView, start_s: float, *, end: float) -> tuple[KeySpan, ...]:
    """The key positions within a window, as far as the recording tells them."""
    events = view.events
    if events.crank_start_s is None or events.crank_end_s is None:
        return ()
    on_s = events.key_on_s
    edges = [(start_s, "before" if on_s is None else "off")]
    edges += [(on_s, "on")] if on_s is not None else []
    edges += [(events.crank_start_s, "crank"), (events.crank_end_s, "running"), (end, "")]
    spans = [KeySpan(max(a, start_s), min(b, end), label) for (a, label), (b, _) in pairwise(edges)]
    return tuple(span for span in spans if span.end_s > span.start_s)
