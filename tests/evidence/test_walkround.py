"""What a walkround says, and what it leaves unsaid."""

from __future__ import annotations

import dataclasses

import pytest

from backprobe.evidence.walkround import Authority, Bench, Condition, Hazards, OnVehicle, Walkround


@pytest.mark.parametrize("part", [Authority, OnVehicle, Condition, Bench, Hazards])
def test_nothing_is_taken_for_said(part: type):
    """Every field of every part is None until somebody says something: neither yes nor no, neither none nor some."""
    assert {getattr(part(), field.name) for field in dataclasses.fields(part)} == {None}


def test_a_walkround_without_an_after_has_none():
    """A condition after the work that nobody wrote is not one in which nothing was found."""
    assert Walkround().after is None
    assert Walkround().before == Condition()


@pytest.mark.parametrize(
    ("said", "by", "allowed"),
    [
        (None, None, None),
        (None, "Maud Linden", True),
        (True, "Maud Linden", True),
        (True, None, None),
        (False, None, False),
        (False, "Maud Linden", False),
    ],
)
def test_a_name_allows_and_false_refuses(said: bool | None, by: str | None, allowed: bool | None):
    """'true' without a name allows nothing: nobody stands for it."""
    assert Authority(work=said, work_by=by).may_work is allowed
    assert Authority(crank=said, crank_by=by).may_crank is allowed
