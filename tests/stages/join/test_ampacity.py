"""What a wire carries for good."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.limits.wires import INSULATIONS
from backprobe.stages.join.ampacity import ampacity_A, ampacity_bases, insulation_of
from backprobe.stages.join.conductor import conductor_of

PVC_105 = insulation_of("pvc-105")


def test_a_listed_gauge_at_the_tables_ambient():
    """18 AWG of 105 °C insulation carries 20 A at 30 °C (33 CFR 183.425 table 5)."""
    assert ampacity_A(conductor_of(awg=18), PVC_105, ambient_C=30).likely == pytest.approx(20.0)


def test_hot_surroundings_leave_less():
    """At 60 °C 45 of 75 K are left: 20 × √0.6 = 15.49 A."""
    assert ampacity_A(conductor_of(awg=18), PVC_105, ambient_C=60).likely == pytest.approx(20 * math.sqrt(0.6))


def test_thin_gauges_follow_the_steps_of_another_table():
    """20 AWG carries 4 / 6 of 18 AWG there: 13.3 A at 30 °C; it rests on both tables."""
    assert ampacity_A(conductor_of(awg=20), PVC_105, ambient_C=30).likely == pytest.approx(20 * 4 / 6)
    assert [len(ampacity_bases(conductor_of(awg=gauge))) for gauge in (18, 20)] == [1, 2]


def test_wires_thinner_than_any_table_lose_as_much_current_as_copper():
    """30 AWG has a quarter of 24 AWG's copper, and a quarter of its 8.33 A."""
    thin, listed = (ampacity_A(conductor_of(awg=gauge), PVC_105, ambient_C=30) for gauge in (30, 24))
    assert thin.likely / listed.likely == pytest.approx(92 ** (-12 / 39))


def test_as_little_copper_as_may_be_carries_less():
    """0.5 mm² may have 0.442 mm² of copper: its low end is below its likely figure."""
    carries = ampacity_A(conductor_of(mm2=0.5), PVC_105, ambient_C=60)
    assert carries.low < carries.likely == carries.high


def test_an_unknown_insulation_is_refused():
    """With the names that there are."""
    with pytest.raises(OptionError, match=r"no insulation is called 'rubber': pvc-70, .*xlpe-125"):
        insulation_of("rubber")


@given(st.sampled_from(sorted(INSULATIONS)), st.floats(-40, 130), st.floats(0, 60), st.integers(-3, 39))
def test_hotter_or_thinner_never_carries_more(name, ambient_C, more_K, gauge):
    """For every insulation and gauge, at both ends."""
    insulation, wire = insulation_of(name), conductor_of(awg=gauge)
    here = ampacity_A(wire, insulation, ambient_C=ambient_C)
    hotter = ampacity_A(wire, insulation, ambient_C=ambient_C + more_K)
    thinner = ampacity_A(conductor_of(awg=gauge + 1), insulation, ambient_C=ambient_C)
    for other in (hotter, thinner):
        assert other.low <= here.low
        assert other.likely <= here.likely
