"""A job's mount sheet judged."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.mount import BOX, DASH, JOB, ROOF, sheet

from backprobe.findings import Stage, Verdict
from backprobe.job.mounted import judged_mount
from backprobe.stages.mount.beside import Measured


def test_the_place_that_was_chosen_is_judged() -> None:
    """Of two places the chosen one, with its finding; a sheet with one place needs no choice."""
    found = judged_mount(sheet(BOX, ROOF, chosen="on the roof"), JOB)
    assert found is not None
    assert found.chosen is not None
    assert [(each.id, each.stage, each.verdict) for each in found.findings] == [
        ("mount_sky", Stage.MOUNT, Verdict.HOLDS)
    ]
    alone = judged_mount(sheet(BOX), JOB)
    assert alone is not None
    assert alone.findings[0].verdict is Verdict.FAILS


def test_no_choice_and_no_place_are_open() -> None:
    """Nobody said which place was taken: the best is named. Nobody said where the vehicle works: that is asked for."""
    unsaid = judged_mount(sheet(BOX, ROOF), JOB)
    nowhere = judged_mount(sheet(ROOF), replace(JOB, place=None))
    assert unsaid is not None
    assert nowhere is not None
    assert (unsaid.findings[0].verdict, unsaid.chosen) == (Verdict.OPEN, None)
    assert 'chosen = "on the roof"' in str(unsaid.findings[0].next)
    assert nowhere.findings[0].verdict is Verdict.OPEN
    assert "[place]" in str(nowhere.findings[0].next)


def test_without_a_sheet_nothing_is_said() -> None:
    """A job without mount.toml has no finding on its sky."""
    assert judged_mount(None, JOB) is None


def test_what_was_heard_stands_beside() -> None:
    """Each measurement has its finding beside the prediction."""
    heard = Measured(hdop=0.9, hdop_low=0.8, hdop_high=1.0, used=12.0, source="20 reports of the unit")
    found = judged_mount(sheet(ROOF), JOB, heard=[heard])
    assert found is not None
    assert [each.id for each in found.findings] == ["mount_sky", "mount_sky_beside"]
    assert found.heard == (heard,)


@pytest.mark.parametrize("day", [None, "last Tuesday", "2031-05-04"])
def test_any_day_will_do(day: str | None) -> None:
    """The nominal constellation is the same every day: its share differs by less than 2 % whatever the job's date."""
    usual, other = judged_mount(sheet(DASH), JOB), judged_mount(sheet(DASH), replace(JOB, date=day))
    assert usual is not None
    assert other is not None
    assert usual.findings[0].value == pytest.approx(other.findings[0].value, abs=2.0)
