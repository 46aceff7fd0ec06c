"""A wire's copper and resistance."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.limits.wires import AWG_MOST, EQUIVALENTS, IEC_60228
from backprobe.physics.wire import awg_area_mm2, copper_ohm_per_m
from backprobe.stages.join.conductor import conductor_of, gauge_name


def test_a_stranded_gauge_is_two_percent_above_copper():
    """18 AWG: 0.017241 / 0.8230 × 1.02 = 21.37 mΩ/m; solid 20.95."""
    assert conductor_of(awg=18).ohm_per_m.likely == pytest.approx(0.017241 / 0.8230 * 1.02, rel=1e-4)
    assert conductor_of(awg=18, solid=True).ohm_per_m.likely == pytest.approx(0.017241 / 0.8230, rel=1e-4)


def test_vehicle_wire_has_less_copper_than_its_gauge():
    """16 AWG is made of 19 strands of 29 AWG: 19 × 0.06421 = 1.220 mm², 7 % less than 1.309."""
    wire = conductor_of(awg=16)
    assert wire.least_area_mm2 == pytest.approx(19 * awg_area_mm2(29))
    assert wire.least_area_mm2 / wire.area_mm2 == pytest.approx(0.932, abs=0.001)


def test_a_size_in_square_millimetres_is_defined_by_its_resistance():
    """0.5 mm²: class 5 allows 39.0 mΩ/m, which is 0.442 mm² of copper; tinned 40.1; pure copper 34.48."""
    wire = conductor_of(mm2=0.5)
    assert (wire.ohm_per_m.low, wire.ohm_per_m.likely, wire.ohm_per_m.high) == pytest.approx((0.034482, 0.039, 0.0401))
    assert wire.least_area_mm2 == pytest.approx(0.017241 / 0.039)


def test_a_size_that_is_not_listed_has_its_neighbours_allowance():
    """2 mm² lies between 1.5 and 2.5, both 15.7 % above copper: 8.62 × 1.157 = 9.975 mΩ/m."""
    assert conductor_of(mm2=2).ohm_per_m.likely == pytest.approx(0.017241 / 2 * 1.157, rel=1e-3)


def test_the_name_in_diagrams_is_not_the_area():
    """1 mm² is written for 16 AWG, whose true area is 31 % larger; both tables are kept."""
    assert EQUIVALENTS[1.0] == 16
    assert awg_area_mm2(16) == pytest.approx(1.309, abs=0.001)
    assert conductor_of(mm2=1).area_mm2 == 1


@pytest.mark.parametrize(("gauge", "name"), [(18, "18 AWG"), (0, "1/0 AWG"), (-1, "2/0 AWG"), (-3, "4/0 AWG")])
def test_gauges_are_written_as_the_trade_does(gauge, name):
    """0 is 1/0, -3 is 4/0."""
    assert gauge_name(gauge) == conductor_of(awg=gauge).name == name


@pytest.mark.parametrize(
    ("size", "said"),
    [
        ({"awg": 55}, "no wire has gauge 55"),
        ({"awg": -4}, "no wire has gauge -4"),
        ({"mm2": 0.0}, "a wire of 0 mm²"),
        ({"mm2": -1.0}, "a wire of -1 mm²"),
        ({"mm2": float("nan")}, "a wire of nan mm²"),
        ({"mm2": 500.0}, "a wire of 500 mm²"),
        ({}, "one of the two"),
        ({"awg": 18, "mm2": 0.75}, "one of the two"),
    ],
)
def test_sizes_that_are_none_are_refused(size, said):
    """In words that say what is expected."""
    with pytest.raises(OptionError, match=said):
        conductor_of(**size)


@given(st.integers(-3, 39), st.booleans())
def test_a_thinner_gauge_never_resists_less(gauge, solid):
    """At each of the three figures, listed or not; nor has it more copper."""
    thick, thin = conductor_of(awg=gauge, solid=solid), conductor_of(awg=gauge + 1, solid=solid)
    assert thin.ohm_per_m.low > thick.ohm_per_m.low
    assert thin.ohm_per_m.likely > thick.ohm_per_m.likely
    assert thin.ohm_per_m.high > thick.ohm_per_m.high
    assert thin.least_area_mm2 < thick.least_area_mm2


@given(st.floats(0.05, 120), st.floats(0.05, 120), st.booleans())
def test_a_thinner_size_never_resists_less(one, other, solid):
    """Between listed sizes and beyond them."""
    thin, thick = (conductor_of(mm2=mm2, solid=solid) for mm2 in sorted((one, other)))
    assert thin.ohm_per_m.likely >= thick.ohm_per_m.likely * (1 - 1e-12)
    assert thin.ohm_per_m.high >= thick.ohm_per_m.high * (1 - 1e-12)
    assert thin.least_area_mm2 <= thick.least_area_mm2 * (1 + 1e-12)


@given(st.one_of(st.integers(-3, 40), st.floats(0.05, 120)), st.booleans())
def test_the_figures_stand_in_order(size, solid):
    """Least, likely, most; as little copper as may be is not more than the name says."""
    wire = conductor_of(awg=size, solid=solid) if isinstance(size, int) else conductor_of(mm2=size, solid=solid)
    assert wire.ohm_per_m.low <= wire.ohm_per_m.likely <= wire.ohm_per_m.high
    assert wire.least_area_mm2 <= wire.area_mm2
    assert wire.ohm_per_m.low <= copper_ohm_per_m(wire.area_mm2) * (1 + 1e-12)


def test_listed_sizes_are_met():
    """Each listed figure is the one that is reckoned with."""
    for mm2, (rigid, flexible, _) in IEC_60228.items():
        assert conductor_of(mm2=mm2).ohm_per_m.likely * 1000 == pytest.approx(flexible)
        assert conductor_of(mm2=mm2, solid=True).ohm_per_m.likely * 1000 == pytest.approx(rigid)
    for gauge, (solid, _, coated) in AWG_MOST.items():
        assert conductor_of(awg=gauge, solid=True).ohm_per_m.high * 1000 == pytest.approx(solid)
        assert conductor_of(awg=gauge).ohm_per_m.high * 1000 >= coated - 1e-9
