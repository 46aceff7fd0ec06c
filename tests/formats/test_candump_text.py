"""The two texts of candump."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.bus_frames import aligned, close

from backprobe.evidence.frame import Frame
from backprobe.formats.bus_faults import TORN_LINE, BusFaults
from backprobe.formats.candump_text import is_candump, read_candump

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine

TIMES = st.integers(0, 2**41).map(lambda us: us / 1e6)
BUSES = st.sampled_from(["can0", "vcan1"])
FRAMES = st.one_of(
    st.builds(lambda *of: frame(*of[:3], bus=of[3]), TIMES, st.integers(0, 0x7FF), st.binary(max_size=8), BUSES),
    st.builds(
        lambda *of: Frame(*of[:3], channel=of[3]), TIMES, st.integers(0, 0x1FFFFFFF), st.binary(max_size=8), BUSES
    ),
)


def frame(time_s: float, can_id: int, data: bytes, *, bus: str = "can0", remote: bool = False) -> Frame:
    """A frame with a short identifier."""
    return Frame(time_s, can_id, data, extended=False, remote=remote, channel=bus)


def read(*lines: str) -> tuple[list[Frame], BusFaults]:
    """The frames in lines, and what was passed over."""
    faults = BusFaults("log")
    return list(read_candump(lines, faults=faults)), faults


@BUSY
@given(st.lists(FRAMES, max_size=8), st.sampled_from([aligned, close]))
def test_what_is_written_is_read(frames: list[Frame], write: object) -> None:
    """Frames written in either form come back as they were, to the microsecond that the form holds."""
    found, faults = read(*write(frames))  # type: ignore[operator]
    assert found == frames
    assert not faults.counts


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("(0.0) vcan0 001#8d00100100820100", frame(0.0, 1, bytes.fromhex("8d00100100820100"), bus="vcan0")),
        ("(1.5) can0 123#R8", frame(1.5, 0x123, b"", remote=True)),
        ("(1.5) can0 123#R", frame(1.5, 0x123, b"", remote=True)),
        ("(1.5) can0 18FEF100#00 R", Frame(1.5, 0x18FEF100, b"\0", channel="can0")),
        ("(1.5) can0 123##1" + "AB" * 12, frame(1.5, 0x123, b"\xab" * 12)),
        ("(1.5) can0 20000080#0000000000000000", Frame(1.5, 0x80, bytes(8), error=True, channel="can0")),
        (" (0.5)  can0  123   [8]  remote request", frame(0.5, 0x123, b"", remote=True)),
        (
            " (0.5)  can0  20000080   [8]  00 00 00 00 00 00 00 00   ERRORFRAME",
            Frame(0.5, 0x80, bytes(8), error=True, channel="can0"),
        ),
        (" (0.5)  can0  123   [2]  41 42   'AB'", frame(0.5, 0x123, b"AB")),
        (" (0.5)  can0  RX - -  123   [1]  41", frame(0.5, 0x123, b"A")),
        (" (0.5)  can0  123  [12]  " + "00 " * 12, frame(0.5, 0x123, bytes(12))),
        (" (0.5)  can0  123   [0]", frame(0.5, 0x123, b"")),
        # 14 October 2021, 23:41:24 UTC is 1634254884 seconds after 1970
        (" (2021-10-14 23:41:24.500000)  can0  123   [1]  41", frame(1634254884.5, 0x123, b"A")),
    ],
)
def test_each_form_of_a_line(line: str, expected: Frame) -> None:
    """Remote and error frames, long frames, letters beside the bytes, directions, times of day."""
    assert read(line)[0] == [expected]
    assert is_candump(line)


@pytest.mark.parametrize(
    "line",
    [
        " (000.5)  can0  0CF00400   [8]  F8 7D 7D",
        " (000.5)  can0  0CF00400   [8]  F8 7D 7D 00 00 00 FF 7D 01",
        " (000.5)  can0  0CF00400   [8]  F8 7D 7D 00 0",
        " (000.5)  can0  0CF004   [1]  F8",
        " (000.5)  can0  0CF0 (000.6)  can0  0CF00400   [1]  F8",
        "(1634254884.9 can1 0CF00100#FF",
        "(1634254884.9) can1 0CF00100#F",
        "(1634254884.9) can1 0CF0010#FF",
        "(1634254884.9) can1 0CF00100",
        "(1.2.3) can1 0CF00100#FF",
        "(nan) can1 0CF00100#FF",
        "(0.5) can0 123#112233445566778899",
        "(0.5) can0 123#Rx",
        "CAN0 123 8 00",
        "\N{REPLACEMENT CHARACTER}(0.5) can0 123#00",
        "(0.5) can0 ١٢٣#00",
    ],
)
def test_a_torn_line_is_counted_with_its_place(line: str) -> None:
    """Half lines and spliced lines give no frame; the place is kept, and reading goes on."""
    frames, faults = read("# a comment", "", line, "(2.0) can0 123#00")
    assert [each.time_s for each in frames] == [2.0]
    assert faults.counts == {TORN_LINE: 1}
    assert faults.places[0].place.line == 3
    assert not is_candump(line)


@BUSY
@given(st.lists(FRAMES, min_size=2, max_size=6), st.data())
def test_every_line_of_a_torn_text_is_read_or_counted(frames: list[Frame], data: st.DataObject) -> None:
    """The aligned text torn anywhere: lines that stayed whole are read, each other one is read or counted."""
    text = "\n".join(aligned(frames))
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    lines = (text[:start] + text[end:]).split("\n")
    found, faults = read(*lines)
    written = [line for line in lines if line.strip()]
    assert len(found) + faults.counts.total() == len(written)
    whole = set(aligned(frames))
    assert sum(line in whole for line in written) <= len(found)


@BUSY
@given(st.text(max_size=60))
def test_any_text_is_borne(line: str) -> None:
    """No line whatever ends in an error."""
    frames, faults = read(line)
    assert len(frames) + faults.counts.total() <= 1


def test_times_that_count_from_the_frame_before_are_added_up() -> None:
    """`candump -t d` writes differences: 0.5 and 1.5 ms in turn are no times that fall back."""
    steps = [0.0005 if i % 2 else 0.0015 for i in range(1000)]
    lines = [f" ({step:010.6f})  can0  123   [1]  41" for step in steps]
    frames, faults = read(*lines)
    assert [each.time_s for each in frames[:3]] == [0.0015, 0.002, 0.0035]
    assert frames[-1].time_s == pytest.approx(1.0)
    assert not faults.counts


def test_a_few_frames_out_of_order_are_no_differences() -> None:
    """Two buses written into one log overtake each other now and then."""
    lines = [f" ({i / 100 - 0.02 * (i % 20 == 19):010.6f})  can0  123   [1]  41" for i in range(400)]
    assert read(*lines)[0][-2].time_s == 3.98
