"""The raw rows of a window, read again."""

from __future__ import annotations

from bisect import bisect_left, bisect_right

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.evidence.recording import Recording
from backprobe.formats import recording_window
from backprobe.formats.recording_csv import read_recording

ROWS = 12_000
TIMES = [i * 0.25 for i in range(ROWS)]
RED = [(i * 37 % 101) / 8 for i in range(ROWS)]
LINES = ["time_s,red,blue", *(f"{t},{v},1.5" for t, v in zip(TIMES, RED, strict=True))]


@pytest.fixture(scope="module")
def recording() -> Recording:
    return read_recording(lambda: LINES, file="f", thresholds_V=())


@settings(max_examples=60, deadline=None)
@given(bounds=st.tuples(st.floats(-10, 3010), st.floats(-10, 3010)))
def test_any_window(recording, bounds):
    """Exactly the rows between two times, both included."""
    from_s, to_s = sorted(bounds)
    window = recording.fine(from_s, to_s)
    part = slice(bisect_left(TIMES, from_s), bisect_right(TIMES, to_s))
    assert list(window.time_s) == TIMES[part]
    assert list(window.values["red"]) == RED[part]
    assert len(window.values["blue"]) == len(window.time_s)


def test_ends_are_included(recording):
    """From a row's time to a row's time: both rows are there."""
    assert list(recording.fine(1024.0, 1024.5).time_s) == [1024.0, 1024.25, 1024.5]  # rows 4096 to 4098, a new block


def test_nothing_between(recording):
    """Between two rows, before the first and after the last there is nothing."""
    for bounds in ((0.1, 0.2), (-5.0, -1.0), (4000.0, 5000.0), (5.0, 1.0)):
        window = recording.fine(*bounds)
        assert (len(window.time_s), len(window.values["red"])) == (0, 0)


def test_equal_times_over_two_blocks():
    """Rows of one time that stand in two blocks are all found."""
    times = [0.25 * (i - i % 2) for i in range(9000)]
    times[4095] = times[4096]
    lines = ["time_s,red", *(f"{t},12.5" for t in times)]
    window = read_recording(lambda: lines, file="f", thresholds_V=()).fine(0, 0)
    assert len(window.time_s) > 0


def test_times_by_row_number():
    """Where the clock stands, a window is counted in rows: of 4 a second, 1000 s to 1001 s are rows 4000 to 4004."""
    lines = ["time_s,red", *(f"{i // 4},{v}" for i, v in enumerate(RED))]
    recording = read_recording(lambda: lines, file="f", thresholds_V=())
    assert not recording.time_known
    window = recording.fine(1000.0, 1001.0)
    assert list(window.time_s) == [1000.0, 1000.25, 1000.5, 1000.75, 1001.0]
    assert list(window.values["red"]) == RED[4000:4005]


def test_a_long_window_is_thinned(recording, monkeypatch):
    """Above the limit groups of rows become two, lowest then highest: no extreme is lost."""
    monkeypatch.setattr(recording_window, "MOST_ROWS", 1000)
    window = recording.fine(TIMES[0], TIMES[-1])
    assert len(window.time_s) <= 1010  # 12,000 rows in groups of 24, the last of each of three blocks shorter
    assert list(window.time_s) == sorted(window.time_s)
    red = list(window.values["red"])
    assert len(red) == len(window.time_s)
    assert (min(red), max(red)) == (min(RED), max(RED))
    assert (red[0], red[1]) == (min(RED[:24]), max(RED[:24]))
    assert (window.time_s[0], window.time_s[1]) == (TIMES[0], TIMES[23])


def test_a_window_within_the_limit_is_whole(recording, monkeypatch):
    """A few rows out of a long recording come as they are."""
    monkeypatch.setattr(recording_window, "MOST_ROWS", 1000)
    assert list(recording.fine(100.0, 110.0).values["red"]) == RED[400:441]


def test_the_same_rows_as_in_the_pass():
    """A torn last line, left out in the pass, does not come back in a window."""
    lines = ["time_s,red", *(f"{i}.0,12.60" for i in range(4096)), "4096.0,1"]
    recording = read_recording(lambda: lines, file="f", thresholds_V=())
    assert recording.rows == 4096
    assert len(recording.fine(4090.0, 5000.0).time_s) == 6
