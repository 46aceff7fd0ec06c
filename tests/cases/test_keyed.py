"""A recording without a key column, labelled by a log of the vehicle's bus."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.samples.bus_frames import aligned, key_cycle

from backprobe.cases.keyed import probe_keyed
from backprobe.errors import OptionError
from backprobe.limits.lookup import meter
from backprobe.stages.probe.answer import Answer
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("service"))


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """On at 5 s, cranked at 9.0 for 0.8 s, off at 30 s."""
    path = tmp_path / "truck.log"
    path.write_text("\n".join(aligned(key_cycle())) + "\n", encoding="utf-8")
    return path


def recording(folder: Path, *, cranked_s: float | None = 10.0, key: bool = False) -> Path:
    """Battery and a wire, 100 rows a second for 30 s; the supply falls while the starter turns."""
    path = folder / "wires.csv"
    lines = ["time_s,battery,red" + (",key" if key else "")]
    for row in range(3000):
        time_s = row / 100
        after_s = -1.0 if cranked_s is None else time_s - cranked_s
        volts = 12.5 if after_s < 0 else 9.8 if after_s < 0.8 else 14.1
        red = 0.0 if time_s < 6 else volts
        lines.append(f"{time_s:.2f},{volts + row % 3 / 100:.2f},{red:.2f}" + (",on" if key else ""))
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def keyed(path: Path, log: Path, ahead_s: float | None = None) -> Answer:
    """The answer to the recording with the log."""
    return probe_keyed(path, SETUP, bus=log, ahead_s=ahead_s)


def test_the_clocks_are_held_together_by_the_start(log: Path, tmp_path: Path) -> None:
    """9.0 s there is 10.0 s here: key on at 6.0 s, and the crank is certain."""
    view = keyed(recording(tmp_path), log).view
    assert view is not None
    assert view.events.key_on_s == pytest.approx(6.0, abs=0.05)
    assert [crank.sure for crank in view.cranks] == [1.0]


def test_what_is_said_goes_before(log: Path, tmp_path: Path) -> None:
    """The recording began 2 s after the log: on at 3.0 s of its clock."""
    view = keyed(recording(tmp_path), log, -2.0).view
    assert view is not None
    assert view.events.key_on_s == pytest.approx(3.0, abs=0.05)


def test_what_cannot_be_labelled_is_said(log: Path, tmp_path: Path) -> None:
    """No start to hold the clocks by, no overlap, a key column, a table."""
    with pytest.raises(OptionError, match="--bus-ahead"):
        keyed(recording(tmp_path, cranked_s=None), log)
    with pytest.raises(OptionError, match="shows no position of the key"):
        keyed(recording(tmp_path), log, -1000.0)
    with pytest.raises(OptionError, match="a key column of its own"):
        keyed(recording(tmp_path, key=True), log)
    table = tmp_path / "readings.csv"
    table.write_text("wire,key,volts\nRed,on,12.4\n", encoding="utf-8")
    with pytest.raises(OptionError, match="a readings table"):
        keyed(table, log)
