"""How full a battery is, from one reading."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.limits.lookup import meter
from backprobe.stages.parked.battery_calc import BatteryCase, battery_answer


def case(rest_V=12.6, hours=24.0, **more):
    """A reading off a basic meter, to two decimals."""
    figures = {"count_V": 0.01, "meter": meter("basic"), **more}
    return BatteryCase(rest_V=rest_V, hours_since_charge=hours, **figures)


def test_the_meters_bounds_are_part_of_it():
    """12.60 V on ±(0.5 % + 2): ±0.083 V."""
    each = case(12.60).each_V
    assert (each.low, each.likely, each.high) == pytest.approx((12.517, 12.60, 12.683))


def test_two_in_series_are_halved():
    """25.20 V ± 0.146 V over two: 12.60 V ± 0.073 V, and a note that the weaker one counts."""
    found = case(25.20, system_V=24)
    assert (found.each_V.likely, found.each_V.high - found.each_V.likely) == pytest.approx((12.60, 0.073))
    assert any("weaker one counts" in note for note in battery_answer(found).notes)


def test_a_reading_too_soon_says_to_wait():
    """An hour after the charge it is not rested, and up to 0.36 V may be surface."""
    answer = battery_answer(case(hours=1.0))
    assert not answer.rested
    assert answer.as_json()["surface_charge_V"] == pytest.approx(0.358, abs=0.001)
    assert any("wait 8 h, better 24 h" in note for note in answer.notes)
    assert battery_answer(case()).rested


def test_below_the_tables_empty_it_is_said():
    """11.5 V is empty and more: charge and test."""
    answer = battery_answer(case(11.5, kind="flooded"))
    assert answer.charge.likely == 0.0
    assert any("charge and test" in note for note in answer.notes)


def test_a_coarse_reading_and_a_hot_battery_are_questioned():
    """12 V to the volt; 45 °C, which may be °F. Both are judged all the same."""
    assert battery_answer(case(12.0, count_V=1.0)).questions == (
        "the reading is to 1 V only: can two decimals be read?",
    )
    assert battery_answer(case(temperature_C=45.0)).questions == ("45 °C is hot for a battery: are these °F?",)


@pytest.mark.parametrize(
    ("figures", "said"),
    [
        ({"rest_V": 9.0}, "9.00 V is no battery at rest: a cell is gone"),
        ({"rest_V": 18.0, "system_V": 24}, "18 V over two batteries, each: 9.00 V is no battery at rest"),
        ({"rest_V": 25.2}, "25.2 V at rest in a 12 V system: is it a 24 V system"),
        ({"rest_V": 12.6, "system_V": 24}, "is it a 12 V system, or was one battery of the two measured"),
        ({"rest_V": 14.4}, "a charger or the alternator is on"),
        ({"temperature_C": 77.0}, "no battery gets to 77 °C: are these °F. 77 °F are 25 °C"),
        ({"temperature_C": -80.0}, "a battery's temperature of -80 °C"),
        ({"hours": -1.0}, "a rest of -1 h"),
        ({"hours": float("nan")}, "a rest of nan h"),
        ({"rest_V": float("nan")}, "a rest voltage of nan V"),
        ({"rest_V": -12.6}, "a rest voltage of -12.6 V"),
        ({"system_V": 48}, "a system of 48 V is not known"),
    ],
)
def test_what_cannot_be_a_battery_at_rest_is_refused(figures, said):
    """In words that say what may be the matter."""
    with pytest.raises(OptionError, match=said):
        battery_answer(case(**figures))


def test_the_answer_is_plain_json():
    """No infinity and no NaN."""
    answer = battery_answer(case(temperature_C=0.0, hours=0.0)).as_json()
    assert json.loads(json.dumps(answer, allow_nan=False)) == answer


@given(st.floats(11.0, 13.0), st.floats(0, 100))
def test_a_better_meter_never_leaves_more_doubt(rest_V, hours):
    """The precise class lies within the basic one's range."""
    basic, precise = (battery_answer(case(rest_V, hours, meter=meter(name))).charge for name in ("basic", "precise"))
    assert basic.low <= precise.low <= precise.high <= basic.high


@given(st.floats(11.0, 13.0), st.floats(0, 100))
def test_volts_of_two_systems_do_not_mix(rest_V, hours):
    """Twice the volts over two batteries are as full, to the meter's counts."""
    one, two = battery_answer(case(rest_V, hours)), battery_answer(case(2 * rest_V, hours, system_V=24))
    assert one.charge.likely == pytest.approx(two.charge.likely)
