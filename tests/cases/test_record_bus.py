"""The pictures of a job's bus logs for its record."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.jobs import demo_job

from backprobe.cases import record_bus
from backprobe.cases.judge import judge_folder
from backprobe.cases.record import record_of
from backprobe.cases.record_bus import TITLE, bus_pictures


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The demo's first job with two logs: a whole cycle, and a drive without a turn of the key."""
    place = demo_job(tmp_path, "truck-07")
    (place / "bus").mkdir()
    frames = key_cycle()
    drive = [frame for frame in frames if 12.0 < frame.time_s < 20.0]
    for name, logged in (("cycle.log", frames), ("drive.log", drive)):
        (place / "bus" / name).write_text("\n".join(aligned(logged)) + "\n", encoding="utf-8")
    return place


def test_a_log_with_a_turn_of_the_key_has_a_picture(folder: Path) -> None:
    """The other one has none: there is no cycle to be seen in it."""
    [picture] = bus_pictures(judge_folder(folder).imported)
    assert picture.svg.startswith("<svg")
    assert picture.caption.startswith("cycle.log: ")
    assert "lowest 10.20 V" in picture.alt
    assert picture.title == TITLE


def test_a_very_long_log_is_not_listened_to_again(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its findings stand in the record all the same."""
    monkeypatch.setattr(record_bus, "MOST_BYTES", 1000)
    assert list(bus_pictures(judge_folder(folder).imported)) == []


def test_it_stands_on_the_record(folder: Path) -> None:
    """A PDF, with the picture's title in it."""
    pypdf = pytest.importorskip("pypdf", reason="pypdf is not installed")
    path = folder / "record.pdf"
    path.write_bytes(record_of(judge_folder(folder)))
    text = "\n".join(page.extract_text() for page in pypdf.PdfReader(path).pages)
    assert TITLE in text
    assert "cycle.log" in text
