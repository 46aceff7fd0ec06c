"""Listen to one bus log: open it, judge it in view of a job, draw it, and write its key script."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from backprobe.errors import OptionError
from backprobe.files.can_log import HEAD_LINES, no_bus_log, open_can_log
from backprobe.files.open import small_text, text_lines
from backprobe.formats.bus_faults import BusFaults
from backprobe.formats.instants import read_instant
from backprobe.formats.job_toml import read_job
from backprobe.formats.obd_csv import is_engine_data
from backprobe.formats.recording_csv import read_recording
from backprobe.stages.bus.answer import Answer, answer
from backprobe.stages.bus.engine_data import listen_to_rows
from backprobe.stages.bus.listen import Listened, listen


@dataclass(frozen=True, slots=True, kw_only=True)
class BusCase:
    """A log as listened to, and its answer in view of the job."""

    listened: Listened
    answer: Answer


def listen_to(path: Path) -> Listened:
    """What the log at `path` comes to, whatever its form. Raises UnreadableError in the technician's words."""
    log = open_can_log(path)
    if log is not None:
        faults = BusFaults(path.name)
        return listen(log.frames(faults), faults=faults, form=log.form)
    open_lines = text_lines(path)
    if not is_engine_data(list(islice(open_lines(), HEAD_LINES))):
        raise no_bus_log(path)
    return listen_to_rows(read_recording(open_lines, file=path.name, thresholds_V=()))


def bus_file(path: Path, *, vin: str | None = None, job: Path | None = None) -> BusCase:
    """The answer to one log; `vin` goes before the job sheet's. Raises InputError."""
    sheet = None if job is None else read_job(small_text(job), job.name)
    listened = listen_to(path)
    if sheet is None:
        return BusCase(listened=listened, answer=answer(listened.heard, vin=vin))
    vehicle = sheet.vehicle
    found = answer(listened.heard, vin=vin or vehicle.vin, system_V=vehicle.system_V, has_crank=vehicle.has_crank)
    return BusCase(listened=listened, answer=found)


def start_of(text: str) -> float:
    """The moment that is typed as --start [s since 1970]. Raises OptionError."""
    instant = read_instant(text)
    if instant is None:
        raise OptionError(f"--start {text}: a date and time is expected, 2026-03-31T08:05:00Z")
    return instant[0]
