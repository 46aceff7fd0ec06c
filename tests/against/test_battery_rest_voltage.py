"""State of charge against printed rest-voltage tables, capacity and self-discharge against printed figures."""

import pytest

from backprobe.limits.batteries import CAPACITY, REST, REST_TABLE_C, REST_V_PER_K, SELF_DISCHARGE_PER_MONTH
from backprobe.physics.battery import charge_at_V
from backprobe.physics.capacity import capacity_fraction, capacity_fraction_by_rate
from backprobe.physics.self_discharge import self_discharge_per_day
from backprobe.physics.span import exactly
from backprobe.stages.parked.rest_voltage import state_of_charge


@pytest.mark.parametrize(("volts", "charge"), [(12.65, 1), (12.45, 0.75), (12.24, 0.5), (12.06, 0.25), (11.89, 0)])
def test_a_flooded_battery(volts, charge):
    """discoverbattery.com FAQ 120 table 6, at 26.7 °C (BCI style): the likely figure of a rested flooded battery."""
    assert state_of_charge(exactly(volts), hours=24, kind="flooded").likely == pytest.approx(charge)


@pytest.mark.parametrize(("volts", "charge"), [(12.6, 1), (12.4, 0.75), (12.2, 0.5), (12.0, 0.25), (11.6, 0)])
def test_a_second_table_lies_within_the_range(volts, charge):
    """lists.ettus.com prints 12.6 to 11.6 V: within what is allowed for a flooded battery."""
    found = state_of_charge(exactly(volts), hours=24, kind="flooded")
    assert found.low - 1e-9 <= charge <= found.high + 1e-9


@pytest.mark.parametrize(("volts", "charge"), [(12.8, 1), (12.6, 0.75), (12.3, 0.5), (12.0, 0.25)])
def test_an_agm_battery(volts, charge):
    """Polaris owner's manual, AGM charging table: 12.8, 12.6, 12.3, 12.0 V at 100 to 25 %."""
    assert state_of_charge(exactly(volts), hours=24, kind="agm").likely == pytest.approx(charge)


def test_ten_percent_is_about_eighty_millivolts():
    """lists.ettus.com: 10 % of charge is 80 mV, and 1 % of meter error (0.12 V) ±15 %."""
    table = REST["flooded"][0]
    assert charge_at_V(12.28, table) - charge_at_V(12.20, table) == pytest.approx(0.10, abs=0.01)
    assert charge_at_V(12.36, table) - charge_at_V(12.24, table) == pytest.approx(0.15, abs=0.01)


def test_the_printed_correction_for_temperature():
    """discoverbattery.com FAQ 120 table 7: 0.024 V for 10 °F; -0.192 V at 0 °F, about -0.115 V at 32 °F."""
    assert pytest.approx(0.024 / (10 / 1.8)) == REST_V_PER_K
    assert pytest.approx(-0.192, abs=0.001) == REST_V_PER_K * (-17.78 - REST_TABLE_C)
    assert pytest.approx(-0.115, abs=0.001) == REST_V_PER_K * (0 - REST_TABLE_C)


@pytest.mark.parametrize(("temperature_C", "change"), [(0, -16), (5, -12), (10, -10), (15, -6), (20, -1), (40, 5)])
def test_capacity_when_cold(temperature_C, change):
    """discover-energy.com: available capacity of discharges above 60 min, in percent of that at 25 °C."""
    assert capacity_fraction(temperature_C, CAPACITY["slow"]) == pytest.approx(1 + change / 100)


def test_capacity_at_minus_ten():
    """support.rollsbattery.com 246381: at -10 °C 1.65 times the capacity is needed."""
    assert capacity_fraction(-10.0, CAPACITY["slow"]) == pytest.approx(1 / 1.65, abs=0.001)


def test_two_rules_for_cold_batteries_frame_the_table():
    """velapower.com: 0.006 per kelvin for 10 to 20 h, 0.01 for 1 h. At 0 and 10 °C the table lies between them."""
    for temperature_C in (0.0, 10.0):
        low, high = (capacity_fraction_by_rate(temperature_C, per_K=k) for k in (0.01, 0.006))
        assert low <= capacity_fraction(temperature_C, CAPACITY["slow"]) <= high + 0.011


@pytest.mark.parametrize(("temperature_C", "factor"), [(-3.9, 1.520), (10.0, 1.190), (25.0, 1.0), (35.0, 0.910)])
def test_sizing_factors_from_memory(temperature_C, factor):
    """IEEE 485 table 1 as remembered: capacity is one over the factor. Shown, decides nothing."""
    assert capacity_fraction(temperature_C, CAPACITY["sizing"]) == pytest.approx(1 / factor, abs=0.001)


def test_self_discharge_in_a_month():
    """diracdelta.co.uk: 4 to 6 % a month, within the 3 to 20 % of huizhongpower.com; the likely figure between them."""
    low, likely, high = SELF_DISCHARGE_PER_MONTH
    assert low <= 0.04 <= likely <= 0.06 <= high


def test_self_discharge_of_old_batteries_by_specific_gravity():
    """Electrical Engineering, 1940s: 0.0012 to 0.0019 of 0.145 a day at 26.7 °C, above 0.005 at 47 °C, none at -2 °C.

    Old antimonial plates: at the high end of what is allowed for, or beyond. The ratio of 47 to 26.7 °C is 2.6 to 4.2;
    doubling for 10 °C makes it 2^2.03 = 4.1.
    """
    ratio = self_discharge_per_day(0.2, temperature_C=47) / self_discharge_per_day(0.2, temperature_C=26.7)
    assert 0.005 / 0.0019 <= ratio <= 0.005 / 0.0012
    assert self_discharge_per_day(0.2, temperature_C=26.7) == pytest.approx(0.0012 / 0.145, rel=0.15)
