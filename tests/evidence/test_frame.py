"""One frame of a bus log."""

from __future__ import annotations

from backprobe.evidence.frame import Frame


def test_a_plain_frame_has_a_long_identifier_and_no_fault() -> None:
    """What is not said of a frame is the usual: 29 bits, data, no error."""
    frame = Frame(1.5, 0x0CF00400, b"\x00")
    assert (frame.extended, frame.remote, frame.error, frame.channel) == (True, False, False, "")
