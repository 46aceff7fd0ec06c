"""Judge one file: a table of readings, or a recording."""

from __future__ import annotations

from pathlib import Path

from backprobe.evidence.meter import Meter
from backprobe.evidence.recording import Recording
from backprobe.files.open import small_text, text_lines
from backprobe.formats.cells import cells_of, delimiter_of
from backprobe.formats.meter_toml import read_meter
from backprobe.formats.readings_columns import REQUIRED
from backprobe.formats.readings_csv import read_readings
from backprobe.formats.recording_csv import read_recording
from backprobe.limits.lookup import limit, meter
from backprobe.limits.meters import METERS
from backprobe.stages.probe.answer import Answer, answer_recording, answer_table
from backprobe.stages.probe.setup import Setup


def probe_file(path: Path, setup: Setup) -> Answer:
    """The answer to a file of either kind, told by its header. Raises UnreadableError in the technician's words."""
    if is_readings_header(first_line(path)):
        return answer_table(read_readings(text_lines(path)(), file=path.name, system_V=setup.system_V), setup)
    return answer_recording(open_recording(path, setup), setup)


def is_readings_header(line: str) -> bool:
    """Whether a first line is that of a readings table rather than of a recording."""
    names = {name.lower() for name in cells_of(line, delimiter_of(line, REQUIRED))}
    return "wire" in names or {"key", "volts"} <= names


def first_line(path: Path) -> str:
    """The first line that is neither empty nor a remark; empty where there is none."""
    return next((line for line in text_lines(path)() if line.strip() and not line.lstrip().startswith("#")), "")


def open_recording(path: Path, setup: Setup) -> Recording:
    """The recording in a file, with the time below each limit that is judged by."""
    limits = [limit(name, system_V=setup.system_V).value for name in ("supply_in_crank", "ignition_in_crank")]
    own = [] if setup.unit_least_V is None else [setup.unit_least_V]
    return read_recording(text_lines(path), file=path.name, thresholds_V=[*limits, *own])


def meter_of(name: str) -> Meter:
    """The meter that is named: a class from the table, or a file that describes one."""
    if name in METERS or not name.endswith(".toml"):
        return meter(name)
    return read_meter(small_text(Path(name)), name)
