"""What is asked back."""

import pytest

from backprobe.physics.span import exactly
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.fuse_opening import fuse_of
from backprobe.stages.join.questions import (
    HOT_AROUND_C,
    about_fuse,
    about_heat,
    about_length,
    about_wire,
    equivalent_name,
)
from backprobe.stages.join.wire_calc import wire_answer


@pytest.mark.parametrize(
    ("size", "asked"),
    [
        ({"awg": 2}, "2 AWG has 33.6 mm² and is a battery cable: was --mm2 2 meant?"),
        ({"awg": -1}, "2/0 AWG has 67.4 mm² and is a battery cable: is it meant?"),
        ({"mm2": 18}, "18 mm² is no usual size: was --awg 18 meant?"),
        ({"mm2": 16}, "16 mm² is a battery cable: was --awg 16 meant?"),
        ({"mm2": 0.6}, "0.6 mm² is no usual size: is it meant?"),
    ],
)
def test_a_size_that_can_be_meant_otherwise(size, asked):
    """Gauge and square millimetres are mixed up where both are plain numbers."""
    assert list(about_wire(conductor_of(**size))) == [asked]


@pytest.mark.parametrize("size", [{"awg": 18}, {"awg": 24}, {"mm2": 0.35}, {"mm2": 0.75}, {"mm2": 2}, {"mm2": 6}])
def test_usual_leads_are_not_questioned(size):
    """Sizes of leads pass without a word."""
    assert list(about_wire(conductor_of(**size))) == []


def test_millimetres_for_metres():
    """5000 is no length in metres; 12 is."""
    assert "are these metres?" in next(about_length(500.0))
    assert list(about_length(12.0)) == []


def asked(rating_A, loop_ohm, **size):
    """What is asked of a fuse on a wire that carries 10 A."""
    wire = conductor_of(**size)
    return list(about_fuse(fuse_of(rating_A), exactly(10.0), loop_ohm=loop_ohm, conductor=wire))


def test_a_fuse_far_above_its_wire():
    """100 A on 0.5 mm² is ten times what it carries."""
    assert asked(100, 0.1, mm2=0.5) == ["a 100 A fuse on 0.5 mm², which carries 10 A: is that meant?"]


def test_a_rating_that_nobody_makes():
    """12 A stands on no blade fuse."""
    assert asked(12, 0.1, mm2=0.75) == ["no blade fuse of type C is rated 12 A: what stands on it?"]


def test_loops_in_the_wrong_unit():
    """0.003 Ω is less than a battery; 40 Ω is a lamp, or 40 mΩ."""
    assert "is it ohms?" in asked(5, 0.003, mm2=0.75)[0]
    assert "are these milliohms?" in asked(5, 40.0, mm2=0.75)[0]


def test_names_of_sizes():
    """In both directions, with the true area beside the gauge; none where there is no name."""
    assert equivalent_name(conductor_of(mm2=0.75)) == "wiring diagrams write 0.75 mm² for 18 AWG"
    assert equivalent_name(conductor_of(awg=16)) == "wiring diagrams write 1 mm² for 16 AWG, which has 1.31 mm²"
    assert equivalent_name(conductor_of(awg=19)) is None
    assert equivalent_name(conductor_of(mm2=2)) is None


@pytest.mark.parametrize(("temperature_C", "asked"), [(105.0, False), (106.0, True), (140.0, True)])
def test_fahrenheit_is_asked_about(temperature_C, asked):
    """140 °F are 60 °C; a wire at 140 °C is rare."""
    answer = wire_answer(conductor_of(awg=18), length_m=5.0, temperature_C=temperature_C)
    assert any("are these °F?" in question for question in answer.questions) is asked


def test_surroundings_are_asked_about_sooner():
    """Nobody works at 95 °C."""
    assert list(about_heat(95.0, hottest_C=HOT_AROUND_C))
    assert not list(about_heat(85.0, hottest_C=HOT_AROUND_C))
