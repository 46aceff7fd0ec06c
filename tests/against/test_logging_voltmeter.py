"""The export of a logging voltmeter, read whole.

Source: oberwiesenfeld/datastore-oberwiesenfeld-tech, commit 0831049f (no licence stated), kept outside the repository.
UTF-16, decimal comma, quoted cells, dd.mm.yyyy stamps every 10 s, serial and name in the first row alone; the wire of
a 6 V vehicle. The figures are checked against Python's csv module on the same file.
"""

from __future__ import annotations

import csv
from datetime import datetime
from pathlib import Path

import pytest

from backprobe.evidence.recording import Recording
from backprobe.files.open import text_lines
from backprobe.formats.recording_csv import read_recording


@pytest.fixture(scope="module")
def path(shared_data: Path) -> Path:
    return shared_data / "supply" / "logging-voltmeter-utf16.csv"


@pytest.fixture(scope="module")
def recording(path: Path) -> Recording:
    return read_recording(text_lines(path), file=path.name, thresholds_V=(6.0,))


@pytest.fixture(scope="module")
def rows(path: Path) -> list[tuple[float, float]]:
    """Seconds from the first row and volts, as the csv module and the calendar give them."""
    with path.open(encoding="utf-16", newline="") as file:
        cells = [row for row in csv.reader(file) if row][1:]
    stamps = [datetime.strptime(row[1], "%d.%m.%Y %H:%M:%S") for row in cells]
    return [
        ((at - stamps[0]).total_seconds(), float(row[2].replace(",", ".")))
        for at, row in zip(stamps, cells, strict=True)
    ]


def test_every_row_is_read(recording, rows):
    """956 rows, none skipped: the index runs from 0 to 955."""
    assert (recording.rows, recording.skipped_count) == (956, 0)
    assert len(rows) == 956


def test_times(recording, rows):
    """From 14:46:55 to 17:26:05 on one day are 9,550 s, in steps of 10 s, and they are known."""
    assert (recording.start_s, recording.end_s) == (0.0, 9550.0)
    assert recording.end_s == rows[-1][0]
    assert (recording.interval_s, recording.widest_gap_s) == (10.0, 10.0)
    assert (recording.time_known, recording.time_note) == (True, None)


def test_one_channel(recording):
    """Index, serial number and logger's name are no voltages."""
    assert [channel.name for channel in recording.channels] == ["Voltage"]
    assert recording.channels[0].digits == 2


def test_figures(recording, rows):
    """Lowest 0.00 V at the start, highest 7.44 V after 1,180 s; mean as over all rows."""
    channel = recording.channels[0]
    volts = [value for _, value in rows]
    assert (channel.lowest, channel.lowest_s) == (min(volts), rows[volts.index(min(volts))][0]) == (0.0, 0.0)
    assert (channel.highest, channel.highest_s) == (max(volts), rows[volts.index(max(volts))][0]) == (7.44, 1180.0)
    assert channel.mean == pytest.approx(sum(volts) / 956, abs=1e-9)


def test_every_value(recording, rows):
    """Row by row the same time and volts."""
    window = recording.fine(recording.start_s, recording.end_s)
    assert list(zip(window.time_s, window.values["Voltage"], strict=True)) == rows
