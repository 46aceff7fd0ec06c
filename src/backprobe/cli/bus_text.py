"""A bus log's answer for people."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.findings import Finding, Verdict, rounded
from backprobe.stages.bus.answer import Answer
from backprobe.stages.bus.caution import LISTEN_ONLY
from backprobe.stages.bus.vin import vin_said, vin_valid

MARK = {Verdict.HOLDS: "holds", Verdict.THIN: "thin ", Verdict.FAILS: "FAILS", Verdict.OPEN: "open "}
ROWS = "obd-csv"


def as_text(answer: Answer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: Answer) -> Iterator[str]:
    heard = answer.heard
    vin = vin_said(heard)
    rows = "rows" if heard.format == ROWS else "frames"
    yield f"{heard.file}: {heard.format}, {heard.frames} {rows} in {heard.length_s:.1f} s: {answer.verdict}"
    if vin is not None:
        yield f"VIN {vin}" + ("" if vin_valid(vin) else " (not a right one)")
    if heard.volts is not None:
        yield f"lowest {heard.volts.lowest_V:.2f} V at {heard.volts.lowest_s:.1f} s, as the vehicle reports it"
    yield ""
    for finding in answer.findings:
        yield from _finding(finding)
    yield ""
    yield from (f"passed over: {count} × {reason.replace('_', ' ')}" for reason, count in heard.skipped.items())
    yield from (f"    {place}" for place in heard.places)
    upcoming = next((each.next for each in _urgent(answer) if each.next), None)
    yield f"next: {upcoming or 'nothing more'}"
    if upcoming is None or LISTEN_ONLY not in upcoming:
        yield f"mind: {LISTEN_ONLY}"


def _finding(finding: Finding) -> Iterator[str]:
    value, limit = rounded(finding.value, finding.digits), finding.limit
    figure = "" if value is None else f": {value:.{finding.digits}f} {finding.unit}"
    yield f"{MARK[finding.verdict]}  {finding.what}{figure}"
    if limit is not None:
        yield f"       limit {limit.side} {limit.value:g} {limit.unit}, {limit.warrant}"
    yield f"       {finding.because}"


def _urgent(answer: Answer) -> list[Finding]:
    order = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN, Verdict.HOLDS)
    return sorted(answer.findings, key=lambda finding: order.index(finding.verdict))
