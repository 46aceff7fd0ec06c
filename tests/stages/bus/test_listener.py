"""Frames taken in one by one."""

from __future__ import annotations

from tests.samples.bus_frames import key_cycle, speed_frame

from backprobe.formats.bus_faults import BusFaults
from backprobe.stages.bus.listener import Listener


def test_the_first_engine_s_computer_counts() -> None:
    """Another engine's speed, sent by address 1, is not mixed into it."""
    listener = Listener(BusFaults("a"))
    for i in range(100):
        listener.take(speed_frame(i / 50, 700.0))
        listener.take(speed_frame(i / 50, 0.0, source=1))
    assert listener.engine is listener.engines[0]
    assert listener.engine.stops_s == []
    assert sorted(listener.engines) == [0, 1]


def test_memory_does_not_grow_with_the_log() -> None:
    """The same minute again and again: what is kept of ten times as many frames is no more than twice as much."""

    def kept(times: int) -> int:
        listener = Listener(BusFaults("a"))
        frames = key_cycle()
        for turn in range(times):
            for frame in frames:
                listener.take(frame._replace(time_s=frame.time_s + 45 * turn))
        points = len(listener.volt_points.points) + len(listener.rpm_points.points)
        return points + len(listener.volts.recent) + sum(len(node.spells) for node in listener.nodes.values())

    assert kept(40) < 2 * kept(4) + 4096
