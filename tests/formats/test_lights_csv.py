"""What was seen of the unit's lights."""

import pytest

from backprobe.errors import UnreadableError
from backprobe.formats.lights_csv import read_lights


def test_lights_are_read_in_any_order_of_columns():
    """A time is not needed."""
    seen, skipped = read_lights(
        ["after_s;light;pattern", "41 s;network;one flash a second", ";sky;dark"], file="lights.csv"
    )
    assert [(each.light, each.pattern, each.after_s) for each in seen] == [
        ("network", "one flash a second", 41.0),
        ("sky", "dark", None),
    ]
    assert skipped == ()


def test_rows_without_light_or_with_an_odd_time_are_skipped():
    """With their place."""
    seen, skipped = read_lights(
        ["light,pattern,after_s", ",dark,", "sky,steady,soon", "sky,steady,-1", "sky,steady,3"], file="lights.csv"
    )
    assert [each.after_s for each in seen] == [3.0]
    assert [each.place.line for each in skipped] == [2, 3, 4]


@pytest.mark.parametrize("lines", [[], ["light,seen"], ["light,pattern", *["sky,dark"] * 201]])
def test_what_is_no_table_of_lights_is_refused(lines):
    """No header, another one, or too many rows."""
    with pytest.raises(UnreadableError):
        read_lights(lines, file="lights.csv")
