"""Who talks, and how much of the bus it takes."""

from __future__ import annotations

from tests.samples.bus_frames import sent

from backprobe.evidence.frame import Frame
from backprobe.stages.bus.nodes import LoadTrack, NodeTrack, frame_bits


def test_a_node_s_talk_is_cut_at_its_silences() -> None:
    """Silent for more than 2 s: two spells."""
    node = NodeTrack.begun("can0", 3, time_s=0.0)
    for time_s in [*(i / 10 for i in range(100)), *(20 + i / 10 for i in range(50))]:
        node.take(time_s)
    node.finish()
    assert [(spell.from_s, spell.to_s, spell.frames, spell.steady) for spell in node.spells] == [
        (0.0, 9.9, 100, True),
        (20.0, 24.9, 50, True),
    ]


def test_a_heartbeat_is_no_steady_talk() -> None:
    """One frame a second is a computer that sleeps."""
    node = NodeTrack.begun("can0", 49, time_s=0.0)
    for second in range(60):
        node.take(float(second))
    node.finish()
    assert [spell.steady for spell in node.spells] == [False]


def test_a_single_long_message_is_no_steady_talk() -> None:
    """Thirty packets within a second and a half, once."""
    node = NodeTrack.begun("can0", 33, time_s=0.0)
    for i in range(30):
        node.take(i / 20)
    node.finish()
    assert [spell.steady for spell in node.spells] == [False]


def test_a_frame_takes_as_many_bits_as_are_published() -> None:
    """8 bytes with a short identifier: 64 + 47 bits, and at most (34 + 64 - 1) / 4 = 24 stuffed, 135 in all.

    The figure for short identifiers is the widely published formula 8s + 47 + (34 + 8s - 1) / 4; for long ones the
    frame has 20 bits more, 18 of identifier with SRR and the second reserved bit: from memory.
    """
    assert frame_bits(Frame(0.0, 1, bytes(8), extended=False)) == (111, 135)
    assert frame_bits(Frame(0.0, 1, bytes(8))) == (131, 160)
    assert frame_bits(Frame(0.0, 1, b"")) == (67, 80)


def test_the_busiest_second_counts() -> None:
    """100 frames in the second second, 10 in each other: 100 × 131 bits of 250,000."""
    load = LoadTrack()
    for second, count in enumerate((10, 100, 10)):
        for i in range(count):
            load.take(second + i / 200, sent(0.0, 61444, bytes(8)))
    load.finish()
    assert (load.busiest_least, load.busiest_most) == (13_100, 16_000)
    assert (load.least_bits, load.busy_seconds) == (120 * 131, 3)
