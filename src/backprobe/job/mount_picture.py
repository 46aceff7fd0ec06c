"""The sky over a job's unit, predicted beside heard."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.drawings.sky import SkyPlot
from backprobe.drawings.sky_pair import PairRow, SkyPair, described_pair, sky_pair
from backprobe.evidence.reception import Reception
from backprobe.job.heard_picture import heard_picture
from backprobe.job.mounted import Mounted
from backprobe.stages.mount.beside import Measured
from backprobe.stages.mount.picture import mask_cells
from backprobe.stages.mount.predict import PlacePrediction
from backprobe.stages.mount.reception.sky import sky_of

SKY = "The sky left to the unit"


def job_sky(mounted: Mounted | None, logs: Sequence[Reception]) -> tuple[str, str, str] | None:
    """The unit's sky: predicted beside what the longest log heard, or the one of them that there is; else None."""
    told = [log for log in logs if log.bins]
    heading_deg = None if mounted is None else mounted.sheet.heading_deg
    longest = max(told, key=lambda each: each.duration_ms) if told else None
    heard = None if longest is None else sky_of(longest, heading_deg=heading_deg)
    return mount_picture(mounted, heard) or heard_picture(logs)


def mount_picture(mounted: Mounted | None, heard: SkyPlot | None = None) -> tuple[str, str, str] | None:
    """The sky as (SVG, caption, the picture in words); None where no place was judged.

    `heard` is what a receiver's log shows of the same sky; figures of what was heard stand beside those predicted.
    """
    if mounted is None or mounted.chosen is None:
        return None
    found = mounted.chosen
    measured = mounted.heard[0] if mounted.heard else None
    content = SkyPair(
        title=f"{SKY}, {found.place.name}",
        predicted=SkyPlot(
            title="The sky as predicted",
            mask=tuple(mask_cells(found.mask, found.heading_deg)),
            heading_deg=found.heading_deg,
        ),
        heard=heard,
        rows=tuple(_rows(found, measured)),
    )
    headed = f"heading {found.heading_deg:g}°" if mounted.sheet.heading_deg is not None else "at the worst heading"
    caption = f"{found.place.name}, {headed}, under the nominal GPS constellation"
    return sky_pair(content, narrow=heard is None), caption, described_pair(content)


def _rows(found: PlacePrediction, measured: Measured | None) -> Iterator[PairRow]:
    usual = found.usual
    yield PairRow("a good fix, of a day", f"{100 * usual.share:.1f} %")
    half = "none" if usual.hdop_median is None else f"{usual.hdop_median:.2f}"
    yield PairRow("HDOP, half the time", half, "" if measured is None else f"{measured.hdop:.2f}")
    most = "none" if usual.hdop_p95 is None else f"{usual.hdop_p95:.2f}"
    what = "HDOP, 95 %" if measured is None else "HDOP, 95 % (heard: 90 %)"
    yield PairRow(what, most, "" if measured is None else f"{measured.hdop_high:.2f}")
    used = "" if measured is None or measured.used is None else f"{measured.used:g}"
    yield PairRow("satellites, half the time", f"{usual.median} (GPS)", used)
