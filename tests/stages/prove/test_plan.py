"""A script worth turning the key through."""

from itertools import pairwise

import pytest
from tests.samples.prove_cases import proven, row, script, states

from backprobe.evidence.unit_sheet import Reporting, Supply, UnitSheet
from backprobe.stages.prove.plan import plan_of
from backprobe.stages.prove.setup import ProveSetup

SHEET = UnitSheet(
    name="Lantern 2",
    maker=None,
    supply=Supply(least_V=8, most_V=32),
    leads=(),
    reporting=Reporting(interval_s=60, debounce_on_s=2, debounce_off_s=20),
)


def keys(**setup):
    """The keys of a plan."""
    return [str(step.key) for step in plan_of(ProveSetup(**setup))]


def test_the_order_asks_every_question_once():
    """Off, accessory, off, on without crank, crank, run, off, doors shut."""
    assert keys() == ["off", "accessory", "off", "on", "crank", "running", "off", "doors_shut"]
    assert keys(has_crank=False) == ["off", "accessory", "off", "on", "running", "off", "doors_shut"]
    assert keys(has_accessory=False) == ["off", "on", "crank", "running", "off", "doors_shut"]


@pytest.mark.parametrize(("sheet", "least"), [(SHEET, 20 + 2 * 60), (None, 10 + 2 * 60)])
def test_each_state_is_long_enough_and_none_is_like_another(sheet, least):
    """Longer than debounce and two intervals; a crank lasts as long as the engine needs."""
    steps = plan_of(ProveSetup(sheet=sheet))
    holds = [step.hold_s for step in steps if step.key != "crank"]
    assert min(holds) > least
    assert len(set(holds)) == len(holds)
    assert all(before.at_s + before.hold_s == after.at_s for before, after in pairwise(steps))


@pytest.mark.parametrize("interval", [10, 60])
def test_the_plan_proves_a_unit_that_only_reports_by_interval(interval):
    """The states are long enough to be seen: every row matched, and no pattern."""
    steps = [(step.at_s, str(step.key)) for step in plan_of(ProveSetup(sheet=SHEET))]
    on_s, off_s = steps[3][0] + 2, steps[6][0] + 20
    rows = [row(t, ignition=int(on_s <= t < off_s)) for t in range(-300, steps[-1][0] + 300, interval)]
    answer = proven(rows, steps, sheet=SHEET)
    assert states(answer) == ["matched"] * len(steps)
    assert answer.proof.patterns == ()
    assert len(script(steps).turns) == 2


def test_what_to_do_stands_beside_each_step():
    """With the caution where the engine is cranked."""
    steps = plan_of(ProveSetup())
    assert "nobody beneath" in next(step for step in steps if step.key == "crank").why
    assert "doors still shut" in steps[6].why
    assert "doors still shut" not in steps[0].why
    assert steps[0].as_json() == {"t": 0, "key": "off", "hold_s": steps[0].hold_s, "do": "key off; wait"}
