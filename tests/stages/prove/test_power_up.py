"""Since when the unit has been powered in this job."""

import pytest
from tests.samples.prove_cases import START_S, reports, row

from backprobe.stages.prove.power_up import power_up_of

FIRST_KEY_S = START_S + 300


def power_up(*rows):
    """The power-up before the key was first turned, 300 s from the start."""
    found = power_up_of([(report.time_s, report) for report in (reports(rows) if rows else ())], FIRST_KEY_S)
    return found.first, found.time_s and found.time_s - START_S, found.by_event


def test_the_last_boot_before_the_first_turn():
    """Later ones are restarts, earlier ones another job's."""
    rows = (row(-900, "boot"), row(-500), row(-60, "power_restored"), row(0), row(600, "boot"))
    assert power_up(*rows) == (2, -60, True)


def test_else_the_last_silence_of_over_six_hours():
    """6 h are not enough."""
    assert power_up(row(-90_000), row(-40_000), row(-100), row(400)) == (2, -100, False)
    assert power_up(row(-21_700), row(-100), row(400)) == (0, None, False)


@pytest.mark.parametrize("rows", [(), (row(-100), row(100)), (row(400, "boot"),)])
def test_else_nothing_is_left_out(rows):
    """No reports, no event and no silence."""
    assert power_up(*rows) == (0, None, False)


def test_a_silence_that_ends_behind_the_first_turn():
    """The unit was asleep until the key woke it."""
    assert power_up(row(-50_000), row(302), row(400)) == (1, 302, False)
