"""The curve of a parked vehicle."""

from dataclasses import replace
from xml.etree import ElementTree

import pytest

from backprobe.drawings.parked_curve import ParkedCurve, described_curve, parked_curve

CURVE = ParkedCurve(
    title="Charge left while parked",
    days=(0.0, 10.0, 20.0, 30.0),
    worst=(0.6, 0.4, 0.2, 0.0),
    likely=(0.8, 0.7, 0.6, 0.5),
    best=(0.9, 0.85, 0.8, 0.75),
    needed=(0.3, 0.6, 0.8),
    until=(0.0, 20.0, 90.0),
    coldest_C=-5.0,
    wanted_days=15.0,
)


def texts(svg):
    """All the words in a picture."""
    return [element.text for element in ElementTree.fromstring(svg).iter() if element.text]


@pytest.mark.parametrize("width", [100.0, 320.0, 760.0])
def test_it_is_a_picture_with_words_for_screen_readers(width):
    """Title and description; the days that are on it; the wanted line."""
    said = texts(parked_curve(CURVE, width=width))
    assert said[:2] == [CURVE.title, described_curve(CURVE)]
    assert {"worst 0.0 d", "likely 20.0 d", "wanted 15 d"} <= set(said)
    assert "best 90.0 d" not in said  # beyond the last day


def test_the_description_says_every_figure():
    """For those who cannot see it."""
    assert described_curve(CURVE) == (
        "The charge falls from 80% of the rated; a start at -5 °C needs 60%, 30% to 80%. "
        "It is reached after 20.0 days, at the earliest 0.0, at the latest 90.0. Wanted: 15 days."
    )


def test_lines_are_told_apart_without_colour():
    """The need is hatched and dashed, the likely is the thickest line, the wanted days are firm."""
    svg = parked_curve(CURVE)
    assert 'stroke-dasharray="7 3"' in svg
    assert svg.count('stroke-width="2.4"') == 1
    assert svg.count('stroke-width="2.2"') == 1


def test_without_wanted_days_and_with_no_time_at_all():
    """Still a picture."""
    still = replace(CURVE, days=(0.0, 0.0, 0.0, 0.0), wanted_days=None, until=(0.0, 0.0, 0.0), needed=(1.2, 1.5, 2.0))
    assert not any("wanted" in text for text in texts(parked_curve(still)))
