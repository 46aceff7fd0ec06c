"""Long messages put together from their packets."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.bus_frames import BAM, CTS, announcement, long_message, sent, sent_to

from backprobe.evidence.frame import Frame
from backprobe.formats.j1939_transport import Lost, Message, Transport

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine

VIN = 65260
BODY = b"1M8GDM9AXKP042788*"
BODIES = st.binary(min_size=9, max_size=120)
Sent = tuple[int, bytes]


def taken(frames: list[Frame]) -> tuple[list[Message], list[Lost]]:
    """What the frames come to: the whole messages, and the lost ones."""
    transport = Transport()
    found = [each for frame in frames for each in transport.take(frame)] + list(transport.left())
    return [m for m in found if isinstance(m, Message)], [m for m in found if isinstance(m, Lost)]


@st.composite
def conversations(draw: st.DrawFn) -> tuple[list[list[list[Frame]]], list[Sent]]:
    """What several nodes send, each one message after the other, to all or to one: their frames, and the bodies."""
    nodes: list[list[list[Frame]]] = []
    sent_bodies: list[Sent] = []
    for source in range(draw(st.integers(1, 4))):
        to = draw(st.sampled_from([255, 100 + source]))
        bodies = draw(st.lists(BODIES, min_size=1, max_size=3))
        nodes.append([long_message(body, VIN, source=source, to=to) for body in bodies])
        sent_bodies += [(source, body) for body in bodies]
    return nodes, sent_bodies


def interleaved(draw: st.DrawFn, queues: list[list[Frame]]) -> list[Frame]:
    """One frame after the other, taken from whichever node is at hand, 10 ms apart."""
    waiting = [list(queue) for queue in queues if queue]
    frames: list[Frame] = []
    while waiting:
        queue = draw(st.sampled_from(waiting))
        frames.append(queue.pop(0)._replace(time_s=len(frames) / 100))
        waiting = [each for each in waiting if each]
    return frames


@BUSY
@given(conversations(), st.data())
def test_any_interleaving_is_put_together(
    case: tuple[list[list[list[Frame]]], list[Sent]], data: st.DataObject
) -> None:
    """However the nodes' frames fall between one another, each message comes out whole and none is said to be lost."""
    nodes, bodies = case
    # the wait between two packets of one node grows with the others' talk; 10 ms a frame and few nodes keep it short
    frames = interleaved(data.draw, [[frame for message in node for frame in message] for node in nodes])
    spread = [frame._replace(time_s=frame.time_s / 20) for frame in frames]
    messages, lost = taken(spread)
    assert sorted((m.source, m.data) for m in messages) == sorted(bodies)
    assert lost == []


@BUSY
@given(conversations(), st.data())
def test_any_lost_frame_is_noticed(case: tuple[list[list[list[Frame]]], list[Sent]], data: st.DataObject) -> None:
    """Take one or more frames out of a message, though not all: it does not come out, and it is said to be lost."""
    nodes, bodies = case
    node = data.draw(st.sampled_from(nodes))
    message = data.draw(st.sampled_from(node))
    own = [
        i
        for i, frame in enumerate(message)
        if frame.can_id & 0xFF < 100 and frame.can_id & 0xFF == message[0].can_id & 0xFF
    ]
    gone = data.draw(st.sets(st.sampled_from(own), min_size=1, max_size=len(own) - 1))
    torn = [
        [frame for each in other for i, frame in enumerate(each) if not (each is message and i in gone)]
        for other in nodes
    ]
    frames = [frame._replace(time_s=frame.time_s / 20) for frame in interleaved(data.draw, torn)]
    messages, lost = taken(frames)
    left = sorted(bodies)
    for whole in messages:
        left.remove((whole.source, whole.data))  # nothing comes out that was not sent, nor twice
    assert len(left) >= 1
    assert any(each.source == message[0].can_id & 0xFF for each in lost)


def test_a_packet_asked_for_again_makes_the_message_whole() -> None:
    """The receiver asks from packet 2 on again: what comes twice alike is taken once."""
    frames = long_message(BODY, VIN, source=0, to=249)
    ask = sent_to(0.2, 0xEC00, bytes([CTS, 2, 2, 255, 255]) + VIN.to_bytes(3, "little"), source=249, to=0)
    again = [*frames[:4], ask, *frames[3:]]
    messages, lost = taken([frame._replace(time_s=i / 20) for i, frame in enumerate(again)])
    assert [(m.pgn, m.destination, m.data) for m in messages] == [(VIN, 249, BODY)]
    assert lost == []


def test_a_message_given_up_is_not_lost() -> None:
    """A node that says 'abort' has no more to send: the log lacks nothing."""
    frames = long_message(BODY, VIN, source=0, to=249)[:3]
    stop = sent_to(0.2, 0xEC00, bytes([255, 1, 255, 255, 255]) + VIN.to_bytes(3, "little"), source=249, to=0)
    assert taken([*frames, stop]) == ([], [])


def test_a_pause_ends_a_message() -> None:
    """No packet for more than 0.75 s: what comes then belongs to another message."""
    frames = long_message(BODY, VIN)
    late = [*frames[:3], frames[3]._replace(time_s=frames[2].time_s + 0.76)]
    messages, lost = taken(late)
    assert messages == []
    assert [each.pgn for each in lost] == [VIN]


def test_other_bytes_under_the_same_number_are_noticed() -> None:
    """Two packets 1 that differ are of two messages."""
    frames = long_message(BODY, VIN)
    other = frames[1]._replace(data=b"\x01OTHERON")
    messages, lost = taken([frames[0], frames[1], other, *frames[2:]])
    assert messages == []
    assert "again with other bytes" in lost[0].why


@pytest.mark.parametrize(
    "body",
    [
        bytes([BAM, 8, 0, 2, 255]) + VIN.to_bytes(3, "little"),  # 8 bytes need no packets
        bytes([BAM, 18, 0, 9, 255]) + VIN.to_bytes(3, "little"),  # 18 bytes are 3 packets
        bytes([BAM, 18]),
        bytes([99, 18, 0, 3, 255]) + VIN.to_bytes(3, "little"),
        b"",
    ],
)
def test_an_announcement_that_makes_no_sense_gives_no_message(body: bytes) -> None:
    """What follows it cannot be put together."""
    first = sent_to(0.0, 0xEC00, body, source=0, to=255)
    messages, _ = taken([first, *long_message(BODY, VIN)[1:]])
    assert messages == []


def test_the_two_ways_are_not_mixed() -> None:
    """'To all' with a receiver's address, and 'to one' with everybody's, are no announcements."""
    to_one = sent_to(0.0, 0xEC00, announcement(BODY, VIN, control=BAM), source=0, to=17)
    messages, _ = taken(
        [to_one, *(f._replace(can_id=6 << 26 | (0xEB00 | 17) << 8) for f in long_message(BODY, VIN)[1:])]
    )
    assert messages == []


@BUSY
@given(
    st.lists(st.tuples(st.integers(0, 0x1FFFFFFF) | st.sampled_from([0x1CECFF00, 0x1CEBFF00]), st.binary(max_size=8)))
)
def test_any_frames_are_borne(content: list[tuple[int, bytes]]) -> None:
    """No frames whatever end in an error, and no more messages come out than frames went in."""
    messages, lost = taken([Frame(i / 100, can_id, data) for i, (can_id, data) in enumerate(content)])
    assert len(messages) + len(lost) <= 2 * len(content)


def test_other_groups_are_passed() -> None:
    """A frame of another group says nothing here."""
    assert Transport().take(sent(0.0, 61444, bytes(8))) == ()
