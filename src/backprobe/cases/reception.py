"""A receiver's log from its file: heard, judged, drawn."""

from __future__ import annotations

from pathlib import Path

from backprobe.drawings.sky_plot import sky_plot
from backprobe.evidence.reception import Reception
from backprobe.files.log_lines import log_lines
from backprobe.stages.mount.reception.answer import ReceptionAnswer, answer_of
from backprobe.stages.mount.reception.listen import reception_of
from backprobe.stages.mount.reception.sky import sky_of


def reception_file(path: Path) -> Reception:
    """What a log comes to. Raises UnreadableError in the technician's words."""
    return reception_of(log_lines(path)(), file=path.name)


def judged_file(path: Path, *, heading_deg: float | None = None) -> ReceptionAnswer:
    """The answer to a log; `heading_deg` is where the vehicle's front pointed."""
    return answer_of(reception_file(path), heading_deg=heading_deg)


def picture_of(answer: ReceptionAnswer) -> str:
    """The sky plot of a log as an SVG string."""
    return sky_plot(sky_of(answer.log, heading_deg=answer.heading_deg))
