"""The pictures of a job, those that there are: what people come for, on the phone as on the desk."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from backprobe.job.judge import JobJudgement
from backprobe.job.mount_picture import job_sky
from backprobe.job.parked_picture import parked_picture
from backprobe.job.picture import crank_picture
from backprobe.job.turns_picture import turns_picture
from backprobe.job.wiring import wiring_picture

Drawn = tuple[str, str, str]  # SVG, caption, the picture in words
PARTS = ("svg", "caption", "alt")


def _sky(judged: JobJudgement) -> Drawn | None:
    return job_sky(judged.mounted, judged.evidence.receptions)


PICTURES: Mapping[str, Callable[[JobJudgement], Drawn | None]] = {
    "wiring": wiring_picture,
    "crank": crank_picture,
    "turns": turns_picture,
    "sky": _sky,
    "parked": parked_picture,
}


def pictures_of(judged: JobJudgement) -> dict[str, dict[str, str]]:
    """Each picture by its name: its SVG, its caption, and the picture in words; none for which evidence is missing."""
    found = {name: picture(judged) for name, picture in PICTURES.items()}
    return {name: dict(zip(PARTS, each, strict=True)) for name, each in found.items() if each is not None}
