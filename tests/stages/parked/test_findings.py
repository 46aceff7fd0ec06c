"""Findings on a parked vehicle."""

from dataclasses import replace

import pytest
from tests.samples.parked import parked

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.parked_sheet import Typed
from backprobe.findings import Stage, Verdict
from backprobe.stages.parked.findings import parked_findings


def found(**figures):
    """The findings by id."""
    return {finding.id: finding for finding in parked_findings(parked(**figures))}


@pytest.mark.parametrize(
    ("wanted", "verdict"), [(5.0, Verdict.HOLDS), (30.0, Verdict.THIN), (80.0, Verdict.FAILS), (None, Verdict.OPEN)]
)
def test_the_days_against_what_is_wanted(wanted, verdict):
    """6 at the worst, 56 likely."""
    days = found(wanted_days=wanted)["parked_days"]
    assert (days.verdict, days.stage) == (verdict, Stage.JOIN)
    assert (days.next is None) == (verdict is Verdict.HOLDS)


@pytest.mark.parametrize(
    ("minutes", "verdict"),
    [(5.0, Verdict.OPEN), (19.0, Verdict.OPEN), (20.0, Verdict.THIN), (60.0, Verdict.HOLDS), (None, Verdict.OPEN)],
)
def test_a_drain_read_too_early_leaves_it_open(minutes, verdict):
    """Modules are awake still; the days are open too, even where the figures would do."""
    both = found(minutes_after_lock=minutes, wanted_days=5.0)
    assert both["parked_asleep"].verdict is verdict
    assert (both["parked_days"].verdict is Verdict.OPEN) == (verdict is Verdict.OPEN)


@pytest.mark.parametrize(
    ("second_V", "verdict"), [(12.70, Verdict.HOLDS), (12.63, Verdict.THIN), (12.40, Verdict.FAILS)]
)
def test_two_that_are_not_alike_are_said(second_V, verdict):
    """0, 0.07 and 0.3 V apart against 0.1 V, with four counts of 0.01 V between them."""
    finding = found(system_V=24, rest_V=(Typed(12.7, 0.01), Typed(second_V, 0.01)))["parked_balance"]
    assert finding.verdict is verdict
    assert ("second is the weaker" in finding.because) == (verdict is not Verdict.HOLDS)


def test_no_centre_tap_no_finding_on_balance():
    """One reading over both."""
    assert "parked_balance" not in found(system_V=24, rest_V=(Typed(25.2, 0.01),))


def test_in_a_job_an_impossible_rest_voltage_is_open_not_a_refusal():
    """The rest of the job is judged all the same."""
    days = found(rest_V=(Typed(9.0, 0.01),))["parked_days"]
    assert days.verdict is Verdict.OPEN
    assert "no battery at rest" in days.because
    assert "take the load off" in days.next


def test_what_is_lacking_is_asked_for():
    """First things first."""
    assert found(capacity_Ah=None)["parked_days"].next == "find out: [battery] capacity_Ah, as printed on the battery"


def by_policy(policy, **figures):
    """The findings by id under a fleet's own policy."""
    return {each.id: each for each in parked_findings(replace(parked(**figures), policy=policy))}


def test_a_fleet_may_want_more_days_and_never_fewer():
    """5 are wanted and hold; the fleet's 80 do not; its 2 leave the 5, its 5 stand where nobody wanted any."""
    asked = {days: by_policy(FleetPolicy(file="fleet.toml", wanted_days=days), wanted_days=5.0) for days in (80.0, 2.0)}
    more, fewer = asked[80.0]["parked_days"], asked[2.0]["parked_days"]
    assert (more.verdict, more.limit.value) == (Verdict.FAILS, 80.0)
    assert more.limit.basis == "fleet.toml, the fleet's own policy; the job sheet wants 5"
    assert (fewer.verdict, fewer.limit.value, fewer.limit.basis) == (Verdict.HOLDS, 5.0, "as wanted in the job sheet")
    alone = by_policy(FleetPolicy(file="fleet.toml", wanted_days=5.0), wanted_days=None)["parked_days"]
    assert (alone.verdict, alone.limit.basis) == (
        Verdict.HOLDS,
        "fleet.toml, the fleet's own policy; the job sheet wants none",
    )


def test_a_fleet_may_want_its_batteries_more_alike():
    """12.71 and 12.65 V are within 0.1 V, not within 0.05."""
    two = {"system_V": 24, "rest_V": (Typed(12.71, 0.001), Typed(12.65, 0.001))}
    assert by_policy(None, **two)["parked_balance"].verdict is Verdict.HOLDS
    tight = by_policy(FleetPolicy(file="fleet.toml", balance_V=0.05), **two)["parked_balance"]
    assert (tight.verdict, tight.limit.value) == (Verdict.FAILS, 0.05)
    assert "charge both singly" in tight.next
