"""The resistance of a length of wire."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.wire_calc import resistance_ohm, wire_answer


def test_once_and_there_and_back():
    """5 m of 0.75 mm² at 20 °C: 0.026 × 5 = 0.13 Ω once, 0.26 Ω there and back."""
    answer = wire_answer(conductor_of(mm2=0.75), length_m=5.0)
    assert answer.single_ohm.likely == pytest.approx(0.13)
    assert answer.as_json()["there_and_back_ohm"] == pytest.approx(0.26)


def test_hot_wire():
    """At 60 °C 294.5 / 254.5 = 1.157 times as much."""
    hot = wire_answer(conductor_of(mm2=0.75), length_m=5.0, temperature_C=60.0)
    assert hot.single_ohm.likely == pytest.approx(0.13 * 294.5 / 254.5)


def test_the_drop_is_there_and_back():
    """1.2 A over 0.26 Ω: 0.312 V."""
    answer = wire_answer(conductor_of(mm2=0.75), length_m=5.0, current_A=1.2)
    assert answer.as_json()["drop_there_and_back_V"]["likely"] == pytest.approx(0.312)


def test_what_is_from_memory_is_shown_beside():
    """ISO 6722-1 of 0.75 mm² is remembered as 24.7 mΩ/m: 0.1235 Ω for 5 m, in a note that says so."""
    notes = wire_answer(conductor_of(mm2=0.75), length_m=5.0).notes
    assert any("from memory, unverified): 0.1235 Ω" in note and "not used" in note for note in notes)


def test_the_answer_is_plain_json():
    """No infinity, no NaN, nothing that JSON lacks."""
    answer = wire_answer(conductor_of(awg=18), length_m=5.0, current_A=2.0).as_json()
    assert json.loads(json.dumps(answer, allow_nan=False)) == answer


@pytest.mark.parametrize(
    ("figures", "said"),
    [
        ({"length_m": -1.0}, "a length of -1 m"),
        ({"length_m": 0.0}, "a length of 0 m"),
        ({"length_m": float("nan")}, "a length of nan m"),
        ({"length_m": 5.0, "temperature_C": 900.0}, "a wire's temperature of 900 °C"),
        ({"length_m": 5.0, "current_A": -1.0}, "a current of -1 A"),
    ],
)
def test_what_cannot_be_meant_is_refused(figures, said):
    """With the figure and what is expected."""
    with pytest.raises(OptionError, match=said):
        wire_answer(conductor_of(awg=18), **figures)


@given(st.integers(-3, 39), st.floats(0.01, 50), st.floats(0, 50), st.floats(-60, 150), st.floats(0, 50))
def test_longer_thinner_hotter_never_resists_less(gauge, length_m, more_m, temperature_C, more_K):
    """Each of the three, at each of the three figures."""
    wire = conductor_of(awg=gauge)
    here = resistance_ohm(wire, length_m, temperature_C=temperature_C)
    others = (
        resistance_ohm(wire, length_m + more_m, temperature_C=temperature_C),
        resistance_ohm(conductor_of(awg=gauge + 1), length_m, temperature_C=temperature_C),
        resistance_ohm(wire, length_m, temperature_C=temperature_C + more_K),
    )
    for other in others:
        assert (other.low, other.likely, other.high) >= (here.low, here.likely, here.high)
        assert other.high >= here.high


@given(st.floats(0.01, 100))
def test_units_do_not_mix(length_m):
    """A metre and its thousand millimetres differ by 1000; mm² taken as a gauge is another wire altogether."""
    wire = conductor_of(mm2=0.75)
    once = resistance_ohm(wire, length_m, temperature_C=20.0).likely
    assert resistance_ohm(wire, length_m / 1000, temperature_C=20.0).likely == pytest.approx(once / 1000)
    assert resistance_ohm(conductor_of(awg=18), length_m, temperature_C=20.0).likely < once
