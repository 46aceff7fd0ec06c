"""The adiabatic rule, its factors k and melting wires against documents that reproduce IEC 60364-5-54 and BS 7671."""

import math

import pytest

from backprobe.findings import Standing
from backprobe.limits.wires import INSULATIONS
from backprobe.physics.adiabatic import k_factor, least_area_mm2, withstands_s
from backprobe.physics.melting import onderdonk_A, preece_A
from backprobe.physics.wire import awg_area_mm2, awg_diameter_mm, circle_mm2

# first and last temperature, k of copper: mycableengineering.com/?p=712, after BS 7671 and IEC 60364-5-54
PRINTED_K = [
    ("PVC 70 °C", 70, 160, 115),
    ("PVC 90 °C", 90, 160, 100),
    ("cross-linked 90 °C", 90, 250, 143),
    ("rubber 60 °C", 60, 200, 141),
    ("rubber 85 °C", 85, 220, 134),
    ("silicone 180 °C", 180, 350, 132),
]


@pytest.mark.parametrize(("name", "from_C", "to_C", "printed"), PRINTED_K)
def test_the_formula_gives_the_printed_factors(name, from_C, to_C, printed):
    """To the unit, for each insulation that is printed with a k and both temperatures."""
    assert k_factor(from_C, to_C) == pytest.approx(printed, abs=0.75), name


def test_a_separate_conductor_starts_cooler():
    """BS 7671 table 54.2: 143 from 30 °C (sparkcerts.co.uk); calculated 142.7."""
    assert k_factor(30, 160) == pytest.approx(143, abs=0.5)


def test_worked_example_of_3000_amperes():
    """calcdomain.com: 3000 A for 0.4 s at k 115: I √t = 1897.4 (printed 1897.5), 16.5 mm²."""
    assert pytest.approx(1897.4, abs=0.1) == 3000 * 0.4**0.5
    assert least_area_mm2(3000, time_s=0.4, k=115) == pytest.approx(16.5, abs=0.05)


def test_worked_example_of_3200_amperes():
    """kwcalc.com: 3200 A for 0.1 s at k 115 and 10 % more: 9.68 mm²."""
    assert least_area_mm2(3200, time_s=0.1, k=115) * 1.1 == pytest.approx(9.68, abs=0.005)


def test_insulations_of_the_product():
    """Published rows carry the printed k; the calculated ones the formula's, rounded down, and say it is our model."""
    printed = {"pvc-70": 115, "pvc-90": 100, "xlpe-90": 143}
    calculated = {"pvc-80": (80, 160), "pvc-105": (105, 160), "xlpe-125": (125, 250)}
    assert {name: INSULATIONS[name].k for name in printed} == printed
    assert {INSULATIONS[name].basis.standing for name in printed} == {Standing.PUBLISHED}
    for name, (from_C, to_C) in calculated.items():
        assert INSULATIONS[name].k == int(k_factor(from_C, to_C))
        assert INSULATIONS[name].basis.standing is Standing.MODEL
    assert set(INSULATIONS) == {*printed, *calculated}


def test_onderdonk_and_the_misprinted_example():
    """physicsforums.com/threads/364495: 2581 circular mils, 5 s, 25 °C; prints 178 A, by 234 - 25; right is 168.9 A."""
    area_mm2 = 2581 * circle_mm2(0.0254)
    assert onderdonk_A(area_mm2, time_s=5.0, ambient_C=25.0) == pytest.approx(168.9, abs=0.1)
    wrong = 2581 * (math.log10((1083 - 25) / (234 - 25) + 1) / (33 * 5)) ** 0.5
    assert wrong == pytest.approx(178, abs=0.5)


@pytest.mark.parametrize(("gauge", "melts_A"), [(18, 237.6), (20, 149.4), (22, 94.0), (24, 59.1)])
def test_onderdonk_for_a_second(gauge, melts_A):
    """Calculated apart from the code by the formula as printed (25 °C, 1083 °C): a check of the arithmetic only."""
    assert onderdonk_A(awg_area_mm2(gauge), time_s=1.0) == pytest.approx(melts_A, abs=0.06)


def test_preece():
    """physicsforums.com/threads/364495: 0.0524 inch melts at 123 A; 18 and 24 AWG, calculated, at 82.9 and 29.2 A."""
    assert preece_A(0.0524 * 25.4) == pytest.approx(123, abs=0.5)
    assert preece_A(awg_diameter_mm(18)) == pytest.approx(82.9, abs=0.1)
    assert preece_A(awg_diameter_mm(24)) == pytest.approx(29.2, abs=0.1)


def test_melting_is_never_the_limit():
    """At the current that melts 18 AWG in a second its PVC stands less than a fifth of that second."""
    melts_A = onderdonk_A(awg_area_mm2(18), time_s=1.0)
    assert withstands_s(melts_A, area_mm2=awg_area_mm2(18), k=115) < 0.2
