"""ASC and TRC: torn lines counted with their place, error rows kept, reading going on."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.files.can_text import LineFeed, asc_frames, frame_of, is_asc, is_trc, trc_frames
from backprobe.formats.bus_faults import BusFaults

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine

pytest.importorskip("can", reason="python-can is not installed")

ASC = """\
date Sam Okt 14 14:15:01.736 2021
base hex  timestamps absolute
internal events logged
// version 7.0.0
Begin Triggerblock Sam Okt 14 14:15:01.736 2021
   0.000000 Start of measurement
   0.010000 1  CF00400x        Rx   d 8 F8 7D 7D 40 1F 00 FF 7D
   0.020000 1  Statistic: D 0 R 0 XD 10 XR 0 E 0 O 0 B 2.5%
   0.030000 CAN 1 Status:chip status error active
   0.040000 1  ErrorFrame
   0.050000 1  123             Rx   d 2 01 02
   0.060000 1  123             Rx   r
   0.070000 SV: 1 0 1 ::Ignition = 1
End TriggerBlock
""".splitlines()
TRC = """\
;$FILEVERSION=2.0
;$STARTTIME=44483.5
;$COLUMNS=N,O,T,I,d,l,D
;
;   Message   Time    Type ID     Rx/Tx
;---+-- ------+------ +- --+----- +- +- +- +- -- -- -- -- -- -- --
      1      5570.544 ER          Rx    04 01 09 01 00
      2      5571.596 ST          Rx    00 00 00 08
      3      5572.000 DT 0CF00400 Rx 8  F8 7D 7D 40 1F 00 FF 7D
      4      5573.000 DT     0123 Rx 2  01 02
      5      5574.000 EC          Rx    00 00
      6      5575.000 ER          Rx    04 01 02 0A 00
      7      5576.000 DT 0CF00400 Rx 8  F8 7D 7D 00 00 00 FF 7D
""".splitlines()


def asc(lines: list[str]) -> tuple[list[Frame], BusFaults]:
    """The frames of an ASC log."""
    faults = BusFaults("a.asc")
    return list(asc_frames(lines, faults=faults)), faults


def trc(lines: list[str]) -> tuple[list[Frame], BusFaults]:
    """The frames of a TRC log."""
    faults = BusFaults("a.trc")
    return list(trc_frames(lines, faults=faults)), faults


def test_an_asc_log_with_all_that_stands_in_one() -> None:
    """Frames, an error frame, a remote frame; comments, statistics and states are no torn lines."""
    frames, faults = asc(ASC)
    assert [(f.time_s, f.can_id, f.data[:2], f.extended, f.error, f.remote) for f in frames] == [
        (0.01, 0x0CF00400, b"\xf8\x7d", True, False, False),
        (0.04, 0, b"", True, True, False),
        (0.05, 0x123, b"\x01\x02", False, False, False),
        (0.06, 0x123, b"", False, False, True),
    ]
    assert not faults.counts
    assert is_asc(ASC)
    assert not is_trc(ASC)


def test_times_from_the_line_before_are_added_up() -> None:
    """Relative times: 0.01 + 0.04 + 0.05 + 0.06, lines of other kinds among them."""
    lines = [line.replace("timestamps absolute", "timestamps relative") for line in ASC]
    assert [round(f.time_s, 6) for f in asc(lines)[0]] == [0.01, 0.1, 0.15, 0.21]


def test_a_trc_log_with_its_error_rows() -> None:
    """Error rows become error frames at their time, status and counter rows nothing; 44483.5 is noon of 14 Oct 2021."""
    frames, faults = trc(TRC)
    noon_s = 1_634_212_800.0
    assert [(round(f.time_s - noon_s, 6), f.error, f.can_id) for f in frames] == [
        (5.570544, True, 0),
        (5.572, False, 0x0CF00400),
        (5.573, False, 0x123),
        (5.575, True, 0),
        (5.576, False, 0x0CF00400),
    ]
    assert not faults.counts
    assert is_trc(TRC)
    assert not is_asc(TRC)


@pytest.mark.parametrize(
    "torn",
    [
        "   0.045000 1  CF004",
        "   0.045000 1  CF00400x        Rx   d 8 F8 7D",
        "   0.045000 1  CF00400x        Rx   d 8 F8 7D 7D 40 1F 00 FF ZZ",
        "   0.045000 1  CF00400x        R",
        "   0.04   0.045000 1  CF00400x        Rx   d 8 F8 7D 7D 40 1F 00 FF 7D",
        "   0.045000 1  CF00400x        Rx   d x F8 7D 7D 40 1F 00 FF 7D",
        "%%% no line at all",
    ],
)
def test_a_torn_line_of_asc_is_counted_and_reading_goes_on(torn: str) -> None:
    """Whether python-can passes it over, takes it for a shorter frame or fails at it: it is counted where it stands."""
    frames, faults = asc([*ASC[:10], torn, *ASC[10:]])
    assert [f.time_s for f in frames] == [0.01, 0.04, 0.05, 0.06]
    assert faults.counts == {"torn_line": 1}
    assert faults.places[0].place.line == 11


@pytest.mark.parametrize(
    "torn",
    [
        "      4      5572.500 DT 0CF00400 Rx 8  F8 7D",
        "      4      5572.500 DT 0CF0",
        "      4      5572.500 DT 0CF00400 Rx 8  F8 7D 7D 40 1F 00 FF ZZ",
        "      4      5572.500 DT 0CF00400 Rx x  F8 7D 7D 40 1F 00 FF 7D",
        "      4      55x2.500 DT 0CF00400 Rx 8  F8 7D 7D 40 1F 00 FF 7D",
        "      4      5572.500 DQ 0CF00400 Rx 8  F8 7D 7D 40 1F 00 FF 7D",
        "garbage",
    ],
)
def test_a_torn_line_of_trc_is_counted_and_reading_goes_on(torn: str) -> None:
    """The same for TRC; the head is known to the reader that goes on."""
    frames, faults = trc([*TRC[:9], torn, *TRC[9:]])
    assert [f.error for f in frames] == [True, False, False, True, False]
    assert faults.counts == {"torn_line": 1}
    assert faults.places[0].place.line == 10


@BUSY
@given(st.lists(st.sampled_from([*ASC[5:], "   0.1 1  CF004", "", "x", "   0.2 1 12 Rx d 8 1 2 3"]), max_size=30))
def test_every_frame_behind_a_fault_is_read(lines: list[str]) -> None:
    """Whatever stands between: each whole line gives its frame, each torn one a count."""
    frames, faults = asc([*ASC[:5], *lines])
    whole = [line for line in lines if (" d " in line and "CF00400x" in line) or " d 2" in line or " r" in line[-3:]]
    errors = [line for line in lines if "ErrorFrame" in line]
    torn = [line for line in lines if line in ("   0.1 1  CF004", "x", "   0.2 1 12 Rx d 8 1 2 3")]
    assert len(frames) == len(whole) + len(errors)
    assert faults.counts.total() == len(torn)


def test_a_head_that_nobody_understands_is_refused() -> None:
    """The reader would fail at it for ever."""
    bad = [TRC[0], ";$STARTTIME=noon", *TRC[2:]]
    with pytest.raises(UnreadableError, match="a head that its reader understands"):
        trc(bad)


def test_lines_are_remembered_until_a_frame_came() -> None:
    """With their numbers; lines given again have none."""
    feed = LineFeed(["a", "b"])
    assert next(feed) == "a"
    feed.again(["head"])
    assert [*feed] == ["head", "b"]
    assert feed.given == [(1, "a"), (2, "b")]


def test_a_message_with_fewer_bytes_than_it_says_is_no_frame() -> None:
    """It was torn behind its length."""
    import can

    whole = can.Message(arbitration_id=1, data=b"\x01\x02", dlc=2)
    torn = can.Message(arbitration_id=1, data=b"\x01\x02", dlc=8)
    assert frame_of(whole) is not None
    assert frame_of(torn) is None
