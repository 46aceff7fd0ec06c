"""How time goes on in a receiver's log: over midnight, over gaps, and through what is wrong with the receiver's clock.

A receiver that has just been switched on bears no time or a wrong one, and sets it with its first fix. Others are off
by 1,024 weeks (GPS counts weeks with ten bits), stand still, or step back. Such steps are taken out and counted with
their kind: in their place the time goes on by the log's usual step.
"""

from __future__ import annotations

from collections import Counter
from enum import StrEnum

DAY_S = 86_400.0
ROLLOVER_S = 1024 * 7 * DAY_S
FIRST_STEP_S = (
    1.0  # the usual step until the log has shown its own: receivers speak once a second unless told otherwise
)
_SET_S = 60.0  # a longer step where the receiver had no fix is its clock being set
_GAP_STEPS, _GAP_S = 5.0, 10.0
_LONGEST_USUAL_S = 600.0
_TRIFLE_S = 1.0  # a clock that is put right by less than this has not jumped
_DIGITS = 3


class Odd(StrEnum):
    """What may happen to the time in a log."""

    CLOCK_JUMP = "clock_jump"
    WEEK_ROLLOVER = "week_rollover"
    CLOCK_STOOD = "clock_stood"
    GAP = "gap"


class LogClock:
    """Follows the time from moment to moment.

    `clocked_s` has passed by the receiver's clock, and `unclocked` steps without it; `time_s` is both together, with
    the step that was usual then.
    """

    __slots__ = (
        "_day",
        "_fixed",
        "_last_s",
        "_started",
        "_steps",
        "clocked_s",
        "gap_s",
        "time_s",
        "unclocked",
        "usual_s",
    )

    def __init__(self) -> None:
        self.clocked_s, self.gap_s, self.time_s, self.unclocked, self.usual_s = 0.0, 0.0, 0.0, 0, FIRST_STEP_S
        self._last_s: float | None = None
        self._day: int | None = None
        self._started = self._fixed = False
        self._steps: Counter[float] = Counter()

    def advance(self, tod_s: float | None, day: int | None, *, fixed: bool) -> Odd | None:
        """Go on to a moment with this time of day [s] and day count, as far as it bore them; what was odd about it."""
        odd, step_s = None, None if tod_s is None else self._step_s(tod_s, day)
        if step_s is not None:
            odd = self._odd(step_s, fixed=fixed)
        if step_s is not None and odd in (None, Odd.GAP):
            self._go_on(max(step_s, 0.0), gap=odd is Odd.GAP)
        elif self._started:
            self.unclocked += 1
            self.time_s = round(self.time_s + self.usual_s, _DIGITS)
        self._started, self._fixed = True, fixed
        return odd

    def _go_on(self, step_s: float, *, gap: bool) -> None:
        self.clocked_s = round(self.clocked_s + step_s, _DIGITS)
        self.time_s = round(self.time_s + step_s, _DIGITS)
        self.gap_s += step_s if gap else 0.0
        self._count(step_s)

    def _step_s(self, tod_s: float, day: int | None) -> float | None:
        """Seconds since the moment before, None where that is not known; the day goes on over midnight by itself."""
        last_s, dated = self._last_s, self._day is not None
        if day is None:
            now_s = (self._day or 0) * DAY_S + tod_s
            if last_s is not None:
                now_s += DAY_S * round((last_s - now_s) / DAY_S)
            self._day = int(now_s // DAY_S) if dated else None
        else:
            now_s = day * DAY_S + tod_s
            if last_s is not None and not dated:  # the first date in the log is no jump
                last_s += DAY_S * round((now_s - last_s) / DAY_S)
            self._day = day
        self._last_s = now_s
        return None if last_s is None else round(now_s - last_s, _DIGITS)

    def _odd(self, step_s: float, *, fixed: bool) -> Odd | None:
        if abs(abs(step_s) - ROLLOVER_S) < 2 * DAY_S:
            return Odd.WEEK_ROLLOVER
        if step_s == 0:
            return Odd.CLOCK_STOOD
        if step_s < -_TRIFLE_S or step_s > DAY_S or (step_s > _SET_S and not self._fixed and fixed):
            return Odd.CLOCK_JUMP
        return Odd.GAP if step_s > max(_GAP_STEPS * self.usual_s, _GAP_S) else None

    def _count(self, step_s: float) -> None:
        """Learn the usual step: the one that came most often so far."""
        if not 0 < step_s <= _LONGEST_USUAL_S or len(self._steps) > 1000:
            return
        self._steps[step_s] += 1
        if self._steps[step_s] > self._steps[self.usual_s]:
            self.usual_s = step_s
