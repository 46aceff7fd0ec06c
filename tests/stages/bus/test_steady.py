"""Frames whose stamp alone leaps ahead."""

from __future__ import annotations

from tests.samples.bus_frames import sent

from backprobe.formats.bus_faults import BusFaults
from backprobe.stages.bus.steady import steady


def kept(*times_s: float) -> tuple[list[float], int]:
    """The times of the frames that are kept, and how many were counted."""
    faults = BusFaults("a.log")
    frames = [sent(time_s, 61444, bytes(8)) for time_s in times_s]
    return [frame.time_s for frame in steady(frames, faults=faults)], faults.counts.total()


def test_a_single_leap_is_left_out() -> None:
    """One frame an hour ahead of its neighbours."""
    assert kept(1.0, 2.0, 3600.0, 3.0, 4.0) == ([1.0, 2.0, 3.0, 4.0], 1)


def test_a_pause_is_no_leap() -> None:
    """The bus slept for ten minutes: what comes then goes on from there."""
    assert kept(1.0, 2.0, 602.0, 603.0) == ([1.0, 2.0, 602.0, 603.0], 0)


def test_a_clock_that_is_set_right_is_no_leap() -> None:
    """It jumps ahead for good, or falls far back: neither is the frame's fault."""
    assert kept(1.0, 2.0, 1.7e9, 1.7e9 + 1)[1] == 0
    assert kept(5000.0, 5001.0, 9000.0, 10.0, 11.0)[1] == 0


def test_the_last_frame_is_given_even_where_it_stands_ahead() -> None:
    """Nothing behind it says that it is wrong."""
    assert kept(1.0, 2.0, 3600.0) == ([1.0, 2.0, 3600.0], 0)
    assert kept() == ([], 0)
