"""How long a queue of 10,000 entries takes to be handed in and fetched again, over HTTP, every commit on the disk.

Run: python bench/sync.py [--entries N] [--store ADDRESS]. A server in a process of its own on loopback; the client
sends batches of 500 one after the other, as the phone does, and counts only what is acknowledged. The peer is the same
entries handed to SQLite itself, the same rows in batches of 500, without HTTP, without reading the entries and without
what follows from them: what the disk and the database take alone. Aim: 10,000 within 30 s, most of which the phone may
need.
"""

from __future__ import annotations

import argparse
import os
import socket
import sqlite3
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter, sleep

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

import httpx  # noqa: E402
from tests.samples.journals import Phone  # noqa: E402

from backprobe.cases.enrol import enrol, make_code  # noqa: E402
from backprobe.cases.may import Caller, Role  # noqa: E402
from backprobe.cases.tokens import fresh_id, now  # noqa: E402
from backprobe.cases.yard import open_yard  # noqa: E402
from backprobe.store.people import Person, add_person  # noqa: E402

BATCH = 500
JOBS = 20
AIM_S = 30.0
SERVE = "import sys; from backprobe.cli.main import main; sys.exit(main())"


def queued(count: int) -> list[str]:
    """Readings of 20 jobs, as they would lie in a phone's queue."""
    each = count // JOBS
    phones = [Phone("phone-a", ids=each * number, job=f"job-{number}") for number in range(JOBS)]
    keys = ("off", "accessory", "on", "crank", "running", "after")
    for number in range(each):
        for phone in phones:
            phone.reads(f"X{number % 24}/{number % 7} RD", keys[number % 6], f"12.{number % 100:02}")
    return [entry.raw.decode() for phone in phones for entry in phone.entries]


def token_of(data: Path, store: str | None) -> str:
    """The token of a phone that was enrolled."""
    yard = open_yard(data, address=store)
    who = Person(id=fresh_id(), organisation=yard.organisation, name="I", language="en", units="us", role="installer")
    with yard.store.writing() as connection:
        add_person(connection, who, made_at=now())
    lead = Caller(role=Role.LEAD, organisation=yard.organisation)
    code = make_code(yard, lead, person_id=who.id, origin="http://localhost").code
    token = enrol(yard, code, device=f"phone-{fresh_id()}", label="").token
    yard.store.close()
    return token


def peer_s(texts: list[str], folder: Path) -> float:
    """The seconds that SQLite itself takes for the same rows."""
    connection = sqlite3.connect(folder / "peer.sqlite3", isolation_level=None)
    connection.execute("PRAGMA journal_mode=WAL")
    connection.execute("PRAGMA synchronous=FULL")
    connection.execute("CREATE TABLE entry (id TEXT PRIMARY KEY, cursor INTEGER UNIQUE, raw BLOB)")
    started = perf_counter()
    for start in range(0, len(texts), BATCH):
        connection.execute("BEGIN IMMEDIATE")
        rows = [(text[-90:], start + at, text.encode()) for at, text in enumerate(texts[start : start + BATCH])]
        connection.executemany("INSERT OR IGNORE INTO entry VALUES (?, ?, ?)", rows)
        connection.execute("COMMIT")
    taken = perf_counter() - started
    connection.close()
    return taken


def handed_in_s(client: httpx.Client, texts: list[str]) -> tuple[float, float]:
    """The seconds of handing all in, and those of the slowest batch."""
    slowest, started = 0.0, perf_counter()
    for start in range(0, len(texts), BATCH):
        batch, before = texts[start : start + BATCH], perf_counter()
        results = client.post("/api/entries", json={"entries": batch}).json()["results"]
        if {each["state"] for each in results} != {"kept"}:
            sys.exit(f"not kept: {results[0]}")
        slowest = max(slowest, perf_counter() - before)
    return perf_counter() - started, slowest


def fetched_s(client: httpx.Client, count: int) -> float:
    """The seconds of fetching all again."""
    started, after, got, more = perf_counter(), 0, 0, True
    while more:
        page = client.get("/api/entries", params={"after": after}).json()
        after, more, got = page["cursor"], page["more"], got + len(page["entries"])
    if got != count:
        sys.exit(f"{got} entries came back, {count} were sent")
    return perf_counter() - started


def main() -> None:
    """Print the seconds of server and peer, and the ratio."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--entries", type=int, default=10_000)
    parser.add_argument("--store")
    chosen = parser.parse_args()
    texts = queued(chosen.entries)
    with tempfile.TemporaryDirectory() as name, socket.socket() as probe:
        folder = Path(name)
        token = token_of(folder / "data", chosen.store)
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
        probe.close()
        more = [] if chosen.store is None else ["--store", chosen.store]
        command = [
            sys.executable,
            "-c",
            SERVE,
            "serve",
            "--data",
            str(folder / "data"),
            "--listen",
            f"127.0.0.1:{port}",
        ]
        env = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
        server = subprocess.Popen([*command, *more], env=env, stdout=subprocess.DEVNULL)
        try:
            client = httpx.Client(
                base_url=f"http://127.0.0.1:{port}", headers={"Authorization": f"Bearer {token}"}, timeout=60.0
            )
            for _ in range(200):
                try:
                    client.get("/api/openapi.json")
                    break
                except httpx.TransportError:
                    sleep(0.05)
            in_s, slowest_s = handed_in_s(client, texts)
            out_s = fetched_s(client, len(texts))
            client.close()
        finally:
            server.terminate()
            server.wait()
        alone_s = peer_s(texts, folder)
    size_MB = sum(len(text.encode()) for text in texts) / 1e6
    print(f"{len(texts)} entries, {size_MB:.1f} MB, batches of {BATCH}, on {chosen.store or 'SQLite'}")
    print(f"handed in   {in_s:6.2f} s   slowest batch {slowest_s * 1000:.0f} ms")
    print(f"fetched     {out_s:6.2f} s")
    print(f"peer        {alone_s:6.2f} s   SQLite alone; ratio {in_s / alone_s:.1f}")
    print("within the aim" if in_s <= AIM_S else f"NOT within the aim of {AIM_S:.0f} s")


if __name__ == "__main__":
    main()
