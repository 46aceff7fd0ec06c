"""How old orbits are, and what is said of it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.navigation import START_S, TOE_S, constellation

from backprobe.errors import OptionError, Place, Skipped
from backprobe.evidence.orbits import Orbits
from backprobe.findings import Verdict
from backprobe.stages.mount.nominal import nominal_orbits
from backprobe.stages.mount.orbit_age import age_days, age_finding, age_notes, refuse_too_old

DAY_S = 86_400.0
ALMANAC = Orbits(file="yuma.txt", kind="YUMA almanac", good_for_s=7 * DAY_S, sets=constellation(20, plain=True))
BROADCAST = replace(ALMANAC, file="brdc", kind="RINEX 2 navigation file", good_for_s=7200.0)


def test_the_farthest_end_of_the_day_counts() -> None:
    """Toe is 2 h GPS time: the day's end is 22 h off, 0.9 days; an almanac is good for that, a broadcast set is not."""
    assert age_days(BROADCAST, START_S) == 0.9
    assert age_days(ALMANAC, START_S) == 0.0
    assert age_days(ALMANAC, START_S + 10 * DAY_S) == 10.9
    assert age_days(ALMANAC, START_S - 10 * DAY_S) == 10.1


def test_fresh_and_stale() -> None:
    """Within 14 days the finding holds, after that it is thin and names what to take; nominal orbits have no age."""
    fresh, stale = age_finding(ALMANAC, START_S), age_finding(ALMANAC, START_S + 30 * DAY_S)
    assert fresh is not None
    assert stale is not None
    assert (fresh.verdict, stale.verdict) == (Verdict.HOLDS, Verdict.THIN)
    assert "30.9 days from the day asked for" in stale.because
    assert stale.next is not None
    assert age_finding(nominal_orbits(START_S), START_S) is None


def test_a_part_of_the_sky_is_no_sky() -> None:
    """A torn file with four satellites would make every place fail: that is said, and open; with twenty it is not."""
    torn, whole = age_finding(replace(ALMANAC, sets=constellation(4)), START_S), age_finding(ALMANAC, START_S)
    assert torn is not None
    assert whole is not None
    assert torn.verdict is Verdict.OPEN
    assert "4 satellites: only a part of the sky" in torn.because
    assert whole.because.endswith("20 satellites")


def test_far_too_old_is_refused_with_how_old() -> None:
    """Half a year is the most; the nominal constellation never ages."""
    refuse_too_old(ALMANAC, START_S + 170 * DAY_S)
    refuse_too_old(nominal_orbits(START_S), START_S + 9000 * DAY_S)
    with pytest.raises(OptionError, match=r"yuma\.txt is of 2021-04-29, 366 days from the day asked for"):
        refuse_too_old(ALMANAC, START_S + 365 * DAY_S)


def test_what_should_be_known_is_said() -> None:
    """Age, leap seconds that differ, other systems, what was passed over and how much of it there was."""
    torn = Skipped(Place("brdc", 9, "half"), "a whole set")
    odd = replace(BROADCAST, leap_s=17, others={"Galileo": 5, "BeiDou": 2}, skipped=(torn,), skipped_count=3)
    notes = "\n".join(age_notes(odd, START_S))
    assert "up to 0.9 days from the day asked for; they are meant for 2 hours" in notes
    assert "brdc says 17 leap seconds; 18 were taken" in notes
    assert "2 of BeiDou, 5 of Galileo" in notes
    assert "Passed over: brdc, line 9: half (a whole set)" in notes
    assert "3 places in brdc were passed over in all" in notes
    assert age_notes(replace(ALMANAC, leap_s=18), TOE_S) == ()
