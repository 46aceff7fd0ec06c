"""The picture of a job's surest recorded crank: a few seconds round it, with limits and key positions."""

from __future__ import annotations

from itertools import pairwise

from backprobe.drawings.trace import CrankSpan, KeySpan, LimitLine, Trace, Waveform
from backprobe.drawings.waveform import WIDTH, described_waveform, waveform
from backprobe.evidence.recording import Recording
from backprobe.job.judge import HeardRecording, JobJudgement
from backprobe.limits.lookup import limit
from backprobe.stages.probe.findings import share
from backprobe.stages.probe.recording.view import RecordingView
from backprobe.stages.probe.slots import CRANK_LIMIT, SlotName

BEFORE_S, AFTER_S = 1.5, 2.5  # what is drawn of a recording, round its crank
MOST_TRACES = 5


def crank_picture(judged: JobJudgement, *, width: float = WIDTH) -> tuple[str, str, str] | None:
    """The surest crank in the recordings as (SVG, caption, the picture in words); None where none was recorded."""
    cranked = [each for each in judged.heard if each.answer.view is not None and each.answer.view.cranks]
    if not cranked:
        return None
    best = max(cranked, key=lambda each: max(c.sure for c in _view(each).cranks))
    content = crank_waveform(best.recording, _view(best), system_V=judged.evidence.sheet.vehicle.system_V)
    caption = f"{best.recording.name}: the supply while the starter turns"
    return waveform(content, width=width), caption, described_waveform(content)


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
