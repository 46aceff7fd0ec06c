"""How late a healthy unit may be."""

from dataclasses import replace

import pytest

from backprobe.evidence.unit_sheet import Lead, Purpose, Reporting, Supply, UnitInput, UnitSheet
from backprobe.stages.prove.setup import timing_of

SHEET = UnitSheet(
    name="Lantern 2",
    maker=None,
    supply=Supply(least_V=8, most_V=32),
    leads=(Lead(name="ignition", purpose=Purpose.IGNITION),),
)


def test_the_sheet_goes_before_what_is_usual():
    """The limits are the debounce and 10 s."""
    timing = timing_of(replace(SHEET, reporting=Reporting(interval_s=30, debounce_on_s=2, debounce_off_s=20)))
    assert (timing.usual_on_s, timing.on_limit_s) == (2, 12)
    assert (timing.usual_off_s, timing.off_limit_s) == (20, 30)
    assert timing.from_sheet
    assert timing.hold_s == 20 + 2 * 30


def test_without_a_sheet_off_may_be_a_minute_late():
    """Common practice; the interval is the median of what was seen."""
    timing = timing_of(None, (10.0, 30.0, 600.0))
    assert (timing.off_limit_s, timing.interval_s, timing.from_sheet) == (60, 30, False)
    assert timing_of(SHEET).off_limit_s == 60


def test_the_inputs_debounce_stands_in_for_the_on_debounce():
    """A sheet may state it there alone."""
    own = UnitInput(name="ignition", low_most_V=3, high_least_V=7, debounce_s=4)
    assert timing_of(replace(SHEET, inputs=(own,))).usual_on_s == 4


@pytest.mark.parametrize(("moving", "stopped", "interval"), [(60, 3600, 60), (None, 300, 300), (None, None, 45)])
def test_the_interval_while_moving_goes_first(moving, stopped, interval):
    """Then that while stopped, then what was seen."""
    sheet = replace(SHEET, reporting=Reporting(interval_s=moving, stopped_interval_s=stopped))
    assert timing_of(sheet, (45.0,)).interval_s == interval
