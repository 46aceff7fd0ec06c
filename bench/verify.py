"""How long verifying takes, beside what nobody can do without: digests of the bytes, JSON of the lines, one signature.

Run: .venv/bin/python bench/verify.py
The floor reads the same journal with hashlib and json alone and checks one Ed25519 signature; the ratio, of the whole
record to the floor, is what to compare between machines. Times are medians of wall-clock milliseconds.
"""

import hashlib
import json
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

from tests.samples.journals import Phone  # noqa: E402
from tests.samples.signing import JUDGED, KEY, journal_bytes, signed_off  # noqa: E402

from backprobe.cases.verify import verify  # noqa: E402
from backprobe.findings import Verdict  # noqa: E402
from backprobe.job.covered import rows_of  # noqa: E402
from backprobe.job.entry import Entry, digest  # noqa: E402
from backprobe.job.sign_off import ATTACHED, bytes_to_sign, digests_text  # noqa: E402
from backprobe.job.verified import Held, Result, verified  # noqa: E402
from backprobe.keys.ed25519 import signature_holds  # noqa: E402
from backprobe.paper.content import Attachment, RecordContent  # noqa: E402
from backprobe.paper.record import write_record  # noqa: E402

RUNS = 9
SIZES = (100, 1_000, 10_000)
NAMES = {KEY: "Ines"}
FINDINGS, HAND_OVER = b'{"findings":[],"verdict":"holds"}', b'{"end":"proven"}'


def journal(readings: int) -> list[Entry]:
    """So many readings of one phone, and a sign-off over them."""
    phone = Phone()
    keys = ("off", "on", "crank", "after", "running")
    for number in range(readings):
        phone.reads(f"Wire {number // 5}", keys[number % 5], f"12.{number % 100:02}")
    judged = replace(JUDGED, findings=digest(FINDINGS), hand_over=digest(HAND_OVER))
    return [*phone.entries, signed_off(phone.entries, judged=judged)]


def floor(content: bytes, entry: Entry) -> None:
    """Digests, JSON, one signature; nothing is compared with anything."""
    hashlib.sha256(content).hexdigest()
    for line in content.splitlines():
        hashlib.sha256(line).hexdigest()
        json.loads(line)
    assert signature_holds(KEY, str(entry.body["signature"]), message=bytes_to_sign(entry))


def record(entries: list[Entry]) -> bytes:
    """A record of the journal, with the list of digests that was signed."""
    content = journal_bytes(entries)
    listed = digests_text(entries[:-1])
    return write_record(
        RecordContent(
            title="Record",
            verdict=Verdict.HOLDS,
            sentence="Invented, to measure how long verifying takes.",
            journal=content,
            journal_name="journal.jsonl",
            journal_digest=hashlib.sha256(content).hexdigest(),
            engine_version="0",
            attached=tuple(
                Attachment(name, each, name) for name, each in zip(ATTACHED, (FINDINGS, HAND_OVER, listed), strict=True)
            ),
        )
    )


def median_ms(work: Callable[[], object]) -> float:
    work()
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1e3)
    return statistics.median(times)


def measured(entries: list[Entry], path: Path) -> tuple[float, float, float]:
    """Milliseconds of the floor, of checking the journal, and of verifying the record at `path`."""
    content = journal_bytes(entries)
    listed = digests_text(entries[:-1])
    held = Held(blob={digest(listed): listed}.get)
    path.write_bytes(record(entries))
    assert verify(path, NAMES).verified.result is Result.INTACT
    return (
        median_ms(lambda: floor(content, entries[-1])),
        median_ms(lambda: verified(rows_of(content), held, signature_holds=signature_holds, names=NAMES)),
        median_ms(lambda: verify(path, NAMES)),
    )


def main() -> None:
    print(f"{'entries':>8}{'journal':>10}{'floor':>11}{'journal checked':>18}{'the whole PDF':>16}{'ratio':>9}")
    with tempfile.TemporaryDirectory() as folder:
        for size in SIZES:
            entries = journal(size)
            least, checked, whole = measured(entries, Path(folder) / "record.pdf")
            kB = len(journal_bytes(entries)) / 1e3
            print(f"{size:8}{kB:8.0f}kB{least:9.1f}ms{checked:16.1f}ms{whole:14.1f}ms{whole / least:8.1f}×")


if __name__ == "__main__":
    main()
