"""An answer of `backprobe sky` in lines."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.findings import Finding
from backprobe.stages.mount.answer import SkyAnswer
from backprobe.stages.mount.predict import PlacePrediction, ranked


def as_text(answer: SkyAnswer) -> str:
    """The places, the best first; what each finding rests on; satellites where a time was given; notes."""
    return "\n".join(_lines(answer))


def _lines(answer: SkyAnswer) -> Iterator[str]:
    order = ranked(answer.places)
    wide = max(len(each.place.name) for each in order)
    for number, each in enumerate(order, 1):
        yield f"{number}  {each.place.name:<{wide}}  {_figures(each)}"
    yield ""
    for finding in answer.findings:
        yield from _finding(finding)
    for satellite in answer.satellites or ():
        yield f"{satellite.id}  azimuth {satellite.az_deg:6.2f}°  elevation {satellite.el_deg:5.2f}°"
    yield from (f"note: {note}" for note in answer.notes)


def _figures(each: PlacePrediction) -> str:
    usual = each.usual
    half = "none" if usual.hdop_median is None else f"{usual.hdop_median:.2f}"
    most = "none" if usual.hdop_p95 is None else f"{usual.hdop_p95:.2f}"
    return (
        f"{each.verdict}: {100 * usual.share:.1f} % of the day, HDOP {half} (half the day) {most} (95 %), "
        f"satellites {usual.least} at least, {usual.median} half the day, worst heading {each.worst_heading_deg:.0f}°"
    )


def _finding(finding: Finding) -> Iterator[str]:
    yield f"{finding.verdict}: {finding.what}"
    yield f"    {finding.because}"
    if finding.limit is not None and finding.low is not None:
        limit = finding.limit
        yield f"    {finding.value:g} {finding.unit}, anywhere from {finding.low:g} to {finding.high:g}"
        yield f"    limit {limit.side} {limit.value:g} {limit.unit}, {limit.warrant}"
    if finding.next:
        yield f"    next: {finding.next}"
