"""How the engine's worker does at half a core: the sky of two described places, a receiver's log, a bus log.

Run: python bench/phone_engine.py [--cores 0.5]. A real Chromium, held as in bench/phone.py, starts the worker as the
pages do and asks it; its answers are held to those of the Python that runs this. Aim: the sky of the places within a
second. There is no peer to compare with: the aim is the product's own.
"""

from __future__ import annotations

import argparse
import base64
import json
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT), str(ROOT / "bench")]

from playwright.sync_api import Page, sync_playwright  # noqa: E402
from tests.journeys.conftest import CHROMIUM, PHONE, QUIET, Phone, Yard  # noqa: E402
from tests.journeys.engine_worker import asked_twice, asked_with  # noqa: E402
from tests.journeys.line import Line  # noqa: E402
from tests.journeys.trucks import Desk  # noqa: E402
from tests.samples.bus_frames import aligned, key_cycle  # noqa: E402
from tests.samples.receiver_world import World, log_lines  # noqa: E402
from tests.samples.served import serving  # noqa: E402

from backprobe.job.opened_door import opened_text  # noqa: E402
from backprobe.job.places_door import places_text  # noqa: E402
from backprobe.server.settings import Settings  # noqa: E402
from phone import JOB, held_to  # noqa: E402

BUILT = ROOT / "web" / "dist"
PLACES = """chosen = "Overhead shelf"

[[place]]
name = "Overhead shelf"
sits = "shelf"
above = "fibreglass"
above_near = "hand"
ahead = "fibreglass"

[[place]]
name = "Top of the dash"
sits = "dash"
ahead = "glass"
ahead_near = "hand"
rake = "steep"
left = "glass"
right = "glass"
"""
RUNS = 3


def measured(page: Page) -> None:
    """All figures, printed one a line."""
    one, _, _ = PLACES.rpartition("\n[[place]]")
    for count, places in (("one place", one), ("two places", PLACES)):
        asked = json.dumps({"mount.toml": places, "lat": 51.48, "lon": -0.01, "date": "2026-03-31"})
        answers = [asked_twice(page, BUILT, door="places", text=asked) for _ in range(RUNS)]
        assert {said for pair in answers for said, _ in pair} == {places_text(asked)}
        first, again = (", ".join(str(pair[at][1]) for pair in answers) for at in (0, 1))
        print(f"the sky of {count}, fresh worker: {first} ms; once more: {again} ms")
    receiver = "\r\n".join(log_lines(World(seed=5, minutes=175, step_s=1))).encode()
    bus = ("\n".join(aligned(key_cycle())) + "\n").encode() * 15
    for name, content in (("log.nmea", receiver), ("log.txt", bus)):
        asked = json.dumps({"file": name})
        said, ms = asked_with(page, BUILT, door="opened", text=asked, encoded=base64.b64encode(content).decode())
        assert said == opened_text(asked, content)
        print(f"{name}, {len(content) / 1e6:.1f} MB, {json.loads(said)['counted']}: {ms} ms")


def main() -> None:
    """Runs it all in a folder that is thrown away."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--cores", type=float, default=0.5)
    cores = parser.parse_args().cores
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        profile = Path(folder) / "profile"
        with serving(Settings(data=Path(folder) / "data", pages=BUILT)) as server:
            line = Line(server.url)
            desk = Desk.of(server, server.person("Ines Okafor"))
            desk.give(JOB, "LY 07")
            context = playwright.chromium.launch_persistent_context(
                profile, executable_path=CHROMIUM, args=QUIET, **PHONE
            )
            phone = Phone(context, Yard(line, desk))
            phone.page.set_default_timeout(120_000)
            phone.enrol()
            with held_to(cores, profile) as held:
                print(f"held to {cores:g} cores" if held else "not held: no cgroup of version 1 can be written here")
                measured(phone.page)
            context.close()
            desk.client.close()
            line.close()


if __name__ == "__main__":
    main()
