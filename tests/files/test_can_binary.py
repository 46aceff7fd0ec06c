"""BLF and MDF: damaged blocks, cut files, and an extra that is not there."""

from __future__ import annotations

import io
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.bus_frames import key_cycle

from backprobe.errors import UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.files.can_binary import BlfFeed, blf_frames, is_blf, is_mdf, mdf_frames
from backprobe.formats.bus_faults import READER_FAULT, BusFaults

can = pytest.importorskip("can", reason="python-can is not installed")

FRAMES = key_cycle(end_s=12.0)


@pytest.fixture(scope="module")
def blf(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A BLF log of several blocks."""
    path = tmp_path_factory.mktemp("blf") / "a.blf"
    with can.io.blf.BLFWriter(str(path), max_container_size=4096) as writer:
        writer.max_container_size = 4096
        for frame in FRAMES:
            writer(can.Message(timestamp=frame.time_s + 1.7e9, arbitration_id=frame.can_id, data=frame.data))
    raw = path.read_bytes()
    assert raw.count(b"LOBJ") > 5
    return raw


def read(raw: bytes, folder: Path) -> tuple[list[Frame], BusFaults]:
    """The frames in bytes."""
    path, faults = folder / "b.blf", BusFaults("b.blf")
    path.write_bytes(raw)
    return list(blf_frames(path, faults=faults)), faults


def test_behind_a_damaged_block_reading_goes_on(blf: bytes, tmp_path: Path) -> None:
    """Bytes in the middle of the third block are overwritten: one place is counted, the blocks around it are read."""
    at = -1
    for _ in range(3):
        at = blf.index(b"LOBJ", at + 1)
    torn = blf[: at + 60] + b"\xff" * 40 + blf[at + 100 :]
    frames, faults = read(torn, tmp_path)
    assert faults.counts == {READER_FAULT: 1}
    assert "at byte" in str(faults.places[0])
    assert len(FRAMES) * 0.6 < len(frames) < len(FRAMES)
    assert frames[-1].can_id == FRAMES[-1].can_id


def test_a_log_that_was_cut_is_read_up_to_there(blf: bytes, tmp_path: Path) -> None:
    """The logger lost its supply: what is whole is read, the cut is counted."""
    frames, faults = read(blf[: len(blf) // 2], tmp_path)
    assert 0 < len(frames) < len(FRAMES)
    assert faults.counts == {READER_FAULT: 1}


def test_a_block_that_says_to_be_huge_is_not_believed(blf: bytes, tmp_path: Path) -> None:
    """A damaged size would have the whole file read into memory."""
    at = blf.index(b"LOBJ")
    torn = blf[: at + 8] + (2**31).to_bytes(4, "little") + blf[at + 12 :]
    frames, faults = read(torn, tmp_path)
    assert faults.counts == {READER_FAULT: 1}
    assert frames
    with pytest.raises(ValueError, match="a block of"):
        BlfFeed(io.BytesIO(b"LOBJ"), b"").read(2**31)


@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_any_damage_is_borne(blf: bytes, data: st.DataObject, tmp_path_factory: pytest.TempPathFactory) -> None:
    """Bytes changed anywhere behind the head end in frames and counts, never in another error, and never for ever."""
    raw = bytearray(blf)
    for _ in range(data.draw(st.integers(1, 5))):
        raw[data.draw(st.integers(144, len(raw) - 1))] = data.draw(st.integers(0, 255))
    frames, _ = read(bytes(raw), tmp_path_factory.mktemp("torn"))
    assert len(frames) <= len(FRAMES)


@pytest.mark.parametrize("size", [0, 7, 71, 200_000])
def test_a_head_that_is_cut_is_refused(blf: bytes, size: int, tmp_path: Path) -> None:
    """Its size is none that a head has, or the file ends within it."""
    with pytest.raises(UnreadableError, match="a whole head"):
        read(b"LOGG" + size.to_bytes(4, "little") + blf[8:60], tmp_path)


def test_the_first_bytes_tell() -> None:
    """BLF and MDF have their marks."""
    assert is_blf(b"LOGG\x90\0\0\0")
    assert is_mdf(b"MDF     4.10    ")
    assert is_mdf(b"UnFinMF 4.10    ")
    assert not is_blf(b"MDF     ")
    assert not is_mdf(b"LOGG")


def test_without_its_extra_an_mdf_is_refused_in_plain_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What to install is said."""
    path = tmp_path / "a.mf4"
    path.write_bytes(b"MDF     4.10    " + bytes(200))
    monkeypatch.setitem(sys.modules, "asammdf", None)
    with pytest.raises(UnreadableError, match=r"pip install 'backprobe\[mdf\]'"):
        list(mdf_frames(path, faults=BusFaults("a.mf4")))


def test_an_mdf_that_is_damaged_is_refused(tmp_path: Path) -> None:
    """A head and then nothing."""
    pytest.importorskip("asammdf", reason="asammdf (the mdf extra) is not installed")
    path = tmp_path / "a.mf4"
    path.write_bytes(b"MDF     4.10    " + bytes(2000))
    with pytest.raises(UnreadableError, match="a measurement data file"):
        list(mdf_frames(path, faults=BusFaults("a.mf4")))


@pytest.fixture(scope="module")
def mdf(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A measurement data file of a second of an invented truck."""
    pytest.importorskip("asammdf", reason="asammdf (the mdf extra) is not installed")
    path = tmp_path_factory.mktemp("mdf") / "a.mf4"
    with can.Logger(str(path)) as logger:
        for frame in key_cycle(end_s=1.0, on_s=0.0):
            logger(can.Message(timestamp=frame.time_s + 1.7e9, arbitration_id=frame.can_id, data=frame.data, channel=0))
    return path.read_bytes()


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_a_damaged_mdf_is_read_so_far_or_refused(
    mdf: bytes, data: st.DataObject, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Whatever its reader and its reader's parts stumble over: never another error."""
    raw = bytearray(mdf)
    for _ in range(data.draw(st.integers(1, 8))):
        raw[data.draw(st.integers(64, len(raw) - 1))] = data.draw(st.integers(0, 255))
    path = tmp_path_factory.mktemp("torn") / "a.mf4"
    path.write_bytes(bytes(raw))
    try:
        frames = list(mdf_frames(path, faults=BusFaults("a.mf4")))
    except UnreadableError:
        return
    assert len(frames) <= len(key_cycle(end_s=1.0, on_s=0.0))
