"""The time of a row, as recorders write it."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.stamps import NoTimeError, stamps_of

DAY_S = 86_400.0


@pytest.mark.parametrize(
    ("cells", "per_unit", "seconds"),
    [
        (["0", "0.5"], None, [0.0, 0.5]),
        (["-0,5", "0,5"], None, [-0.5, 0.5]),  # before the trigger
        (["1500", "1501"], (1.0, 1000.0), [1.5, 1.501]),
        (["2", "3"], (60.0, 1.0), [120.0, 180.0]),
        (["1700000000.25", "1700000001.5"], None, [0.0, 1.25]),  # seconds from 1970
        (["1700000000250", "1700000001500"], None, [0.0, 1.25]),  # milliseconds from 1970
        (["1700000000250", "1700000001500"], (1.0, 1000.0), [0.0, 1.25]),
        (["2024-05-01 08:30:00", "2024-05-01 08:30:01.25"], None, [0.0, 1.25]),
        (["2024-05-01T23:59:59Z", "2024-05-02T00:00:01Z"], None, [0.0, 2.0]),
        (["2024-05-01T10:00:00+02:00", "2024-05-01T08:00:01Z"], None, [0.0, 1.0]),  # 10:00 + 02:00 is 08:00 Z
        (["2024/05/01 08:30", "2024/05/01 08:31"], None, [0.0, 60.0]),
        (["06.06.2020 14:46:55", "06.06.2020 14:47:05,5"], None, [0.0, 10.5]),
        (["28.02.2024 23:59:59", "01.03.2024 00:00:00"], None, [0.0, DAY_S + 1]),  # 2024 has a 29 February
        (["5/31/2024 11:59:59 PM", "6/1/2024 12:00:01 AM"], None, [0.0, 2.0]),
        (["31/05/24 23:59:59", "01/06/24 00:00:01"], None, [0.0, 2.0]),
        (["23:59:58", "23:59:59.5"], None, [0.0, 1.5]),
        (["12:00:00 AM", "12:00:00 PM"], None, [0.0, DAY_S / 2]),
    ],
)
def test_seconds(cells, per_unit, seconds):
    """Counts, counts from 1970, dates with and without zone, and times of day."""
    stamps = stamps_of(cells, per_unit)
    assert stamps is not None
    assert [stamps.seconds(cell) for cell in cells] == seconds


def test_a_time_of_day_starts_again_at_midnight():
    """After midnight it falls back by a day, which the caller is told of."""
    stamps = stamps_of(["23:59:58", "23:59:59", "00:00:00"], None)
    assert stamps is not None
    assert stamps.midnight
    assert stamps.seconds("00:00:00") == 2 - DAY_S


@pytest.mark.parametrize("cells", [[], [""], ["soon"], ["nan", "inf"], ["31.02.x"], ["12:30", "12:31"], ["1_0", "1_1"]])
def test_no_times(cells):
    """What is no time is None."""
    assert stamps_of(cells, None) is None


@pytest.mark.parametrize("cell", ["", "nan", "inf", "red", "1_0", "2024-05-01 08:00:00", "1e999", "١"])
def test_no_figure_among_figures(cell):
    """A cell that is no time is refused, whatever the others are."""
    stamps = stamps_of(["0", "1"], None)
    assert stamps is not None
    with pytest.raises(NoTimeError):
        stamps.seconds(cell)


@pytest.mark.parametrize("cell", ["", "2024-02-30 08:00:00", "2024-13-01 08:00:00", "2024-05-01 25:00:00", "17"])
def test_no_date_among_dates(cell):
    """Dates that do not exist are no times."""
    stamps = stamps_of(["2024-05-01 08:00:00", "2024-05-01 08:00:01"], None)
    assert stamps is not None
    with pytest.raises(NoTimeError):
        stamps.seconds(cell)


def test_one_bad_cell_does_not_hide_the_clock():
    """A torn first cell among good ones: the clock begins with the first good one."""
    stamps = stamps_of(["2024-02-30 08:00:00", "2024-05-01 08:00:00", "2024-05-01 08:00:01"], None)
    assert stamps is not None
    assert stamps.seconds("2024-05-01 08:00:01") == 1.0


@given(
    st.datetimes(datetime(1990, 1, 1), datetime(2060, 1, 1)),
    st.timedeltas(timedelta(0), timedelta(days=400)),
    st.sampled_from(["%Y-%m-%dT%H:%M:%S.%f", "%d.%m.%Y %H:%M:%S.%f", "%Y/%m/%d %H:%M:%S.%f"]),
)
def test_differences_are_those_of_the_calendar(start, gap, form):
    """Python's own calendar gives the same difference to the microsecond."""
    stamps = stamps_of([start.strftime(form), (start + gap).strftime(form)], None)
    assert stamps is not None
    assert stamps.seconds((start + gap).strftime(form)) == gap / timedelta(microseconds=1) / 1e6


@given(st.lists(st.text(max_size=30), max_size=5))
def test_any_text(cells):
    """No text raises anything but NoTimeError, and that only from the cell's own reading."""
    stamps = stamps_of(cells, None)
    for cell in cells if stamps else []:
        try:
            assert stamps is not None
            assert abs(stamps.seconds(cell)) < 1e300
        except NoTimeError:
            continue
