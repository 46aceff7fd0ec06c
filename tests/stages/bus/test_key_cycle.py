"""The key's turns, from who wakes, turns, stands and falls silent."""

from __future__ import annotations

from backprobe.evidence.keys import Key
from backprobe.stages.bus.engine import Attempt, EngineTrack
from backprobe.stages.bus.key_cycle import Crank, KeyCycle, KeyOff, cranked, first_offs, key_offs, key_spans
from backprobe.stages.bus.nodes import NodeTrack
from backprobe.stages.bus.volts import VoltTrack


def node(address: int, to_s: float, *, from_s: float = 0.0) -> NodeTrack:
    """A computer that sends ten frames a second from one moment to another."""
    track = NodeTrack.begun("can0", address, time_s=from_s)
    for i in range(round((to_s - from_s) * 10) + 1):
        track.take(round(from_s + i / 10, 1))
    track.finish()
    return track


def engine(*, stop_s: float | None) -> EngineTrack:
    """An engine that ran when it was first heard, and stood at one moment."""
    track = EngineTrack()
    for i in range(400):
        time_s = i / 10
        track.take(time_s, 0.0 if stop_s is not None and time_s >= stop_s else 700.0)
    track.finish()
    return track


def test_some_fall_silent_as_the_engine_stands() -> None:
    """Two of five fall silent a second before the engine stands: off, no later than their last frame."""
    nodes = [node(3, 20.0), node(11, 20.1), *(node(i, 40.0) for i in (0, 41, 49))]
    assert key_offs(engine(stop_s=21.0), nodes, end_s=40.0) == (KeyOff(20.0, 21.0),)


def test_one_of_five_is_no_key() -> None:
    """A single computer that dies as the engine stalls is a fault, not the key."""
    nodes = [node(3, 20.0), *(node(i, 40.0) for i in (0, 11, 41, 49))]
    assert key_offs(engine(stop_s=21.0), nodes, end_s=40.0) == ()


def test_all_silent_while_the_engine_runs_is_a_logger_that_lost_the_bus() -> None:
    """The key cannot be off with the engine running."""
    nodes = [node(3, 20.0), node(0, 20.0)]
    assert key_offs(engine(stop_s=None), nodes, end_s=40.0) == ()


def test_what_the_log_does_not_outlast_is_not_known() -> None:
    """Silent for less than two seconds at the end of the log: it may go on."""
    nodes = [node(3, 38.5), node(0, 38.5)]
    assert key_offs(None, nodes, end_s=40.0) == ()


def test_a_computer_that_sleeps_later_is_no_second_off() -> None:
    """Off at 20 s; another falls silent at 30 s with no turn to on between."""
    offs = [KeyOff(20.0, 21.0), KeyOff(30.0, 30.0), KeyOff(50.0, 50.0)]
    assert first_offs(offs, [40.0]) == (offs[0], offs[2])


def test_the_spans_of_a_whole_cycle() -> None:
    """On, a failed crank, a good one, running, a stall, off where the first computers fell silent."""
    cycle = KeyCycle(
        ons_s=(5.0,),
        cranks=(
            Crank(start_s=8.0, end_s=9.0, started=False, starter_rpm=180.0),
            Crank(start_s=12.0, end_s=13.0, started=True, starter_rpm=180.0),
        ),
        stops_s=(20.0, 31.0),
        offs=(KeyOff(30.0, 31.0),),
        end_s=40.0,
    )
    assert key_spans(cycle) == (
        (5.0, Key.ON),
        (8.0, Key.CRANK),
        (9.0, Key.ON),
        (12.0, Key.CRANK),
        (13.0, Key.RUNNING),
        (20.0, Key.ON),
        (30.0, Key.OFF),
    )
    assert (cycle.on_s, cycle.off_s) == (5.0, 31.0)


def test_what_was_so_when_the_log_began_is_no_turn_but_a_span() -> None:
    """An engine that ran from the first frame on."""
    cycle = KeyCycle(on_at_start=True, runs_at_start=True, end_s=30.0)
    assert key_spans(cycle) == ((0.0, Key.RUNNING),)
    assert (cycle.on_s, cycle.off_s) == (None, None)
    assert key_spans(KeyCycle(end_s=30.0)) == ()


def test_a_key_that_is_on_again_is_not_off() -> None:
    """The off of a log is that which ends it."""
    cycle = KeyCycle(ons_s=(5.0, 40.0), offs=(KeyOff(30.0, 31.0),), end_s=60.0)
    assert cycle.off_s is None


def test_a_turn_of_the_starter_takes_the_supply_with_it() -> None:
    """What was reported in it, and the level before."""
    volts = VoltTrack()
    for time_s, level_V in ((7.0, 12.4), (8.5, 10.1), (9.5, 12.0)):
        volts.take(time_s, level_V)
    attempt = Attempt(stood_s=7.98, start_s=8.0, end_s=9.0, started=True, starter_rpm=180.0)
    crank = cranked(attempt, volts)
    assert (crank.start_s, crank.lowest_V, crank.lowest_s, crank.rest_V) == (8.0, 10.1, 8.5, 12.4)
