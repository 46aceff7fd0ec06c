"""The tables on battery and rest."""

import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.parked_sheet import BatterySheet, ParkedSheet, Typed
from backprobe.formats.job_parked import KEYS, read_parked
from backprobe.formats.toml_text import parse_toml


def read(text):
    """What a sheet of these tables alone says."""
    return read_parked(parse_toml(text, file="job.toml"), KEYS)


def test_a_sheet_without_the_tables_says_nothing():
    """None, so that no finding comes of it."""
    assert read("[vehicle]\n") is None


def test_text_keeps_the_last_zero_and_a_number_does_not():
    """The text "12.60" was read to 0.01 V; 12.6 to 0.1 V. The unit may stand in the text."""
    assert read('[battery]\nrest_V = "12.60"').battery.rest_V == (Typed(12.6, 0.01),)
    assert read("[battery]\nrest_V = 12.6").battery.rest_V == (Typed(12.6, 0.1),)
    assert read('[battery]\nrest_V = ["12,71 V", 12.49]').battery.rest_V == (Typed(12.71, 0.01), Typed(12.49, 0.01))


def test_one_table_is_enough():
    """What the other would say is lacking, not made up."""
    assert read("[parked]\ncoldest_C = -5") == ParkedSheet(coldest_C=-5.0, battery=BatterySheet())


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("[battery]\ncapacity_Ah = 0", "a number from 10 to 1000"),
        ("[battery]\nrest_V = []", "a figure from 0 to 60"),
        ('[battery]\nrest_V = "12.6 A"', "a figure from 0 to 60"),
        ("[battery]\nrest_V = [12.6, 12.6, 12.6]", "one for each of two batteries"),
        ("[battery]\ntemperature_C = 68", "are these °F? 68 °F are 20 °C"),
        ("[battery]\ncapacity = 110", "did you mean capacity_Ah"),
        ("[parked]\nvehicle_drain_mA = -30", "a figure from 0 to 20000"),
        ('[parked]\nvehicle_drain_mA = ["30", "31"]', "one figure in mA"),
        ('[parked]\nvehicle_drain_mA = "0.03 A"', "a figure from 0 to 20000"),
        ("[parked]\ncoldest_C = -300", "a number from -50 to 60"),
        ("[parked]\nwanted_days = 0", "a number from 0.1 to 3650"),
        ("[parked]\ncoldest_C = true", "a number from -50 to 60"),
    ],
)
def test_what_cannot_be_meant_is_refused(text, expected):
    """With what was expected, and the line."""
    with pytest.raises(UnreadableError) as caught:
        read(text)
    assert expected in caught.value.expected
    assert caught.value.place.line == 2
