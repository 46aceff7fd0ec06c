"""How the leads run."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest
from tests.samples.wiring import GOOD, WAY, found, told

from backprobe.findings import Verdict
from backprobe.stages.join.route import ASKED


def test_every_answer_is_asked_for():
    """What a sheet may say of the route is what is judged."""
    assert {field.name for field in fields(WAY)} == set(ASKED)
    assert found(GOOD)["mount_route"].verdict is Verdict.HOLDS


@pytest.mark.parametrize("key", ASKED)
def test_each_no_is_a_fault_and_each_silence_is_open(key: str):
    """A missing answer is never yes."""
    bad = found(told(route=replace(WAY, **{key: False})))
    assert (bad["mount_route"].verdict, bad["mount_route"].because) == (Verdict.FAILS, ASKED[key])
    untold = found(told(route=replace(WAY, **{key: None})))
    assert "mount_route" not in untold
    assert untold["join_route_told"].because == f"not told: {key}"


def test_a_fault_is_said_even_where_not_all_is_told():
    """One hole without a grommet is enough."""
    bad = found(told(route=replace(WAY, grommets=False, held=None)))
    assert bad["mount_route"].verdict is Verdict.FAILS
    assert bad["join_route_told"].verdict is Verdict.OPEN


def test_a_job_that_says_nothing_of_it_is_open():
    """All of it is asked for."""
    assert found(told(route=None))["join_route_told"].because == f"not told: {', '.join(ASKED)}"
