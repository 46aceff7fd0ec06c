"""How the phone does at half a core: first download, opening from the cache, a verdict, 10,000 entries to the server.

Run: python bench/phone.py [--cores 0.5]. A real Chromium opens the built pages from a real server on loopback; all its
processes are held to so many cores by a cgroup (version 1, as root; where there is none it says so and runs unheld).
Aims: at most 6.5 MB to be loaded; usable within 1.5 s and the engine ready within 3 s from the cache with no line; a
verdict within 200 ms of a reading; 10,000 queued entries sent within 30 s, no task of the page over 200 ms.
There is no peer to compare with: the aims are the product's own. On two cores under load 5 to 10 the engine was ready
after 2.7 s; with the engine in a zip, and what `dataclasses` writes compiled on the phone, after 2.8 and 2.9 s.
"""

from __future__ import annotations

import argparse
import os
import statistics
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

from playwright.sync_api import BrowserContext, Page, sync_playwright  # noqa: E402
from tests.journeys.conftest import CHROMIUM, PHONE, QUIET, Phone, Yard  # noqa: E402
from tests.journeys.killed import processes_of  # noqa: E402
from tests.journeys.line import Line  # noqa: E402
from tests.journeys.trucks import Desk  # noqa: E402
from tests.samples.served import serving  # noqa: E402

from backprobe.job.ids import timed_id  # noqa: E402
from backprobe.job.journal import Draft, Journal, continued  # noqa: E402
from backprobe.server.settings import Settings  # noqa: E402

CPU = Path("/sys/fs/cgroup/cpu")
PERIOD_US = 100_000
RUNS = 5
QUEUED = 10_000
JOB = "LY-2026-07"
READINGS = [("off", "12.62"), ("accessory", "12.55"), ("on", "12.40"), ("running", "14.02"), ("crank", "10.81")]

MARKS = """
() => ({
  usable: performance.getEntriesByName('backprobe-usable')[0]?.startTime,
  engine: performance.getEntriesByName('backprobe-engine').map(each => each.startTime + each.duration)[0],
})
"""
JUDGED = "performance.getEntriesByName('backprobe-judged').map(each => each.duration)"
KEEP = """
() => new Promise((done, failed) => {
  const count = () => document.querySelectorAll('.readings li').length;
  const button = document.querySelector('.entry .main');
  const before = count();
  const begun = performance.now();
  let touched = 0;
  const look = () => {
    if (!touched && !button.disabled) { touched = performance.now(); button.click(); }
    const judged = count() > before && !document.querySelector('.next').classList.contains('behind');
    if (judged) return done(performance.now() - touched);
    if (performance.now() - begun > 20000) return failed(new Error('no verdict within 20 s'));
    requestAnimationFrame(look);
  };
  look();
})
"""
INJECT = """
async ({rows, tip}) => {
  const asked = indexedDB.open('backprobe');
  const base = await new Promise(done => asked.onsuccess = () => done(asked.result));
  const writing = base.transaction(['entries', 'tips'], 'readwrite');
  for (const row of rows) writing.objectStore('entries').add({...row, waiting: 1});
  writing.objectStore('tips').put(tip, [rows[0].job, rows[0].device]);
  await new Promise(done => writing.oncomplete = done);
  base.close();
  window.longest = 0;
  new PerformanceObserver(list => {
    for (const each of list.getEntries()) window.longest = Math.max(window.longest, each.duration);
  }).observe({type: 'longtask'});
}
"""
DEVICE = """
async () => {
  const asked = indexedDB.open('backprobe');
  const base = await new Promise(done => asked.onsuccess = () => done(asked.result));
  const got = base.transaction('settings').objectStore('settings').get('device');
  const device = await new Promise(done => got.onsuccess = () => done(got.result));
  base.close();
  return device;
}
"""


@contextmanager
def held_to(cores: float, profile: Path) -> Iterator[bool]:
    """Holds the browser of a profile to so many cores; says whether that could be done."""
    room = CPU / f"backprobe-bench-{os.getpid()}"
    try:
        room.mkdir()
        (room / "cpu.cfs_period_us").write_text(str(PERIOD_US), encoding="ascii")
        (room / "cpu.cfs_quota_us").write_text(str(int(PERIOD_US * cores)), encoding="ascii")
        for pid in family_of(profile):
            (room / "cgroup.procs").write_text(str(pid), encoding="ascii")
    except OSError:
        yield False
        return
    yield True


def family_of(profile: Path) -> list[int]:
    """The browser of a profile with all that it started."""
    parents: dict[int, int] = {}
    for folder in Path("/proc").iterdir():
        if folder.name.isdigit():
            try:
                stat = (folder / "stat").read_text(encoding="ascii", errors="replace")
            except OSError:
                continue
            parents[int(folder.name)] = int(stat.rpartition(")")[2].split()[1])
    found = set(processes_of(profile))
    while more := {pid for pid, parent in parents.items() if parent in found} - found:
        found |= more
    return sorted(found)


def opened_offline(page: Page) -> tuple[float, float]:
    """Milliseconds until the page is usable and until the engine is ready, from the cache, with no line."""
    page.reload()
    page.wait_for_function("() => performance.getEntriesByName('backprobe-engine').length > 0")
    marks: dict[str, Any] = page.evaluate(MARKS)
    return float(marks["usable"]), float(marks["engine"])


def kept_and_judged(phone: Phone) -> list[float]:
    """Milliseconds from the touch on Keep to the new verdict on the page, reading by reading."""
    took = []
    for key, volts in READINGS:
        phone.page.get_by_role("radio", name="X12/4 RD").check(force=True)
        phone.page.get_by_role("radio", name=key, exact=True).check(force=True)
        phone.page.locator(".shown input").fill(volts)
        took.append(float(phone.page.evaluate(KEEP)))
    return took


def rows_of(device: str) -> tuple[list[dict[str, object]], dict[str, object]]:
    """So many readings as this phone would have queued them, in a job of their own, and the end of their chain."""
    body = {"wire": "X1", "key": "on", "volts": "12.40", "capture": "display", "after_min": None, "load_A": None}
    drafts = [Draft(id=timed_id(1_760_000_000_000 + n, bytes(10)), kind="reading", body=body) for n in range(QUEUED)]
    entries = continued(Journal(), drafts, job="BENCH", device=device, engine="0.1.0")
    rows = [
        {"id": e.id, "kind": e.kind, "seq": e.seq, "raw": e.raw.decode(), "job": e.job, "device": device}
        for e in entries
    ]
    return rows, {"seq": entries[-1].seq, "digest": entries[-1].digest}


def sent(phone: Phone) -> tuple[float, float]:
    """Seconds until all that was queued is on the server, and the page's longest task meanwhile [ms]."""
    rows, tip = rows_of(phone.page.evaluate(DEVICE))
    phone.page.goto(f"{phone.yard.url}#/")
    phone.page.evaluate(INJECT, {"rows": rows, "tip": tip})
    started = time.perf_counter()
    phone.online()
    phone.page.wait_for_function("() => document.querySelector('.unsent')?.dataset.unsent > 0")
    phone.page.wait_for_function("() => document.querySelector('.unsent')?.dataset.unsent === '0'", timeout=120_000)
    return time.perf_counter() - started, float(phone.page.evaluate("window.longest"))


def measured(context: BrowserContext, yard: Yard, *, profile: Path, cores: float) -> None:
    """All figures, printed one a line."""
    phone = Phone(context, yard)
    phone.page.set_default_timeout(60_000)
    phone.enrol()
    phone.page.wait_for_function("() => performance.getEntriesByName('backprobe-engine').length > 0")
    print(f"first download: {yard.line.carried / 1e6:.2f} MB over the line, enrolling and the day with it")
    with held_to(cores, profile) as held:
        print(f"held to {cores:g} cores" if held else "not held: no cgroup of version 1 can be written here")
        phone.offline()
        opened = [opened_offline(phone.page) for _ in range(RUNS)]
        usable, ready = (statistics.median(each) for each in zip(*opened, strict=True))
        print(f"opened from the cache with no line: usable {usable:.0f} ms, engine ready {ready:.0f} ms (of {RUNS})")
        phone.to_wires()
        phone.choose_meter()
        phone.add_wire("X12", "4", "RD")
        took = kept_and_judged(phone)
        said = ", ".join(f"{each:.0f}" for each in took)
        print(f"verdict after a reading: median {statistics.median(took):.0f} ms, each {said} ms")
        print(f"of that the engine: median {statistics.median(phone.page.evaluate(JUDGED)):.0f} ms")
        seconds, longest_ms = sent(phone)
        print(f"{QUEUED:,} entries sent in {seconds:.1f} s, longest task of the page {longest_ms:.0f} ms")


def main() -> None:
    """Runs it all in a folder that is thrown away."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--cores", type=float, default=0.5)
    cores = parser.parse_args().cores
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        profile = Path(folder) / "profile"
        with serving(Settings(data=Path(folder) / "data", pages=ROOT / "web" / "dist")) as server:
            line = Line(server.url)
            desk = Desk.of(server, server.person("Ines Okafor"))
            desk.give(JOB, "LY 07")
            context = playwright.chromium.launch_persistent_context(
                profile, executable_path=CHROMIUM, args=QUIET, **PHONE
            )
            measured(context, Yard(line, desk), profile=profile, cores=cores)
            context.close()
            desk.client.close()
            line.close()


if __name__ == "__main__":
    main()
