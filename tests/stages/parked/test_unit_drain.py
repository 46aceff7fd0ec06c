"""What the unit draws at rest."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.parked import UNIT

from backprobe.evidence.unit_sheet import Reporting
from backprobe.physics.span import exactly
from backprobe.stages.parked.unit_drain import Plan, plan_of


def test_the_mean_of_sleep_and_reports():
    """30 s of 180 mA and 3570 s of 3.5 mA: 17895 / 3600 = 4.971 mA."""
    assert plan_of(UNIT).mean_mA.likely == pytest.approx(17895 / 3600)
    assert plan_of(UNIT).notes == ()


def test_without_report_s_it_is_supposed_and_said():
    """5, 20 or 60 s: (5 x 180 + 3595 x 3.5) / 3600 = 3.745 mA at the least."""
    plan = plan_of(replace(UNIT, reporting=Reporting(stopped_interval_s=3600)))
    assert plan.mean_mA.low == pytest.approx((5 * 180 + 3595 * 3.5) / 3600)
    assert plan.notes == (
        "the unit's sheet states no report_s: one report takes 5 to 60 s, 20 s likely (our own model)",
    )


def test_currents_that_are_not_stated_are_taken_at_the_worse():
    """Awake for asleep, the peak for sending."""
    plan = plan_of(replace(UNIT, supply=replace(UNIT.supply, sleep_mA=None, transmit_mA=None)))
    assert (plan.sleep_mA, plan.transmit_mA) == (65, 1200)
    assert len(plan.notes) == 2


@pytest.mark.parametrize(
    ("unit", "lacking"),
    [
        (replace(UNIT, reporting=Reporting()), "no stopped_interval_s"),
        (replace(UNIT, supply=replace(UNIT.supply, sleep_mA=None, idle_mA=None)), "neither sleep_mA nor idle_mA"),
        (replace(UNIT, supply=replace(UNIT.supply, peak_A=None, transmit_mA=None)), "neither transmit_mA nor peak_A"),
    ],
)
def test_what_cannot_be_known_is_said(unit, lacking):
    """In words, not supposed."""
    assert lacking in plan_of(unit)


@given(st.floats(0, 50), st.floats(60, 2000), st.floats(1, 300), st.floats(51, 59))
def test_the_interval_found_draws_what_is_bearable(sleep_mA, transmit_mA, report_s, bearable_mA):
    """The mean at that interval is no more."""
    plan = Plan(sleep_mA=sleep_mA, transmit_mA=transmit_mA, interval_s=60.0, report_s=exactly(report_s))
    found_s = plan.interval_for_s(bearable_mA, report_s)
    assert replace(plan, interval_s=found_s).mean_mA.likely == pytest.approx(bearable_mA)
    assert plan.interval_for_s(sleep_mA, report_s) is None
