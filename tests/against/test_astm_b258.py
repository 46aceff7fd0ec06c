"""Gauges against printed tables of ASTM B258's diameters, areas and resistances.

Standing: tables printed by others; ASTM B258 itself was not read.
"""

import pytest

from backprobe.physics.wire import awg_area_mm2, awg_diameter_mm, circular_mils, copper_ohm_per_m
from backprobe.stages.join.conductor import conductor_of

FT_PER_KM = 3280.84
# circular mils and ohm per 1000 ft: hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html, after Floyd, Electric
# Circuit Fundamentals, 2nd edition; ohm per km: wp.1728.org/?p=4314
PRINTED = [
    (10, 10381, 0.9989, 3.28),
    (11, 8234, 1.26, 4.13),
    (12, 6529, 1.588, 5.21),
    (13, 5178.4, 2.003, 6.57),
    (14, 4106.8, 2.525, 8.28),
    (15, 3256.7, 3.184, 10.44),
    (16, 2582.9, 4.016, 13.17),
    (17, 2048.2, 5.064, 16.61),
    (18, 1624.3, 6.385, 20.94),
    (19, 1288.1, 8.051, 26.41),
    (20, 1021.5, 10.15, 33.29),
    (21, 810.1, 12.80, 41.98),
    (22, 642.4, 16.14, 52.94),
    (23, 509.45, 20.36, 66.78),
    (24, 404.0, 25.67, 84.20),
]


@pytest.mark.parametrize(("gauge", "mils", "ohm_per_kft", "ohm_per_km"), PRINTED)
def test_areas_and_resistances_of_10_to_24_awg(gauge, mils, ohm_per_kft, ohm_per_km):
    """Within 0.1 % of all three printed columns, and of half a printed digit where that is wider."""
    ours = copper_ohm_per_m(awg_area_mm2(gauge)) * 1000
    assert circular_mils(awg_area_mm2(gauge)) == pytest.approx(mils, rel=1e-3)
    assert ours == pytest.approx(ohm_per_km, rel=1e-3, abs=0.005)
    assert ours * 1000 / FT_PER_KM == pytest.approx(ohm_per_kft, rel=1e-3, abs=0.005)


def test_the_solid_wire_of_the_product_is_that_wire():
    """`--solid` reckons with the printed 20.94 Ω/km of 18 AWG; stranded with about 2 % more."""
    assert conductor_of(awg=18, solid=True).ohm_per_m.likely * 1000 == pytest.approx(20.94, rel=1e-3)
    assert conductor_of(awg=18).ohm_per_m.likely * 1000 == pytest.approx(20.94 * 1.02, rel=1e-3)


def test_the_sizes_of_the_class_of_large_gauges():
    """4/0 is 11.684 mm, 2/0 9.266 mm and 67.4 mm², 2 AWG 33.63 mm² (tagoverland.co/ts/cables, after ASTM B258)."""
    assert awg_diameter_mm(-3) == pytest.approx(11.684, abs=0.001)
    assert awg_area_mm2(-1) == pytest.approx(67.4, abs=0.05)
    assert awg_area_mm2(2) == pytest.approx(33.6308, abs=0.02)
