"""The picture of the sky as a job's receiver heard it."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.drawings.sky import SkyMask
from backprobe.drawings.sky_plot import described_sky, sky_plot
from backprobe.evidence.reception import Reception
from backprobe.stages.mount.reception.sky import sky_of

WIDTH = 400.0  # half of a record's page, and a phone: the same string on both


def heard_picture(
    logs: Sequence[Reception], *, heading_deg: float | None = None, mask: SkyMask = ()
) -> tuple[str, str, str] | None:
    """The sky as the longest log has it: (SVG, caption, the picture in words); None where no log tells of satellites.

    A predicted `mask` is shaded beneath.
    """
    told = [log for log in logs if log.bins]
    if not told:
        return None
    log = max(told, key=lambda each: each.duration_ms)
    content = sky_of(log, heading_deg=heading_deg, mask=mask)
    beside = ", over what was predicted to stand in the way" if mask else ""
    return (
        sky_plot(content, width=WIDTH),
        f"{log.file}: the sky as the receiver heard it{beside}",
        described_sky(content),
    )
