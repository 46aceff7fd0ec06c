"""Outside check: python-can, a library for CAN buses with readers and writers of its own (LGPL-3.0, PyPI).

What it writes is read here, and what it reads of a real log is what is read here. It is also how ASC, BLF, TRC and MDF
are opened at all; the check is on both texts of candump, which are not read by it.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.evidence.frame import Frame
from backprobe.files.can_log import open_can_log
from backprobe.formats.bus_faults import BusFaults
from backprobe.formats.candump_text import read_candump

can = pytest.importorskip("can", reason="python-can is not installed")

MESSAGES = st.lists(
    st.builds(
        dict,
        timestamp=st.integers(0, 2**40).map(lambda us: us / 1e6),
        arbitration_id=st.integers(0, 0x7FF),
        data=st.binary(max_size=8),
        is_extended_id=st.booleans(),
        is_remote_frame=st.booleans(),
    ),
    max_size=20,
)


@settings(deadline=None, max_examples=50)
@given(MESSAGES)
def test_what_it_writes_as_candump_log_is_read_alike(
    tmp_path_factory: pytest.TempPathFactory, messages: list[dict[str, object]]
) -> None:
    """Identifiers of both lengths, data, remote frames, times."""
    path = tmp_path_factory.mktemp("log") / "a.log"
    with can.CanutilsLogWriter(str(path)) as writer:
        for each in messages:
            shown = {**each, "data": None, "dlc": 3} if each["is_remote_frame"] else each
            writer(can.Message(**shown))
    faults = BusFaults("a.log")
    ours = list(read_candump(path.read_text().splitlines(), faults=faults))
    theirs = list(can.CanutilsLogReader(str(path)))
    assert not faults.counts
    assert [(f.time_s, f.can_id, f.extended, f.remote, f.data) for f in ours] == [
        (m.timestamp, m.arbitration_id, m.is_extended_id, m.is_remote_frame, bytes(m.data)) for m in theirs
    ]


def as_read(path: Path) -> list[Frame]:
    """The good frames of a log as they are read here."""
    log = open_can_log(path)
    assert log is not None
    return [frame for frame in log.frames(BusFaults(path.name)) if not frame.error]


@pytest.mark.parametrize("name", ["truck-key-on.candump.log", "truck-key-on.trc"])
def test_a_real_log_holds_the_frames_that_it_reads(name: str, shared_data: Path) -> None:
    """Each frame of a real truck's log, its time, identifier and bytes."""
    path = shared_data / "can" / name
    theirs = [(m.timestamp, m.arbitration_id, bytes(m.data)) for m in can.LogReader(str(path)) if not m.is_error_frame]
    assert [(f.time_s, f.can_id, f.data) for f in as_read(path)] == theirs
    assert len(theirs) > 6_000


@pytest.mark.parametrize("ending", ["asc", "blf", "trc", "log", "mf4"])
def test_the_aligned_text_of_a_real_log_survives_its_writers(ending: str, shared_data: Path, tmp_path: Path) -> None:
    """The first 3,000 frames of a real key cycle, written in its forms and read back: the same frames."""
    frames = as_read(shared_data / "can" / "truck-key-cycle.candump.txt")[:3000]
    path = tmp_path / f"a.{ending}"
    with can.Logger(str(path)) as logger:
        for f in frames:
            logger(can.Message(timestamp=f.time_s + 1.6e9, arbitration_id=f.can_id, data=f.data, channel=1))
    again = as_read(path)
    assert [(f.can_id, f.data) for f in again] == [(f.can_id, f.data) for f in frames]
    assert again[-1].time_s - again[0].time_s == pytest.approx(frames[-1].time_s - frames[0].time_s, abs=1e-3)
