"""Axes and labels that keep apart."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.axes import Axis, Label, axis_for, flag_rows, label_rows, spread

PLACES = st.lists(st.tuples(st.floats(0, 100), st.floats(1, 15)), max_size=6)


def test_a_value_has_its_pixel() -> None:
    """Half of 0..10 s over 100..300 is 200; upright axes run the other way."""
    assert Axis(0.0, 10.0, 100.0, 300.0).at(5.0) == 200.0
    assert Axis(0.0, 10.0, 300.0, 100.0).at(1.0) == 280.0


def test_ticks_keep_their_distance() -> None:
    """0..10 over 100 pixels with at least 15 between ticks: 1.5 units, so every 2."""
    assert Axis(0.0, 10.0, 0.0, 100.0).ticks(15) == [0.0, 2.0, 4.0, 6.0, 8.0, 10.0]


def test_an_axis_takes_everything_in() -> None:
    """With a tenth to spare 8..12 becomes 7.6..12.4; a single value has room about it; nothing gives 0..1."""
    assert axis_for([8.0, 12.0], low_px=0, high_px=1, pad=0.1) == Axis(7.6, 12.4, 0, 1)
    lone = axis_for([12.0], low_px=0, high_px=1, pad=0.1)
    assert lone.low < 12.0 < lone.high
    nothing = axis_for([], low_px=0, high_px=1, pad=0.0)
    assert (nothing.low, nothing.high) == (0.0, 1.0)


@given(st.lists(st.floats(-1e300, 1e300), min_size=1, max_size=20))
def test_any_values_have_a_place_between_the_ends(values: list[float]) -> None:
    """However large or close the values are, they all lie on the axis."""
    axis = axis_for(values, low_px=0, high_px=500, pad=0.1)
    assert all(-1e-6 <= axis.at(value) <= 500 + 1e-6 for value in values)
    assert len(axis.ticks(50)) <= 11


@given(PLACES)
def test_spread_labels_never_overlap(places: list[tuple[float, float]]) -> None:
    """Up to six labels of at most 15 fit into 0..100 without overlapping, in the order of where they belong."""
    labels = [Label(middle, extent) for middle, extent in places]
    middles = spread(labels, low=0.0, high=100.0)
    boxes = sorted((m - label.extent / 2, m + label.extent / 2) for m, label in zip(middles, labels, strict=True))
    assert all(first[1] <= second[0] + 1e-9 for first, second in itertools.pairwise(boxes))
    assert all(low >= -1e-9 and high <= 100 + 1e-9 for low, high in boxes)


@given(PLACES)
def test_rows_of_labels_never_overlap(places: list[tuple[float, float]]) -> None:
    """Labels in one row keep their gap; every label stays between the ends."""
    labels = [Label(middle, extent) for middle, extent in places]
    placed = label_rows(labels, low=0.0, high=100.0, gap=2.0)
    for index, (middle, row) in enumerate(placed):
        half = labels[index].extent / 2
        assert half - 1e-9 <= middle <= 100 - half + 1e-9
        for other in range(index):
            if placed[other][1] == row:
                apart = abs(placed[other][0] - middle) - half - labels[other].extent / 2
                assert apart >= 2 - 1e-9


@given(PLACES)
def test_no_flag_runs_into_a_lead(places: list[tuple[float, float]]) -> None:
    """A lead that goes down past a row never crosses a flag in that row."""
    flags = sorted(places)
    rows = flag_rows(flags)
    for index, (x, length) in enumerate(flags):
        for other, (lead, _) in enumerate(flags):
            if other > index and lead <= x + length:
                assert rows[index] > rows[other]


def test_a_label_too_many_runs_past_the_end() -> None:
    """Labels that cannot all fit stay in order and start at the beginning."""
    assert spread([Label(5, 10), Label(5, 10)], low=0, high=10) == pytest.approx([5, 15])
