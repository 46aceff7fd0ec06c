"""How far a reading may be from the truth."""

from dataclasses import replace

import pytest
from tests.samples.probe_tables import SETUP, readings_of

from backprobe.stages.probe.spread import spread_V


def test_a_meter_s_figure_is_as_good_as_the_meter():
    """±(0.5 % + 2 counts) of 12.40 V: 0.062 + 0.02 V."""
    (reading,) = readings_of("on 12.40")
    assert spread_V(reading, SETUP.meter) == pytest.approx(0.082)


def test_another_source_says_how_good_it_is():
    """The unit's own figure, said to be within 0.9 V."""
    (reading,) = readings_of("on 12.40")
    assert spread_V(replace(reading, source="the unit's reports", spread_V=0.9), SETUP.meter) == 0.9
