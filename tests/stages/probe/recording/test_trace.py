"""A recording is fetched whole where it is short, in few windows where it is long."""

import dataclasses
import math
from array import array

import pytest
from tests.samples.waveforms import recording_of

from backprobe.stages.probe.recording import trace
from backprobe.stages.probe.recording.trace import Line, Sight, buckets, merged, widest_step_s

NAN = math.nan


def line(*values, step_s=1.0):
    """A line of values at a steady step."""
    return Line(array("d", [i * step_s for i in range(len(values))]), array("d", values))


def counted(recording):
    """The recording with a list that grows by each window that is read."""
    calls = []

    def fine(from_s, to_s):
        calls.append((from_s, to_s))
        return recording.fine(from_s, to_s)

    return dataclasses.replace(recording, fine=fine), calls


def long_recording(rows=100_000, **columns):
    """A recording too long to be held whole: 1000 rows/s."""
    values = columns or {"battery": [12.0] * rows}
    return recording_of([row / 1000 for row in range(rows)], values)


def test_a_part_of_a_line_holds_both_ends():
    """Seconds 1 to 3 of five samples are three samples."""
    assert list(line(1, 2, 3, 4, 5).between(1, 3).values) == [2, 3, 4]


def test_thinning_takes_means():
    """Two samples of 1 s fit into 2 s: means of (1, 3), (5, 7) and the last one alone."""
    thin = line(1, 3, 5, 7, 9).thinned(2.0)
    assert list(thin.time_s) == [0, 2, 4]
    assert list(thin.values) == [2, 6, 9]


def test_a_line_coarser_than_asked_stays():
    """Nothing is thinned where the samples are further apart already."""
    plain = line(1, 3, 5)
    assert plain.thinned(0.5) is plain


def test_lost_contact_is_taken_out():
    """Samples below 1.5 V go, with their times."""
    kept = line(12.5, 0.1, 12.4).above(1.5)
    assert (list(kept.time_s), list(kept.values)) == ([0, 2], [12.5, 12.4])


def test_steps():
    """The median step of 0, 1, 2, 5 s is 1 s, the widest 3 s."""
    uneven = Line(array("d", [0, 1, 2, 5]), array("d", [1, 1, 1, 1]))
    assert (uneven.step_s, widest_step_s(uneven)) == (1, 3)
    assert (line().step_s, widest_step_s(line())) == (0, 0)
    assert line().median() is None


def test_stretches_are_joined_up_to_a_length():
    """Three stretches 1 s apart become one, unless that were longer than 4 s."""
    spans = [(4, 5), (0, 1), (2, 3)]
    assert merged(spans, gap_s=1) == [(0, 5)]
    assert merged(spans, gap_s=1, most_s=4) == [(0, 3), (4, 5)]


def test_a_short_recording_is_read_once():
    """Whatever is asked of 1000 rows, they were read when the look began."""
    recording, calls = counted(recording_of([i / 10 for i in range(1000)], {"battery": [12.0] * 1000}))
    sight = Sight(recording)
    sight.fetch([(1, 2), (50, 60)])
    assert len(sight.line("battery", from_s=3, to_s=4)) == 11
    assert sight.level("battery", from_s=0, to_s=90) == 12.0
    assert len(calls) == 1


def test_windows_of_a_long_recording_are_kept():
    """A part of a window that was fetched is not read again; near stretches are read in one go."""
    recording, calls = counted(long_recording())
    sight = Sight(recording)
    assert calls == []
    sight.fetch([(10, 11), (20, 21), (95, 96)])  # 9 s are 9,000 rows: near; 74 s are not
    assert calls == [(10, 21), (95, 96)]
    assert len(sight.line("battery", from_s=12, to_s=12.5)) == 501
    sight.fetch([(13, 14)])
    assert len(calls) == 2


def test_a_level_of_a_long_recording_comes_off_the_envelope():
    """Without a window the middles of the buckets are used; no row is read."""
    recording, calls = counted(long_recording(battery=[12.0] * 50_000 + [14.0] * 50_000))
    sight = Sight(recording)
    assert sight.level("battery", from_s=60, to_s=90) == 14.0
    assert set(sight.levels("battery", from_s=60, to_s=90)) == {14.0}
    assert calls == []


def test_a_very_long_window_is_cut(monkeypatch):
    """No more than `WINDOW_ROWS` rows are read at once."""
    monkeypatch.setattr(trace, "WINDOW_ROWS", 5000)
    sight = Sight(long_recording())
    assert len(sight.line("battery", from_s=0, to_s=90)) == 5001


def test_empty_cells_are_left_out():
    """A channel with a value in every other row is a line of half as many samples."""
    values = [12.0 if row % 2 else NAN for row in range(100)]
    recording = recording_of([row / 10 for row in range(100)], {"battery": values}, bucket_rows=1)
    assert len(Sight(recording).line("battery", from_s=0, to_s=10)) == 50
    assert len(buckets(recording, recording.channels[0])) == 50


@pytest.mark.parametrize(("from_s", "to_s"), [(-5, -1), (200, 300)])
def test_outside_there_is_nothing(from_s, to_s):
    """Before the beginning and after the end a line is empty."""
    assert len(Sight(long_recording()).line("battery", from_s=from_s, to_s=to_s)) == 0


def test_steps_too_small_to_divide_by_are_borne():
    """A clock that goes on by less than any recorder's: the whole line becomes one mean."""
    thin = Line(array("d", [0.0, 5e-324, 1e-323]), array("d", [1.0, 2.0, 3.0])).thinned(2.0)
    assert list(thin.values) == [2.0]
