"""The drain of a parked vehicle against what makers of cars print."""

import pytest
from tests.samples.parked import parked

from backprobe.evidence.parked_sheet import Typed
from backprobe.stages.parked.findings import ASLEEP
from backprobe.stages.parked.parked import parked_answer


@pytest.mark.parametrize("capacity_Ah", [50.0, 60.0, 70.0])
def test_about_20_days_at_the_largest_drain_that_passes(capacity_Ah):
    """jeep.automotive-manuals.com (KJ 2007): 5 to 35 mA is normal; after about 20 days charge may be inadequate.

    The manual names neither the battery nor the cold: usual capacities of such a car (common practice, no source),
    full, of unknown age, to be started in frost. Its 20 days must lie within our range.
    """
    days = parked_answer(
        parked(
            capacity_Ah=capacity_Ah,
            age_years=None,
            rest_V=(Typed(12.65, 0.01),),
            vehicle_drain_mA=Typed(35.0, 1.0),
            coldest_C=-5.0,
        )
    ).days
    assert days.low <= 20.0 <= days.high


@pytest.mark.parametrize("minutes", [15, 20])
def test_modules_time_out_within_20_minutes(minutes):
    """lemon-manuals.la (module table): 15 and 20 min; the manual above: 120 mA falls to 0.70 mA after 20 min."""
    assert minutes <= ASLEEP.value


def test_a_module_that_is_awake_still_would_more_than_halve_the_days():
    """The same manual: 120 mA awake, 0.70 mA asleep, on top of a drain of 25 mA: why a reading taken early is open."""
    asleep = parked_answer(parked(vehicle_drain_mA=Typed(25.7, 0.1))).days
    awake = parked_answer(parked(vehicle_drain_mA=Typed(145.0, 0.1))).days
    assert awake.likely < asleep.likely / 2
