"""How long a record takes: the first in a fresh process, and the next ones, beside the floor of one line of text.

Run: .venv/bin/python bench/record_pdf.py
The peer is the typesetter alone on a document of one line with the same fonts and standards: what the record costs
above it is its own. Times are medians of wall-clock milliseconds; the ratio is what to compare between machines.
"""

import hashlib
import math
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

SOURCE = Path(__file__).resolve().parents[1] / "src"
sys.path.insert(0, str(SOURCE))

from backprobe.drawings.trace import CrankSpan, KeySpan, LimitLine, Trace, Waveform  # noqa: E402
from backprobe.drawings.waveform import described_waveform, waveform  # noqa: E402
from backprobe.drawings.wiring import DrawnLead, Wiring, described, wiring  # noqa: E402
from backprobe.files.photos import paper_photo  # noqa: E402
from backprobe.findings import Finding, Limit, Side, Stage, Standing, judge, worst  # noqa: E402
from backprobe.job.readings_grid import GridRow, ReadingsGrid  # noqa: E402
from backprobe.paper import record  # noqa: E402
from backprobe.paper.content import (  # noqa: E402
    ChoiceRow,
    IdentityRow,
    JoinedRow,
    Picture,
    RecordContent,
    ShownPhoto,
)

COLD_RUNS, WARM_RUNS = 5, 15
PHOTOS = sorted((SOURCE.parent / "demo" / "linden-yard" / "truck-07" / "photos").iterdir())
ONE_LINE = b'#set document(title: "x")\n#set text(lang: "en", font: "Atkinson Hyperlegible")\n= One line'


def finding(number: int) -> Finding:
    limit = Limit("crank", 9.0, "V", Side.AT_LEAST, "lowest supply while the starter turns", Standing.COMMON_PRACTICE)
    value = round(8.6 + number % 17 / 10, 2)
    return Finding(
        id=str(number),
        stage=Stage.PROBE,
        what=f"wire {number} while cranking",
        verdict=judge(limit, value, low=value - 0.3, high=value + 0.05),
        because="MIN hold over three cranks; the range allows for what a hold of 100 ms misses.",
        value=value,
        low=value - 0.3,
        high=value + 0.05,
        unit="V",
        limit=limit,
    )


def crank(rows: int) -> Waveform:
    """A made-up crank of 12 s on four wires."""

    def volts(time_s: float) -> float:
        turning = 10.2 + 0.3 * math.sin(2 * math.pi * 9 * time_s)
        return 12.5 if time_s < 6 else turning if time_s < 7 else 14.0

    times = [12 * row / rows for row in range(rows)]
    points = tuple((time_s, volts(time_s), volts(time_s) + 0.05) for time_s in times)
    return Waveform(
        traces=tuple(Trace(name, points) for name in ("battery", "red 2.5", "yellow/black", "grey 1.0")),
        limits=(LimitLine(9.0, "9 V supply"), LimitLine(10.0, "10 V ignition")),
        keys=(KeySpan(0, 6, "on"), KeySpan(6, 7, "crank"), KeySpan(7, 12, "running")),
        cranks=(CrankSpan(6, 7),),
    )


def content(findings: int, *, journal_bytes: int) -> RecordContent:
    line = b'{"body":{"key":"crank","volts":"12.30","wire":"red 2.5"},"kind":"reading","v":1}\n'
    journal = line * (journal_bytes // len(line))
    found = tuple(finding(number) for number in range(findings))
    wave = crank(3000)
    return RecordContent(
        title="Wire finding record",
        verdict=worst(one.verdict for one in found),
        sentence="Invented figures, to measure how long the page takes.",
        identity=(IdentityRow("Vehicle", "Harrow & Vale Linnet 18 t"), IdentityRow("Unit", "Tarn TX-5")),
        choices=(ChoiceRow(lead="Supply", wire="red 2.5"), ChoiceRow(lead="Ignition", wire=None)),
        findings=found,
        pictures=(Picture(svg=waveform(wave), caption="The crank", alt=described_waveform(wave)),),
        journal=journal,
        journal_name="journal.jsonl",
        journal_digest=hashlib.sha256(journal).hexdigest(),
        engine_version="0",
    )


def whole_job(findings: int, *, photos: int) -> RecordContent:
    """The same with everything that stands behind the findings; the photos are made ready each time, as a job does."""
    leads = tuple(DrawnLead(lead=f"lead {n}", wire=f"wire {n}", joint="soldered sleeve", fuse="3 A") for n in range(4))
    built = Wiring(vehicle="Drover 7", unit="Lantern 2", leads=leads)
    grid = ReadingsGrid(tuple("abcdef"), tuple(GridRow(f"wire {n}", (("12.30 V", "12.1 V"),) * 6) for n in range(6)))
    return replace(
        content(findings, journal_bytes=20_000),
        wiring=Picture(svg=wiring(built), caption="As built", alt=described(built)),
        readings=grid,
        photos=tuple(shown(PHOTOS[n % len(PHOTOS)]) for n in range(photos)),
        joined=tuple(JoinedRow(lead=lead.lead, joined="to a wire", undo="cut it out") for lead in leads),
        driver_told=("call the yard",),
    )


def shown(path: Path) -> ShownPhoto:
    """A photo of the demo."""
    made = paper_photo(path, path.name)
    return ShownPhoto(
        jpeg=made.jpeg,
        width_px=made.width_px,
        height_px=made.height_px,
        shows="Photo",
        note=None,
        source=path.name,
        alt="a photo",
    )


def one_line() -> None:
    import typst

    compiler = typst.Compiler(ONE_LINE, font_paths=record._fonts(), ignore_system_fonts=True)
    compiler.compile(format="pdf", pdf_standards=["a-3a", "ua-1"], timestamp=0)


def median_ms(work: Callable[[], object], runs: int) -> float:
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1e3)
    return statistics.median(times)


def in_fresh_process(name: str) -> float:
    """Milliseconds of `name` as the first thing a process does, imports of the typesetter and fonts included."""
    command = [sys.executable, __file__, "--first", name]
    runs = [subprocess.run(command, capture_output=True, text=True, check=True).stdout for _ in range(COLD_RUNS)]
    return statistics.median(float(run) for run in runs)


def record_job(findings: int, *, journal_bytes: int) -> Callable[[], object]:
    """Writing one record; its content, the waveform included, is made beforehand."""
    made = content(findings, journal_bytes=journal_bytes)
    return lambda: record.write_record(made)


def record_whole_job(findings: int, *, photos: int) -> Callable[[], object]:
    return lambda: record.write_record(whole_job(findings, photos=photos))


JOBS: dict[str, Callable[[], Callable[[], object]]] = {
    "one line (the typesetter alone)": lambda: one_line,
    "10 findings, waveform, 20 kB journal": lambda: record_job(10, journal_bytes=20_000),
    "30 findings, all parts, 3 photos": lambda: record_whole_job(30, photos=3),
    "30 findings, all parts, 12 photos": lambda: record_whole_job(30, photos=12),
    "200 findings, waveform, 20 kB journal": lambda: record_job(200, journal_bytes=20_000),
    "10 findings, waveform, 5 MB journal": lambda: record_job(10, journal_bytes=5_000_000),
}


def main() -> None:
    floor_cold = floor_warm = 0.0
    print(f"{'':40}{'first':>10}{'next':>10}{'first, ratio':>15}{'next, ratio':>14}")
    for name, prepared in JOBS.items():
        cold = in_fresh_process(name)
        job = prepared()
        job()
        warm = median_ms(job, WARM_RUNS)
        floor_cold, floor_warm = floor_cold or cold, floor_warm or warm
        print(f"{name:40}{cold:8.0f}ms{warm:8.1f}ms{cold / floor_cold:14.1f}×{warm / floor_warm:13.1f}×")


if __name__ == "__main__":
    if sys.argv[1:2] == ["--first"]:
        print(median_ms(JOBS[sys.argv[2]](), 1))
    else:
        main()
