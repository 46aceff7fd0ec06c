"""Bus logs of every form, told from what they hold."""

from __future__ import annotations

import tracemalloc
from pathlib import Path

import pytest
from tests.samples.bus_frames import aligned, close, key_cycle

from backprobe.errors import UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.files.can_log import no_bus_log, open_can_log
from backprobe.formats.bus_faults import BusFaults

FORMS = {"asc": "asc", "blf": "blf", "trc": "trc", "log": "candump-log", "mf4": "mf4"}


def written(path: Path, frames: list[Frame]) -> Path:
    """The frames as python-can writes them, in the form that the name asks for."""
    can = pytest.importorskip("can", reason="python-can is not installed")
    with can.Logger(str(path)) as logger:
        for frame in frames:
            logger(
                can.Message(
                    timestamp=frame.time_s + 1_700_000_000,
                    arbitration_id=frame.can_id,
                    is_extended_id=frame.extended,
                    is_remote_frame=frame.remote,
                    is_error_frame=frame.error,
                    data=frame.data,
                    channel=0,
                )
            )
    return path


def read(path: Path) -> tuple[str, list[Frame], BusFaults]:
    """The form that was told, the frames, and what was passed over."""
    log, faults = open_can_log(path), BusFaults(path.name)
    assert log is not None
    return log.form, list(log.frames(faults)), faults


@pytest.mark.parametrize("ending", FORMS)
def test_each_form_gives_the_frames_that_were_written(ending: str, tmp_path: Path) -> None:
    """Written by python-can, read here: identifiers, bytes and times to the microsecond (MDF, TRC: to 0.1 ms)."""
    frames = [*key_cycle(end_s=3.0, on_s=1.0), Frame(3.5, 0x123, b"\x01\x02", extended=False)]
    path = written(tmp_path / f"a.{ending}", frames)
    form, found, faults = read(path)
    assert form == FORMS[ending]
    assert [(f.can_id, f.data, f.extended) for f in found] == [(f.can_id, f.data, f.extended) for f in frames]
    begun = found[0].time_s - frames[0].time_s
    assert all(abs(a.time_s - b.time_s - begun) < 1e-3 for a, b in zip(found, frames, strict=True))
    assert not faults.counts


@pytest.mark.parametrize("ending", FORMS)
def test_the_name_does_not_matter(ending: str, tmp_path: Path) -> None:
    """The same bytes under any name are the same log."""
    path = written(tmp_path / f"a.{ending}", key_cycle(end_s=2.0, on_s=1.0))
    other = path.rename(tmp_path / "whatever.dat")
    assert read(other)[0] == FORMS[ending]


@pytest.mark.parametrize("write", [aligned, close])
def test_candump_texts_are_told_apart(write: object, tmp_path: Path) -> None:
    """Both are known by their lines."""
    path = tmp_path / "a.txt"
    path.write_text("\n".join(write(key_cycle(end_s=2.0))), encoding="utf-8")  # type: ignore[operator]
    assert read(path)[0] == ("candump" if write is aligned else "candump-log")


def test_a_text_without_frames_is_none(tmp_path: Path) -> None:
    """It may be engine data; where it is not, the refusal shows the line that was found."""
    path = tmp_path / "a.log"
    path.write_text("\ntime_s,red\n0,12.4\n", encoding="utf-8")
    assert open_can_log(path) is None
    assert "time_s,red" in no_bus_log(path).message


@pytest.mark.parametrize(
    ("content", "word"),
    [
        (b"\xff\xd8\xff\xe0" + b"\x00" * 100, "a photo"),
        (b"%PDF-1.7\n", "a PDF"),
        (b"\x00" * 500, "nothing but zeros"),
        (b"", "empty"),
        (b"LOGG", "a BLF log with a whole head"),
        (b"PK\x03\x04rest", "a ZIP file"),
    ],
)
def test_what_is_no_log_is_refused_whatever_its_name(content: bytes, word: str, tmp_path: Path) -> None:
    """A photo named .log, a PDF, zeros, nothing, a log that was cut within its head."""
    path = tmp_path / "bus.log"
    path.write_bytes(content)
    with pytest.raises(UnreadableError, match=word):
        read(path)


def test_a_file_that_is_not_there_is_said_so(tmp_path: Path) -> None:
    """In the technician's words."""
    with pytest.raises(UnreadableError, match="there is none of this name"):
        open_can_log(tmp_path / "a.log")


@pytest.mark.parametrize("ending", ["log", "asc", "trc", "blf"])
def test_memory_is_flat(ending: str, tmp_path: Path) -> None:
    """A log three times as long is read in no more than a tenth as much memory again."""
    peaks = []
    for times in (16, 48):
        path = tmp_path / f"{times}.{ending}"
        frames = key_cycle(end_s=10.0)
        written(path, [f._replace(time_s=f.time_s + 10 * i) for i in range(times) for f in frames])
        log = open_can_log(path)
        assert log is not None
        tracemalloc.start()
        assert sum(1 for _ in log.frames(BusFaults("a"))) == times * len(frames)
        peaks.append(tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    assert peaks[1] < 1.1 * peaks[0]
