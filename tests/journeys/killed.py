"""A browser that can be killed as a phone's battery dies: at once, with nothing said before."""

from __future__ import annotations

import os
import signal
import time
from contextlib import suppress
from pathlib import Path

from playwright.sync_api import BrowserContext, Error

GONE_S = 10.0


def processes_of(profile: Path) -> list[int]:
    """The processes of the browser that was started with this profile, by their command lines."""
    found = []
    for folder in Path("/proc").iterdir():
        if folder.name.isdigit():
            with suppress(OSError):
                command = (folder / "cmdline").read_bytes().decode(errors="replace")
                if f"--user-data-dir={profile}" in command.split("\0"):
                    found.append(int(folder.name))
    return found


def kill(context: BrowserContext, profile: Path) -> None:
    """Kills the browser of a profile and waits until it is gone."""
    pids = processes_of(profile)
    assert pids, "no browser runs with this profile"
    for pid in pids:
        with suppress(ProcessLookupError):
            os.kill(pid, signal.SIGKILL)
    give_up = time.monotonic() + GONE_S
    while processes_of(profile) and time.monotonic() < give_up:
        time.sleep(0.05)
    with suppress(Error):
        context.close()
    for lock in profile.glob("Singleton*"):  # what a killed browser leaves behind, as on a phone's next start
        lock.unlink()
