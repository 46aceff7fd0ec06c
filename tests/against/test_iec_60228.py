"""Square-millimetre sizes against IEC 60228's largest resistances, as three documents reproduce them."""

import pytest

from backprobe.findings import Standing
from backprobe.limits.wires import IEC_60228, IEC_60228_BASIS, ISO_6722, ISO_6722_BASIS
from backprobe.physics.wire import awg_area_mm2, copper_ohm_per_m
from backprobe.stages.join.conductor import conductor_of

# etechnik-synergie.com, bayka.de and mycableengineering.com agree: mm², class 1/2, class 5/6, class 5/6 tinned, Ω/km
PRINTED = [
    (0.5, 36.0, 39.0, 40.1),
    (0.75, 24.5, 26.0, 26.7),
    (1, 18.1, 19.5, 20.0),
    (1.5, 12.1, 13.3, 13.7),
    (2.5, 7.41, 7.98, 8.21),
    (4, 4.61, 4.95, 5.09),
    (6, 3.08, 3.30, 3.39),
]
# cableizer.com/documentation/R_co, after UL 1581: gauge, solid, stranded, in mΩ/m
UL_1581 = [(24, 85.9, 87.6), (20, 33.9, 34.6), (18, 21.4, 21.8), (16, 13.5, 13.7), (10, 3.343, 3.409)]


@pytest.mark.parametrize(("mm2", "rigid", "flexible", "tinned"), PRINTED)
def test_the_wires_of_the_product_are_those(mm2, rigid, flexible, tinned):
    """Stranded wire is reckoned with class 5, solid with class 1, at most tinned class 5."""
    assert conductor_of(mm2=mm2, solid=True).ohm_per_m.likely * 1000 == pytest.approx(rigid)
    stranded = conductor_of(mm2=mm2).ohm_per_m
    assert (stranded.likely * 1000, stranded.high * 1000) == pytest.approx((flexible, tinned))


@pytest.mark.parametrize("mm2", IEC_60228)
def test_every_maximum_is_above_pure_copper(mm2):
    """By 1 to 16 %: fine strands are longer than the wire and a nominal area is not all copper."""
    ratios = [most / 1000 / copper_ohm_per_m(mm2) for most in IEC_60228[mm2] if most is not None]
    assert 1.0 < min(ratios) <= max(ratios) < 1.20


@pytest.mark.parametrize(("gauge", "solid", "stranded"), UL_1581)
def test_gauges_stay_below_their_maximum(gauge, solid, stranded):
    """What gauges are reckoned with is below UL 1581's largest, and within 3 % of it."""
    for conductor, most in ((conductor_of(awg=gauge, solid=True), solid), (conductor_of(awg=gauge), stranded)):
        assert most * 0.97 < conductor.ohm_per_m.likely * 1000 <= most


def test_the_road_vehicle_table_is_from_memory_and_near():
    """ISO 6722-1 is remembered: each figure lies within 7 % of class 5; nothing is reckoned with it."""
    assert ISO_6722_BASIS.standing is Standing.FROM_MEMORY
    assert IEC_60228_BASIS.standing is Standing.PUBLISHED
    for mm2, most in ISO_6722.items():
        assert most == pytest.approx(conductor_of(mm2=mm2).ohm_per_m.likely * 1000, rel=0.07)


def test_aircraft_wire_of_the_same_gauge_is_no_thinner():
    """FAA AC 43.13-1B table 11-9: tin-plated 20 AWG has 1216 circular mils and 9.88 Ω/kft, 3 % below our reckoning."""
    ohm_per_kft = conductor_of(awg=20).ohm_per_m.likely * 304.8
    assert 9.88 < ohm_per_kft < 9.88 * 1.06
    assert awg_area_mm2(20) < 1216 * 5.0671e-4
