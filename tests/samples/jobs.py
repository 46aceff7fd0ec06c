"""Jobs as texts, for tests: a good one whose every line can be changed, and copies of the demo's."""

from __future__ import annotations

import shutil
from pathlib import Path

from backprobe.findings import Finding
from backprobe.job.door import evidence_of
from backprobe.job.judge import JobEvidence, JobJudgement

DEMO = Path(__file__).resolve().parents[2] / "demo"
CRANK = (DEMO / "linden-yard" / "truck-07" / "recordings" / "crank.csv").read_text(encoding="utf-8")
# what proves the unit of the demo's first truck, whose serial the jobs here have as well
PROOF = {
    name: (DEMO / "linden-yard" / "truck-07" / name).read_text(encoding="utf-8")
    for name in ("key-script.csv", "reports.csv")
}
PLACE = "[place]\nlat = -33.10015\nlon = 151.20035\naccuracy_m = 5\n"

VEHICLE = """\
system_V = 12
vin = "5ZLDR7HV5KR200417"
model_year = 2019
heavy = true
"""
NAMED = """\
[[wire]]
name = "Red"
lead = "supply"
circuit = "body-builder connector, permanent supply, fuse F12"
[[wire]]
name = "Violet"
lead = "ignition"
circuit = "body-builder connector, ignition feed, fuse F31"
"""
UNIT = """\
name = "Lantern 2"
[supply]
least_V = 8.0
most_V = 32.0
[[lead]]
name = "power"
purpose = "supply"
[[lead]]
name = "ground"
purpose = "ground"
"""
WALKROUND = """\
[authority]
work_by = "Maud Linden"
crank_by = "Maud Linden"
[vehicle]
vin = "5ZLDR7HV5KR200417"
key_with = "Ines Okafor"
[devices]
looked_for = true
[before]
odometer_km = 184220
lamps = "none"
codes = "none"
[after]
odometer_km = 184221
lamps = "none"
codes = "none"
[unit]
serial = "LN2-00417"
activated = true
firmware = "4.2.1"
firmware_wanted = "4.2.1"
backup = false
lights = ["network: one flash a second"]
[hazards]
high_voltage = false
restraint_near_work = false
dual_batteries = false
battery_switch = false
dangerous_goods = false
trailer = false
system_48V = false
"""
HEADER = "wire,key,volts,capture,after_min,load_A"
# Red is a constant that falls by 0.11 V at 1.5 A, Violet an ignition; both were recorded through the crank
ROWS = """\
Red,off,12.62,,,
Violet,off,0.02,,,
Red,accessory,12.55,,,
Violet,accessory,0.03,,,
Red,on,12.40,,,
Red,on,12.29,,,1.5
Violet,on,12.37,,,
Red,crank,11.40,logged,,
Violet,crank,11.30,logged,,
Red,running,14.02,,,
Violet,running,13.99,,,
Red,after,12.58,,12,
"""


def parts(
    *,
    rows: str = ROWS,
    named: str = NAMED,
    vehicle: str = VEHICLE,
    unit: str = UNIT,
    walkround: str | None = WALKROUND,
    recordings: dict[str, str] | None = None,
) -> dict[str, object]:
    """A job as the engine's door takes it; good in all its parts unless one is given."""
    return {
        "job.toml": f'[vehicle]\n{vehicle}[unit]\nsheet = "unit.toml"\nserial = "LN2-00417"\n{PLACE}{named}',
        "unit": unit,
        "readings.csv": f"{HEADER}\n{rows}",
        "walkround.toml": walkround,
        **PROOF,
        "recordings": recordings or {},
    }


def evidence(
    *,
    rows: str = ROWS,
    named: str = NAMED,
    vehicle: str = VEHICLE,
    unit: str = UNIT,
    walkround: str | None = WALKROUND,
    recordings: dict[str, str] | None = None,
) -> JobEvidence:
    """The typed evidence of such a job."""
    return evidence_of(
        parts(rows=rows, named=named, vehicle=vehicle, unit=unit, walkround=walkround, recordings=recordings)
    )


def without(rows: str, *starts: str) -> str:
    """The rows without those that begin with one of `starts`, each of which must be there."""
    lines = rows.splitlines(keepends=True)
    assert all(any(line.startswith(start) for line in lines) for start in starts)
    return "".join(line for line in lines if not line.startswith(starts))


def crank_recording(red: str, violet: str, grey: str) -> str:
    """The demo's recording of a crank, with other names for its constant, ignition and accessory wire."""
    head, rows = CRANK.split("\n", 1)
    assert head == "time_s,battery,X12/4 RD,X12/9 VT,X12/6 GY"
    return f"time_s,battery,{red},{violet},{grey}\n{rows}"


def finding(judged: JobJudgement, name: str) -> Finding:
    """The one finding of that id."""
    (found,) = (each for each in judged.findings if each.id == name)
    return found


def demo_job(to: Path, truck: str) -> Path:
    """A fresh copy of a demo job, its unit sheet beside it; nothing that an earlier run left behind."""
    left = shutil.ignore_patterns("*journal*", "blobs")
    shutil.copytree(DEMO / "linden-yard", to / "linden-yard", ignore=left, dirs_exist_ok=True)
    return to / "linden-yard" / truck
