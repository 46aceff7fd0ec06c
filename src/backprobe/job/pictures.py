"""The pictures of a job, those that there are: what people come for, on the phone as on the desk."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from backprobe.drawings.waveform import WIDTH
from backprobe.job.judge import JobJudgement
from backprobe.job.mount_picture import job_sky
from backprobe.job.parked_picture import parked_picture
from backprobe.job.picture import crank_picture
from backprobe.job.turns_picture import turns_picture
from backprobe.job.wiring import wiring_picture

Drawn = tuple[str, str, str]  # SVG, caption, the picture in words
PARTS = ("svg", "caption", "alt")


PICTURES: Mapping[str, Callable[[JobJudgement, float], Drawn | None]] = {
    "wiring": lambda judged, width: wiring_picture(judged, width=width),
    "crank": lambda judged, width: crank_picture(judged, width=width),
    "turns": lambda judged, width: turns_picture(judged, width=width),
    "sky": lambda judged, _: job_sky(judged.mounted, judged.evidence.receptions),
    "parked": lambda judged, width: parked_picture(judged, width=width),
}


def pictures_of(judged: JobJudgement, *, width: float = WIDTH) -> dict[str, dict[str, str]]:
    """Each picture by its name: its SVG, its caption, and the picture in words; none for which evidence is missing.

    Curves, wiring and strips are drawn `width` units wide, so that their letters can be read where the page is narrow.
    """
    found = {name: picture(judged, width) for name, picture in PICTURES.items()}
    return {name: dict(zip(PARTS, each, strict=True)) for name, each in found.items() if each is not None}
