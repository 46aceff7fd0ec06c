"""The whole answer: places, best, findings, notes, satellites at a moment."""

from __future__ import annotations

import pytest
from tests.samples.mount import BOX, DASH, ROOF, sheet
from tests.samples.navigation import constellation

from backprobe.errors import OptionError
from backprobe.evidence.orbits import Orbits
from backprobe.findings import Verdict
from backprobe.stages.mount.answer import sky_answer
from backprobe.stages.mount.question import question

DAY = "2021-04-29"
FILE = Orbits(file="brdc", kind="RINEX 2 navigation file", good_for_s=7200.0, sets=constellation(31))


def test_the_nominal_constellation_where_there_is_no_file() -> None:
    """Twenty-four satellites; the note says what they are good for, and that the rest of a place is taken as metal."""
    answer = sky_answer(sheet(ROOF, DASH), question((60.2, 24.9), DAY))
    said = answer.as_json()
    assert (said["ok"], said["best"], said["verdict"]) == (True, "on the roof", "holds")
    assert "satellites" not in said
    assert "24 satellites" in answer.notes[0]
    assert "'on the dash' is taken as metal" in answer.notes[1]
    assert [finding.id for finding in answer.findings] == ["mount_sky", "mount_sky"]


def test_a_file_and_a_moment() -> None:
    """With a file its age is found as well; at a moment every satellite above the horizon is named, none below."""
    answer = sky_answer(sheet(BOX), question((60.2, 24.9), DAY, time="03:00"), orbits=FILE)
    assert answer.satellites is not None
    assert 6 <= len(answer.satellites) < 31
    assert all(0 <= each.el_deg <= 90 and 0 <= each.az_deg < 360 for each in answer.satellites)
    assert [each.id for each in answer.satellites] == sorted(each.id for each in answer.satellites)
    assert answer.findings[-1].id == "mount_sky_orbits"
    assert answer.verdict is Verdict.FAILS


def test_orbits_of_another_year_are_refused() -> None:
    """Five years later nothing can be said by them."""
    with pytest.raises(OptionError, match="days from the day asked for"):
        sky_answer(sheet(ROOF), question((60.2, 24.9), "2026-03-31"), orbits=FILE)
