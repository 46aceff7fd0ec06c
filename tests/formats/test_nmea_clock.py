"""Time in a log goes on over midnight and gaps, and through what is wrong with a receiver's clock."""

from datetime import date

from backprobe.formats.nmea_clock import DAY_S, LogClock, Odd

DAY = date(2026, 2, 14).toordinal()


def run(steps: list[tuple[float | None, int | None, bool]]) -> tuple[LogClock, list[Odd | None]]:
    """A clock that went through moments of (time of day, day, with a fix)."""
    clock = LogClock()
    return clock, [clock.advance(tod_s, day, fixed=fixed) for tod_s, day, fixed in steps]


def test_seconds_add_up() -> None:
    """From the first moment, at any step."""
    clock, odd = run([(100.0, DAY, True), (100.2, DAY, True), (100.4, DAY, True)])
    assert (clock.time_s, clock.usual_s, odd) == (0.4, 0.2, [None] * 3)


def test_midnight_with_and_without_a_date() -> None:
    """23:59:59 to 00:00:00 is one second, also where no sentence bears a date."""
    for days in ((DAY, DAY + 1), (None, None), (DAY, None)):
        clock, odd = run([(DAY_S - 1, days[0], True), (0.0, days[1], True)])
        assert (clock.time_s, odd[1]) == (1.0, None)


def test_the_first_date_is_no_jump() -> None:
    """A log that begins with sentences without a date."""
    clock, odd = run([(10.0, None, False), (11.0, DAY, True), (12.0, DAY, True)])
    assert (clock.time_s, odd) == (2.0, [None] * 3)


def test_moments_without_time_count_by_the_usual_step() -> None:
    """Three of them before the first time: three steps."""
    clock, _ = run([(None, None, False)] * 3 + [(100.0, DAY, True), (101.0, DAY, True)])
    assert (clock.clocked_s, clock.unclocked, clock.time_s) == (1.0, 3, 4.0)


def test_a_clock_that_is_set_by_the_first_fix_jumps() -> None:
    """From a wrong time to the right one with the fix: one usual step, not three hours."""
    clock, odd = run([(0.0, DAY, False), (1.0, DAY, False), (9000.0, DAY, True), (9001.0, DAY, True)])
    assert odd == [None, None, Odd.CLOCK_JUMP, None]
    assert clock.time_s == 3.0


def test_a_gap_between_fixes_is_time() -> None:
    """Ten minutes without a line, fixes on both sides."""
    clock, odd = run([(0.0, DAY, True), (1.0, DAY, True), (601.0, DAY, True)])
    assert (clock.time_s, clock.gap_s, odd[2]) == (601.0, 600.0, Odd.GAP)


def test_a_rollover_of_1024_weeks() -> None:
    """The date goes back to 2006 and forth again: two rollovers, and the time goes on by a second each."""
    clock, odd = run([(5.0, DAY, True), (6.0, DAY - 7168, True), (7.0, DAY, True)])
    assert odd == [None, Odd.WEEK_ROLLOVER, Odd.WEEK_ROLLOVER]
    assert clock.time_s == 2.0


def test_backwards_and_standing_still() -> None:
    """A step back by a minute is a jump; the same time again is a clock that stands; less than a second is a trifle."""
    clock, odd = run([(100.0, DAY, True), (40.0, DAY, True), (40.0, DAY, False), (39.7, DAY, True)])
    assert odd == [None, Odd.CLOCK_JUMP, Odd.CLOCK_STOOD, None]
    assert clock.time_s == 2.0


def test_time_never_goes_back() -> None:
    """Whatever the usual step turns out to be."""
    clock, times = LogClock(), []
    for tod_s in (None, None, 10.0, 12.0, 12.1, 12.2, 12.3, 5.0, 5.1):
        clock.advance(tod_s, DAY if tod_s else None, fixed=True)
        times.append(clock.time_s)
    assert times == sorted(times)
