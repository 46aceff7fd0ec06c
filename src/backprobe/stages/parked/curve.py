"""What the curve of a parked vehicle shows."""

from __future__ import annotations

from backprobe.drawings.parked_curve import ParkedCurve
from backprobe.stages.parked.parked import ParkedAnswer

POINTS = 60
LEAST_DAYS, LONGEST_DAYS = 2.0, 400.0
ROOM = 1.1


def curve_of(answer: ParkedAnswer) -> ParkedCurve | None:
    """The curve's content; None while the days cannot be reckoned."""
    unsure, wanted = answer.unsure, answer.case.wanted_days
    if unsure is None:
        return None
    worst, likely, best = unsure.rests()
    until = (worst.days, likely.days, best.days)
    span = min(max(until[2], wanted or 0.0, LEAST_DAYS) * ROOM, max(LONGEST_DAYS, (wanted or 0.0) * ROOM))
    days = tuple(span * step / POINTS for step in range(POINTS + 1))
    return ParkedCurve(
        title="Charge left while parked",
        days=days,
        worst=tuple(worst.left(at) for at in days),
        likely=tuple(likely.left(at) for at in days),
        best=tuple(best.left(at) for at in days),
        needed=(best.need, likely.need, worst.need),
        until=until,
        coldest_C=unsure.coldest_C,
        wanted_days=wanted,
    )
