"""The demo's jobs as a phone would hand them in: entries as texts, files by digest."""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

from backprobe.cases.import_folder import import_folder
from backprobe.files.blobs import BLOBS

DEMO = Path(__file__).resolve().parents[2] / "demo" / "linden-yard"


@dataclass(frozen=True)
class DemoJob:
    """A job's id, its entries, its files, and the folder they were taken from."""

    id: str
    texts: list[str]
    files: dict[str, bytes]
    folder: Path


def demo_job(folder: Path, name: str) -> DemoJob:
    """The demo's job `name` taken into a journal below `folder`, without what stands in the demo's own journal."""
    copy = folder / "linden-yard"
    if not copy.exists():
        shutil.copytree(DEMO, copy, ignore=shutil.ignore_patterns("*journal*", "blobs"))
    imported = import_folder(copy / name)
    files = {path.name: path.read_bytes() for path in (copy / name / BLOBS).iterdir()}
    return DemoJob(imported.job, [entry.raw.decode() for entry in imported.journal.entries], files, copy / name)
