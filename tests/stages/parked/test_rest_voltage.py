"""State of charge and how sure it is."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.physics.span import Span, exactly
from backprobe.stages.parked.rest_voltage import KINDS, not_at_rest, state_of_charge


def test_a_rested_flooded_battery():
    """12.24 V is half by the first table, 0.5 + 0.25 × 0.04 / 0.2 = 0.55 by the second."""
    found = state_of_charge(exactly(12.24), hours=24, kind="flooded")
    assert (found.low, found.likely, found.high) == pytest.approx((0.5, 0.5, 0.55))


def test_a_bad_meter_widens_it():
    """±0.1 V: from 12.14 V (0.25 + 0.25 × 0.08 / 0.18 = 0.361) to 12.34 V."""
    found = state_of_charge(Span(12.14, 12.24, 12.34), hours=24, kind="flooded")
    assert found.low == pytest.approx(0.25 + 0.25 * 0.08 / 0.18)
    assert found.high > 0.65


def test_surface_charge_pulls_the_low_end_down():
    """After 3 h up to 0.184 V may be surface: the low end is that of 12.456 V, the likely one that of 12.548 V."""
    found = state_of_charge(exactly(12.64), hours=3, kind="flooded")
    assert found.low == pytest.approx(0.75 + 0.25 * 0.006 / 0.2, abs=0.002)
    assert found.likely == pytest.approx(0.75 + 0.25 * 0.098 / 0.2, abs=0.002)
    assert found.high == 1.0


def test_an_unknown_kind_may_be_agm():
    """12.6 V is 94 % flooded, 75 % AGM."""
    found = state_of_charge(exactly(12.6), hours=24)
    assert found.low == pytest.approx(0.75)
    assert found.likely == pytest.approx(0.9375)


def test_cold_may_mean_less_and_hot_more():
    """At 0 °C the printed correction takes 0.115 V off, at 45 °C it adds 0.079 V; without it nothing changes."""
    plain = state_of_charge(exactly(12.3), hours=24, kind="flooded")
    cold = state_of_charge(exactly(12.3), hours=24, kind="flooded", temperature_C=0)
    hot = state_of_charge(exactly(12.3), hours=24, kind="flooded", temperature_C=45)
    assert cold.low < plain.low
    assert (cold.likely, cold.high) == (plain.likely, plain.high)
    assert (hot.low, hot.likely) == (plain.low, plain.likely)
    assert hot.high > plain.high


@pytest.mark.parametrize(
    ("volts", "hours", "fault"), [(9.0, 24, "a cell is gone"), (14.2, 2, "a charger"), (13.4, 24, "a charger")]
)
def test_what_is_no_rest_is_said(volts, hours, fault):
    """Too low and too high, each with what may be the matter."""
    assert fault in not_at_rest(volts, hours=hours)


@pytest.mark.parametrize(("volts", "hours"), [(10.8, 24), (12.6, 0), (13.2, 24), (13.6, 0)])
def test_what_can_be_a_rest_is_let_through(volts, hours):
    """From 10.8 V to 13.2 V, and 0.5 V more at once after a charge."""
    assert not_at_rest(volts, hours=hours) is None


def test_an_unknown_kind_of_battery_is_refused():
    """With the kinds that there are."""
    with pytest.raises(OptionError, match="no kind of battery is called 'lithium': flooded, agm, unknown"):
        state_of_charge(exactly(12.6), hours=24, kind="lithium")


READINGS = st.tuples(st.floats(10.8, 13.6), st.floats(0, 0.3))


@given(READINGS, st.floats(0, 100), st.sampled_from(KINDS), st.one_of(st.none(), st.floats(-40, 55)))
def test_the_figures_stand_in_order(reading, hours, kind, temperature_C):
    """Low, likely and high, each from empty to full."""
    volts, spread = reading
    rest = Span(volts - spread, volts, volts + spread)
    found = state_of_charge(rest, hours=hours, kind=kind, temperature_C=temperature_C)
    assert 0.0 <= found.low <= found.likely <= found.high <= 1.0


@given(st.floats(10.8, 13.0), st.floats(0, 0.5), st.floats(0, 48), st.floats(0, 48))
def test_more_volts_and_longer_rest_never_show_less(volts, more_V, hours, more_h):
    """At the low end, which is what is relied on."""
    here = state_of_charge(exactly(volts), hours=hours)
    assert state_of_charge(exactly(volts + more_V), hours=hours).low >= here.low
    assert state_of_charge(exactly(volts), hours=hours + more_h).low >= here.low
