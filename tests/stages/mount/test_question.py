"""Where and when: what is taken, and what is refused in plain words."""

from __future__ import annotations

import pytest

from backprobe.errors import OptionError
from backprobe.stages.mount.question import question


def test_a_day_and_a_time() -> None:
    """29 April 2021 is in week 2155; half past two is 14.5 h after its beginning; fractions of a second are kept."""
    asked = question((60.2, 24.9), "2021-04-29", time="14:30")
    assert asked.week == 2155
    assert asked.moment_s is not None
    assert asked.moment_s - asked.site.start_s == 14.5 * 3600
    fine = question((60.2, 24.9), "2021-04-29", time="22:35:25.999").moment_s
    assert fine == pytest.approx(asked.site.start_s + 22 * 3600 + 35 * 60 + 25.999, abs=1e-6)
    assert question((60.2, 24.9), "2021-04-29").moment_s is None


@pytest.mark.parametrize(
    ("place", "day", "time", "says"),
    [
        ((90.1, 0.0), "2026-03-31", None, "90.1 is no latitude"),
        ((float("nan"), 0.0), "2026-03-31", None, "is no latitude"),
        ((0.0, -180.5), "2026-03-31", None, "-180.5 is no longitude"),
        ((0.0, 0.0), "31.03.2026", None, "YYYY-MM-DD is expected"),
        ((0.0, 0.0), "2026-02-30", None, "2026-02-30 is no day"),
        ((0.0, 0.0), "1979-12-31", None, "a day from 1980-01-06 on"),
        ((0.0, 0.0), "2100-01-01", None, "before 2100-01-01"),
        ((0.0, 0.0), "2026-03-31", "24:00", "24:00 is no time of day"),
        ((0.0, 0.0), "2026-03-31", "noon", "HH:MM or HH:MM:SS in UTC"),
    ],
)
def test_what_is_refused(place: tuple[float, float], day: str, time: str | None, says: str) -> None:
    """Places that are not on earth, days and times that are none."""
    with pytest.raises(OptionError, match=says):
        question(place, day, time=time)
