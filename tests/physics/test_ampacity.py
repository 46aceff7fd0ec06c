"""What a wire may carry for good at another ambient temperature."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.ampacity import ampacity_at_A


def test_a_quarter_of_the_room_is_half_the_current():
    """105 °C insulation at 86.25 °C: 18.75 K left of 75 K, √0.25 = 0.5."""
    assert ampacity_at_A(20.0, insulation_C=105, ambient_C=86.25) == pytest.approx(10.0)


def test_at_the_tables_own_ambient_nothing_changes():
    """At 30 °C it is the table's figure."""
    assert ampacity_at_A(20.0, insulation_C=90, ambient_C=30.0) == 20.0


@pytest.mark.parametrize("ambient_C", [105.0, 140.0])
def test_as_hot_as_the_insulation_carries_nothing(ambient_C):
    """At 105 °C and above a 105 °C insulation has no room left."""
    assert ampacity_at_A(20.0, insulation_C=105, ambient_C=ambient_C) == 0.0


@given(st.floats(-40, 150), st.floats(0, 60))
def test_hotter_surroundings_never_allow_more(ambient_C, more_K):
    """More ambient, not more current."""
    cool, hot = (ampacity_at_A(20.0, insulation_C=105, ambient_C=t) for t in (ambient_C, ambient_C + more_K))
    assert hot <= cool
