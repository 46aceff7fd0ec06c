"""A bus log's key cycle laid over a recording."""

from __future__ import annotations

import pytest
from tests.samples.bus_heard import cycle_heard

from backprobe.evidence.keys import Key
from backprobe.evidence.recording import Recording
from backprobe.formats.recording_csv import read_recording
from backprobe.stages.bus.label import ahead_of, labelled
from backprobe.stages.probe.recording.cranks import Crank


def recording(*, key: bool = False, begins_s: float = 0.0, length_s: float = 40.0) -> Recording:
    """A wire that is live from on to off, sampled ten times a second; its clock begins at `begins_s`."""
    rows = [f"{begins_s + i / 10:.1f},12.4" + (",on" if key else "") for i in range(round(length_s * 10))]
    lines = ["time_s,red" + (",key" if key else ""), *rows]
    return read_recording(lambda: lines, file="r.csv", thresholds_V=())


def test_the_keys_stand_where_the_bus_saw_them() -> None:
    """The recording began 2 s before the log: on at 7, crank at 11, off at 31.9 s of its own clock."""
    found = labelled(recording(), cycle_heard(), ahead_s=2.0)
    assert [(round(mark.time_s, 2), mark.key) for mark in found.keys] == [
        (7.0, Key.ON),
        (11.0, Key.CRANK),
        (11.88, Key.RUNNING),
        (31.9, Key.OFF),
    ]


def test_a_recording_that_begins_later_knows_how_the_key_stood() -> None:
    """It began 15 s after the log: the engine ran already."""
    found = labelled(recording(length_s=20.0), cycle_heard(), ahead_s=-15.0)
    assert [(round(mark.time_s, 2), mark.key) for mark in found.keys] == [(0.0, Key.RUNNING), (14.9, Key.OFF)]


def test_a_key_column_is_left_as_it_is() -> None:
    """What the hand wrote down goes before what a bus shows."""
    own = recording(key=True)
    assert labelled(own, cycle_heard(), ahead_s=0.0) is own


def test_clocks_that_do_not_overlap_label_nothing() -> None:
    """The recording was made an hour later."""
    assert labelled(recording(), cycle_heard(), ahead_s=-3600.0).keys == ()
    assert labelled(recording(), cycle_heard(), ahead_s=3600.0).keys == ()


def crank(start_s: float, end_s: float, *, started: bool = True, sure: float = 0.95) -> Crank:
    """A crank that a recording shows."""
    return Crank(start_s=start_s, end_s=end_s, started=started, sure=sure, why=())


def test_the_two_clocks_are_held_together_by_the_crank() -> None:
    """Both show one start of about the same length: 21.0 s here is 9.0 s there, so 12.0 s ahead."""
    assert ahead_of(cycle_heard().key, (crank(21.0, 21.7),)) == 12.0


@pytest.mark.parametrize(
    "cranks",
    [
        (),
        (crank(21.0, 21.7, sure=0.5),),
        (crank(21.0, 21.7, started=False),),
        (crank(21.0, 27.0),),
        (crank(21.0, 21.7), crank(30.0, 31.0)),
    ],
)
def test_cranks_that_do_not_match_hold_nothing_together(cranks: tuple[Crank, ...]) -> None:
    """None, one that is not sure, that failed here and not there, that lasted otherwise, or more than one."""
    assert ahead_of(cycle_heard().key, cranks) is None
