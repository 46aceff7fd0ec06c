"""Did the supply hold, as far as the vehicle's reports show it?"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.bus_heard import cycle_heard

from backprobe.findings import Finding, Verdict
from backprobe.stages.bus.dip import dip, sampled_fast_enough
from backprobe.stages.bus.heard import Heard


def found(heard: Heard, *, system_V: int = 12) -> Finding:
    """The finding, which must be there."""
    finding = dip(heard, system_V=system_V)
    assert finding is not None
    return finding


def test_a_report_a_second_is_too_slow_to_prove_a_dip() -> None:
    """10.2 V from 12.4 V: inside the limit of 9.0 V, margin 1.2 V; most of the dip lies between reports: thin."""
    finding = found(cycle_heard())
    assert finding.verdict is Verdict.THIN
    assert (finding.value, finding.margin, finding.low) == (10.2, 1.2, None)
    assert "too slow to prove the dip" in finding.because
    assert "200 rows a second" in (finding.next or "")
    assert not sampled_fast_enough(cycle_heard(), system_V=12)


def test_a_report_outside_the_limit_disproves_at_any_pace() -> None:
    """8.5 V is below 9.0 V."""
    finding = found(cycle_heard(lowest_V=8.5))
    assert (finding.verdict, finding.margin) == (Verdict.FAILS, -0.5)


def test_a_report_that_hardly_fell_saw_nothing() -> None:
    """12.0 V from 12.4 V: the engine was cranked, the dip was missed altogether: open."""
    finding = found(cycle_heard(lowest_V=12.0))
    assert finding.verdict is Verdict.OPEN
    assert "no report fell noticeably" in finding.because


def test_a_crank_between_two_reports_is_open() -> None:
    """Cranked from 9.2 to 9.9 s, reported at 9 and at 10 s."""
    finding = found(cycle_heard(crank_s=9.2, crank_length_s=0.7))
    assert (finding.verdict, finding.value) == (Verdict.OPEN, None)


def test_a_log_without_a_crank_asks_for_one() -> None:
    """Nothing is said of a dip that was not there; the caution stands with the step."""
    finding = found(cycle_heard(crank_s=99.0))
    assert finding.verdict is Verdict.OPEN
    assert "record a start" in (finding.next or "")
    assert "listen only" in (finding.next or "")


@pytest.mark.parametrize(("step_s", "fast"), [(0.004, True), (0.005, True), (0.006, False), (1.0, False)])
def test_the_pace_that_proves_is_three_in_the_trough(step_s: float, fast: bool) -> None:
    """15 ms of trough, three samples in it: one every 5 ms. So quick a bus holds 10.2 V against 9.0 V."""
    heard = cycle_heard()
    quick = tuple(replace(crank, step_s=step_s) for crank in heard.key.cranks)
    heard = replace(heard, key=replace(heard.key, cranks=quick))
    assert sampled_fast_enough(heard, system_V=12) is fast
    finding = found(heard)
    assert finding.verdict is (Verdict.HOLDS if fast else Verdict.THIN)
    if fast:
        assert (finding.low, finding.high) == pytest.approx((10.15, 10.25))


def test_a_24_V_vehicle_has_twice_the_limit() -> None:
    """17.0 V is below 18.0 V."""
    finding = found(cycle_heard(lowest_V=8.5, scale=2.0), system_V=24)
    assert (finding.verdict, finding.value, finding.limit and finding.limit.value) == (Verdict.FAILS, 17.0, 18.0)


def test_a_clock_that_stands_proves_no_pace() -> None:
    """Estimates from row numbers are no measure."""
    heard = replace(cycle_heard(), times_known=False)
    assert "clock stands still" in found(heard).because


def test_no_voltage_no_finding() -> None:
    """A bus on which nobody reports a supply says nothing of it."""
    assert dip(replace(cycle_heard(), volts=None), system_V=12) is None
    assert not sampled_fast_enough(replace(cycle_heard(), volts=None), system_V=12)
