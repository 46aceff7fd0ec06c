"""The picture of how long a job's vehicle can stand: the charge left, day by day, down to what a start needs."""

from __future__ import annotations

from backprobe.drawings.parked_curve import WIDTH, described_curve, parked_curve
from backprobe.errors import OptionError
from backprobe.job.judge import JobJudgement, parked_case
from backprobe.stages.parked.curve import curve_of
from backprobe.stages.parked.parked import parked_answer

CAPTION = "How long the vehicle can stand: the charge left in its battery, day by day."


def parked_picture(judged: JobJudgement, *, width: float = WIDTH) -> tuple[str, str, str] | None:
    """The curve as (SVG, caption, the picture in words); None where the days cannot be reckoned."""
    case = parked_case(judged.evidence)
    try:
        content = None if case is None else curve_of(parked_answer(case))
    except OptionError:  # no reading of a battery at rest: the findings say so
        return None
    return None if content is None else (parked_curve(content, width=width), CAPTION, described_curve(content))
