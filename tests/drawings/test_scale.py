"""Where values stand on the scale of a margin bar."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.scale import EDGE, LIMIT_SHARE, scale_for
from backprobe.findings import Finding, Side

Build = Callable[..., Finding]
LOW, HIGH = 100.0, 350.0  # 250 units: the limit at 100 + 90 = 190, or 350 − 90 = 260
FIGURES = st.floats(-1e300, 1e300)


@pytest.mark.parametrize(("side", "x"), [(Side.AT_LEAST, 190.0), (Side.AT_MOST, 260.0)])
@pytest.mark.parametrize("limit", [9.0, 0.3, -40.0, 0.0])
def test_the_limit_stands_in_the_same_place_whatever_it_is(finding: Build, side: Side, x: float, limit: float) -> None:
    """All limits of one side are drawn under one another: 36 % from the left, or from the right."""
    assert LIMIT_SHARE == 0.36
    scale = scale_for(finding(limit + 1, limit=limit, side=side), LOW, x_high=HIGH)
    assert scale.zero_x == pytest.approx(x)
    assert scale.value_at(x) == pytest.approx(limit)


def test_usual_voltages_share_one_scale(finding: Build) -> None:
    """At a limit of 9 V the allowed side shows 4.5 V, half the limit, for every battery voltage up to 13.5 V."""
    scales = [scale_for(finding(volts), LOW, x_high=HIGH) for volts in (8.5, 9.01, 10.0, 12.6, 13.4)]
    assert len({scale.per_px for scale in scales}) == 1
    assert scales[0].value_at(HIGH - EDGE) == pytest.approx(13.5)


def test_a_dead_wire_is_still_on_the_scale(finding: Build) -> None:
    """0 V against 10 V is drawn in its place and not as an arrow."""
    spot = scale_for(finding(0.0, limit=10.0), LOW, x_high=HIGH).spot(0.0, clear=7)
    assert spot.beyond == 0
    assert spot.x < 190


def test_a_value_far_off_is_an_arrow_on_its_side(finding: Build) -> None:
    """4200 mA against 50 mA cannot be drawn to scale: it stands at the right edge and says so."""
    spot = scale_for(finding(4200.0, limit=50.0, side=Side.AT_MOST), LOW, x_high=HIGH).spot(4200.0, clear=7)
    assert (spot.x, spot.beyond) == (HIGH - EDGE, 1)


def test_a_value_just_outside_stands_clear_of_the_line(finding: Build) -> None:
    """8.999 V is less than a pixel from 9 V, and is drawn 7 units outside all the same; 9 V itself inside."""
    scale = scale_for(finding(8.999), LOW, x_high=HIGH)
    assert scale.spot(8.999, clear=7).x == pytest.approx(183.0)
    assert scale.spot(9.0, clear=7).x == pytest.approx(197.0)


@given(value=FIGURES, limit=FIGURES, side=st.sampled_from(Side))
def test_the_side_is_always_right(finding: Build, value: float, limit: float, side: Side) -> None:
    """Whatever the figures, a value inside the limit is drawn on the allowed side and one outside is not."""
    scale = scale_for(finding(value, limit=limit, side=side), LOW, x_high=HIGH)
    spot = scale.spot(value, clear=7)
    drawn_right = spot.x > scale.zero_x
    allowed_is_right = side is Side.AT_LEAST
    assert scale.limit is not None
    assert (drawn_right == allowed_is_right) == scale.limit.allows(value)
    assert abs(spot.x - scale.zero_x) >= 7 - 1e-9
    assert LOW + EDGE <= spot.x <= HIGH - EDGE


@given(low=FIGURES, value=FIGURES, high=FIGURES)
def test_without_a_limit_what_was_measured_is_in_the_middle(
    finding: Build, low: float, value: float, high: float
) -> None:
    """Value and range are all on the scale."""
    low, value, high = sorted((low, value, high))
    scale = scale_for(finding(value, low, high, limit=None), LOW, x_high=HIGH)
    places = [scale.spot(figure, clear=7) for figure in (low, value, high)]
    assert [place.beyond for place in places] == [0, 0, 0]
    assert places[0].x <= places[1].x <= places[2].x
