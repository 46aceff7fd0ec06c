"""The job sheet."""

import pytest

from backprobe.evidence.job_sheet import JobSheet, NamedWire, Vehicle
from backprobe.evidence.reading import WireFacts


def job(**stated):
    """A job sheet with what is stated."""
    return JobSheet(vehicle=Vehicle(system_V=12), unit_sheet="unit.toml", **stated)


@pytest.mark.parametrize(
    ("date", "year"),
    [("2026-03-31", 2026), ("2026-03-31T07:45:00", 2026), ("31.03.2026", None), ("20260331", None), (None, None)],
)
def test_the_year_is_read_from_dates_that_begin_with_it(date, year):
    """Other dates stay text: a year is not guessed."""
    assert job(date=date).year == year


def test_named_wires_are_facts_like_those_of_a_readings_table():
    """Circuits and marks by wire."""
    wires = (NamedWire(name="Red", circuits=("fuse F12",), marks=("twisted",)), NamedWire(name="Blue"))
    assert job(wires=wires).facts == {
        "Red": WireFacts(circuits=("fuse F12",), marks=("twisted",)),
        "Blue": WireFacts(),
    }
