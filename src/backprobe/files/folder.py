"""A job folder: which of its files hold what."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from backprobe.errors import JobError
from backprobe.job.kinds import LIGHTS, REPORTS, SCRIPT

JOB_SHEET = "job.toml"
READINGS = "readings.csv"
BUS_LOGS = "bus"
WALKROUND = "walkround.toml"
MOUNT = "mount.toml"
RECORDINGS = "recordings"
PHOTOS = "photos"
RECEIVER_LOG, RECEIVER_LOGS = "reception.nmea", "nmea"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobFolder:
    """The files of a job at `path`; None where there is no such file.

    `script`, `reports` and `lights` are what the proof of the unit rests on. `passed_over` was left unread.
    """

    path: Path
    job_sheet: Path
    readings: Path | None
    walkround: Path | None
    mount: Path | None = None
    recordings: tuple[Path, ...]
    photos: tuple[Path, ...]
    buses: tuple[Path, ...] = ()
    script: Path | None = None
    reports: Path | None = None
    lights: Path | None = None
    receiver_logs: tuple[Path, ...] = ()
    passed_over: tuple[str, ...] = ()

    def named(self, written: str, what: str) -> Path:
        """The file that the job sheet names as `written`; JobError, saying `what` it should be, where there is none."""
        path = self.path / written
        with _plain_words(path):
            if not path.is_file():
                raise JobError(f"{JOB_SHEET} names {written!r} as {what}; there is no such file in {self.path}")
        return path

    def shows(self, written: str) -> bool:
        """Whether a photo that a sheet calls `written` is among the folder's own; one that lies elsewhere is not."""
        return written in {f"{PHOTOS}/{path.name}" for path in self.photos}


def open_folder(path: Path) -> JobFolder:
    """The job folder at `path`; JobError where it is no folder or holds no job.toml.

    Recordings are the files in `recordings/`, photos those in `photos/`, receiver logs `reception.nmea` and those in
    `nmea/`, by name; hidden files and folders in there are
    passed over.
    """
    with _plain_words(path):
        if not path.is_dir():
            raise JobError(f"{path}: a job folder is expected; there is no folder of this name")
        job_sheet = path / JOB_SHEET
        if not job_sheet.is_file():
            raise JobError(f"{path}: a job folder is expected; there is no {JOB_SHEET} in it")
        recordings, odd_recordings = _files_in(path, RECORDINGS)
        buses, odd_buses = _files_in(path, BUS_LOGS)
        odd_recordings += odd_buses
        photos, odd_photos = _files_in(path, PHOTOS)
        logs, odd_logs = _files_in(path, RECEIVER_LOGS)
        log = _there(path / RECEIVER_LOG)
        return JobFolder(
            path=path,
            job_sheet=job_sheet,
            readings=_there(path / READINGS),
            walkround=_there(path / WALKROUND),
            buses=buses,
            script=_there(path / SCRIPT),
            reports=_there(path / REPORTS),
            lights=_there(path / LIGHTS),
            mount=path / MOUNT if (path / MOUNT).exists() else None,
            recordings=recordings,
            photos=photos,
            receiver_logs=logs if log is None else (log, *logs),
            passed_over=(*odd_recordings, *odd_photos, *odd_logs),
        )


def _there(path: Path) -> Path | None:
    return path if path.exists() else None


def _files_in(folder: Path, name: str) -> tuple[tuple[Path, ...], tuple[str, ...]]:
    """The files in a folder of the job, by name, and what else lies there; nothing where there is no such folder."""
    place = folder / name
    if place.exists() and not place.is_dir():
        raise JobError(f"{place}: a folder of {name} is expected; this is a file")
    found = sorted(place.iterdir()) if place.is_dir() else []
    usable = tuple(file for file in found if file.is_file() and not file.name.startswith("."))
    return usable, tuple(f"{name}/{file.name}" for file in found if file not in usable)


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    """Turn what the system says about a path into the technician's words."""
    try:
        yield
    except (OSError, ValueError) as problem:
        raise JobError(f"{path}: cannot be read; the system says: {problem}") from None
