"""The engine says in the browser's Python, byte for byte, what it says on the desk."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path
from typing import Any

import pytest
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.navigation import constellation, rinex3, sem, yuma
from tests.samples.prove_world import FAULTS, PLACE, reports_text, script_text, world_of
from tests.samples.receiver_world import World, log_lines

from backprobe.evidence.corner import Corner, CornerIndex, sorted_corners
from backprobe.formats.corner_index import write_corner_index

HERE = Path(__file__).resolve().parent
SRC = HERE.parents[1] / "src"
BELOW = ("job", "tongues", "stages", "drawings", "formats", "inference", "limits", "physics", "evidence")
DEMO = HERE.parents[1] / "demo"
SUPPLY = HERE.parents[2] / "shared" / "data" / "supply"
NMEA = SUPPLY.parent / "nmea"
BUS = SUPPLY.parent / "can"
PROVE_FILES = ("key-script.csv", "reports.csv", "lights.csv", "corners.txt")
TOP = ("__init__.py", "findings.py", "errors.py")

# booting takes seconds, so all tests here share one worker and one boot
pytestmark = pytest.mark.xdist_group("pyodide")


def engine_files() -> list[Path]:
    """The modules below the browser line."""
    package = SRC / "backprobe"
    return [package / name for name in TOP] + sorted(path for room in BELOW for path in (package / room).rglob("*.py"))


def module_name(path: Path) -> str:
    """The name by which a module is imported."""
    return path.relative_to(SRC).with_suffix("").as_posix().replace("/", ".").removesuffix(".__init__")


@pytest.fixture(scope="module")
def engine(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A zip with what stands below the browser line, and nothing else."""
    path = tmp_path_factory.mktemp("engine") / "engine.zip"
    with zipfile.ZipFile(path, "w") as archive:
        for file in engine_files():
            archive.write(file, file.relative_to(SRC))
    return path


def job_parts(folder: Path) -> dict[str, Any]:
    """A job folder as the engine's door takes it: every file's text under its name."""
    sheet = (folder / "job.toml").read_text(encoding="utf-8")
    named = tomllib.loads(sheet)
    meter = named.get("meter", {}).get("file")
    recordings = sorted((folder / "recordings").glob("*.csv"))
    may_be_missing = {
        name: path.read_text(encoding="utf-8") if (path := folder / name).is_file() else None
        for name in ("readings.csv", "walkround.toml", "mount.toml")
    }
    return {
        "job.toml": sheet,
        "unit": (folder / named["unit"]["sheet"]).read_text(encoding="utf-8"),
        "meter": None if meter is None else (folder / meter).read_text(encoding="utf-8"),
        **may_be_missing,
        **{name: (folder / name).read_text(encoding="utf-8") for name in PROVE_FILES if (folder / name).exists()},
        "recordings": {path.name: path.read_text(encoding="utf-8") for path in recordings},
    }


def judged(parts: dict[str, Any]) -> dict[str, Any]:
    """The call that judges a job."""
    return {"function": "backprobe.job.door:judge_text", "by_position": [json.dumps(parts)], "by_name": {}}


def read(table: Path) -> dict[str, Any]:
    """The call that reads a table of readings."""
    lines = table.read_text(encoding="utf-8").splitlines()
    by_name = {"file": table.name, "system_V": 12}
    return {"function": "backprobe.formats.readings_csv:read_readings", "by_position": [lines], "by_name": by_name}


PARKED = """
[battery]
kind = "flooded"
capacity_Ah = 110
age_years = 2
rest_V = "12.60"
hours_since_charge = 24
temperature_C = 18

[parked]
vehicle_drain_mA = "25"
minutes_after_lock = 60
coldest_C = -5
wanted_days = 14
"""


def proven(fault: str | None) -> dict[str, Any]:
    """The call that proves an invented unit with a fault, or without."""
    world = world_of(fault, 7)
    parts = {"script": script_text(world), "reports": reports_text(world), "unit_id": "LN2-00417"}
    return {"function": "backprobe.stages.prove.door:prove_text", "by_position": [json.dumps(parts)], "by_name": {}}


def seen(nav: list[str] | None) -> dict[str, Any]:
    """The call that holds the demo's places for a unit against the sky: the nominal one, or that of a file."""
    sheet = (DEMO / "linden-yard" / "truck-07" / "mount.toml").read_text(encoding="utf-8")
    parts = {"mount.toml": sheet, "lat": 51.48, "lon": -0.01, "date": "2021-04-29", "time": "14:30"}
    parts |= {"nav": None if nav is None else "\n".join(nav)}
    return {"function": "backprobe.stages.mount.door:sky_text", "by_position": [json.dumps(parts)], "by_name": {}}


def named() -> dict[str, Any]:
    """The call that proves an invented unit and names where it reports itself: some 40 m off a corner."""
    world = world_of(None, 7)
    corners = [Corner(PLACE[0] + at, PLACE[1] - at, (f"Street {at}", "Mill Lane")) for at in (0.00025, 0.0004, 0.9)]
    index = write_corner_index(CornerIndex(corners=sorted_corners(corners), attribution="x", source="y"))
    parts = {"script": script_text(world), "reports": reports_text(world), "unit_id": "LN2-00417", "corners": index}
    return {"function": "backprobe.stages.prove.door:prove_text", "by_position": [json.dumps(parts)], "by_name": {}}


def listed() -> dict[str, Any]:
    """The call that reads a roster with every kind of damage in it."""
    rows = [f"LY {n:02};{n};0000041{n};51,0{n};7,0{n};31.03.2026" for n in range(6)]
    rows += ["LY 00;9;1.2E+10;;;soon", "LY 07;3-Dec;00000;91;7;", "LY 08;;417;;;;more", 'LY 09;"nine\nteen";00418;0;0;']
    lines = ["Reg;Fleet No;Serial;Lat;Lon;Day", *"\n".join(rows).split("\n")]
    return {
        "function": "backprobe.formats.roster_csv:read_roster",
        "by_position": [lines],
        "by_name": {"file": "trucks.csv"},
    }


def listened(name: str, log: str) -> dict[str, Any]:
    """The call that judges a bus log."""
    parts = {"file": name, "log": log, "vin": "1M8GDM9AXKP042788"}
    return {"function": "backprobe.stages.bus.door:bus_text", "by_position": [json.dumps(parts)], "by_name": {}}


def bus_logs() -> dict[str, dict[str, Any]]:
    """Bus logs: invented ones of 12 and 24 V, a real truck's key cycle, a real car's engine data."""
    invented = {f"bus {scale:g} × 12 V": "\n".join(aligned(key_cycle(scale=scale))) for scale in (1.0, 2.0)}
    real = (BUS / "truck-key-cycle.candump.txt", SUPPLY / "obd-idle3.csv")
    logs = invented | {f"bus {path.name}": path.read_text(encoding="utf-8") for path in real if path.is_file()}
    return {name: listened(name, log) for name, log in logs.items()}


def receiver_log(seed: int) -> str:
    """The log of an invented receiver under a partly blocked sky."""
    world = World(seed=seed, satellites=24, systems=("GP", "GL"), minutes=5, blocked=(90, 210, 90, 22))
    return "\n".join(log_lines(world))


def receiver_logs() -> list[Path]:
    """Real receivers' logs, where they are at hand."""
    return sorted(path for path in NMEA.glob("*.*") if path.suffix in {".log", ".nmea"})


def received(file: str, log: str) -> dict[str, Any]:
    """The call that judges and draws a receiver's log."""
    asked = json.dumps({"file": file, "log": log, "heading_deg": 40})
    return {"function": "backprobe.job.reception_door:reception_text", "by_position": [asked], "by_name": {}}


def calls() -> dict[str, dict[str, Any]]:
    """What is compared: demo jobs, sample tables with their defects, and a demo job with real recordings in it."""
    jobs = {sheet.parent.name: job_parts(sheet.parent) for sheet in sorted(DEMO.glob("*/*/job.toml"))}
    tables = sorted((HERE.parent / "samples" / "readings").glob("*.csv"))
    real = {path.name: path.read_text(encoding="utf-8") for path in sorted(SUPPLY.glob("obd-[di]*.csv"))}
    first, second = jobs["truck-07"], jobs["truck-12"]
    return {
        **{f"demo {name}": judged(parts) for name, parts in jobs.items()},
        **{f"table {path.name}": read(path) for path in tables},
        **{f"prove {fault}": proven(fault) for fault in (None, *FAULTS)},
        "sky nominal": seen(None),
        "sky RINEX": seen(rinex3(constellation(31))),
        "sky YUMA": seen(yuma(constellation(31, plain=True))),
        "sky SEM": seen(sem(constellation(31, plain=True))),
        **bus_logs(),
        "corners": named(),
        "roster": listed(),
        "parked battery": judged({**second, "job.toml": second["job.toml"] + PARKED}),
        **{f"real {name}": judged({**first, "recordings": {name: text}}) for name, text in real.items()},
        "logs of a job": judged({**first, "nmea": {f"nmea/{seed}.nmea": receiver_log(seed) for seed in (3, 4)}}),
        **{f"invented log {seed}": received(f"{seed}.nmea", receiver_log(seed)) for seed in (3, 4, 5)},
        **{f"heard {path.name}": received(path.name, path.read_text(encoding="latin-1")) for path in receiver_logs()},
    }


@pytest.fixture(scope="module")
def request_text() -> str:
    """What both are asked: every module, every example in a docstring, and the calls below."""
    names = {module_name(path): path.read_text(encoding="utf-8") for path in engine_files()}
    examples = [name for name, text in names.items() if ">>> " in text]
    return json.dumps({"modules": list(names), "examples": examples, "calls": calls()})


def on_desk(engine: Path, request_text: str, *, hash_seed: int) -> dict[str, Any]:
    """The answer of this machine's Python, without any installed package, with strings hashed by `hash_seed`."""
    env = {**os.environ, "PYTHONPATH": str(engine), "PYTHONHASHSEED": str(hash_seed)}
    command = [sys.executable, "-S", HERE / "engine_run.py"]
    done = subprocess.run(command, input=request_text, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return dict(json.loads(done.stdout))


@pytest.fixture(scope="module")
def desk(engine: Path, request_text: str) -> dict[str, Any]:
    """The answer of this machine's Python."""
    return on_desk(engine, request_text, hash_seed=1)


@pytest.fixture(scope="module")
def browser(engine: Path, request_text: str, node: Path, pyodide_package: Path) -> dict[str, Any]:
    """The answer of the browser's Python."""
    command = [node, HERE / "boot.mjs", pyodide_package, engine, HERE / "engine_run.py"]
    done = subprocess.run(command, input=request_text, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return dict(json.loads(done.stdout))


def test_the_browser_runs_another_python(desk: dict[str, Any], browser: dict[str, Any]) -> None:
    """The comparison is between two Pythons, not of one with itself."""
    assert browser["platform"] == "emscripten"
    assert desk["platform"] != "emscripten"


def test_every_module_can_be_imported_there(browser: dict[str, Any]) -> None:
    """Nothing below the line needs what the browser's Python lacks."""
    assert len(browser["modules"]) > 10
    assert browser["modules"] == [module_name(path) for path in engine_files()]


def test_nothing_below_the_line_needs_an_installed_package(desk: dict[str, Any]) -> None:
    """Nor does it need a package, or a module from above the line."""
    assert desk["modules"] == [module_name(path) for path in engine_files()]


def test_examples_in_docstrings_hold_there(browser: dict[str, Any]) -> None:
    """Each >>> line gives there what the docstring shows."""
    assert browser["examples"]
    assert {name: counts for name, counts in browser["examples"].items() if counts[0] == 0 or counts[1] > 0} == {}


def test_answers_are_the_same_byte_for_byte(desk: dict[str, Any], browser: dict[str, Any]) -> None:
    """Each call gives the same text in both."""
    assert browser["calls"] == desk["calls"]


def test_what_is_compared_are_judgements(desk: dict[str, Any]) -> None:
    """The demo jobs are judged, not refused; one of them holds, one does not."""
    answers = [json.loads(json.loads(text)) for label, text in desk["calls"].items() if label.startswith("demo ")]
    assert [answer["ok"] for answer in answers] == [True] * len(answers)
    assert len({answer["verdict"] for answer in answers}) > 1


def test_real_recordings_are_among_what_is_compared(shared_data: Path, desk: dict[str, Any]) -> None:
    """Two real recordings are judged as part of a job."""
    answers = [json.loads(json.loads(text)) for label, text in desk["calls"].items() if label.startswith("real ")]
    assert [answer["ok"] for answer in answers] == [True, True]


def test_skies_are_answered(desk: dict[str, Any]) -> None:
    """The places are judged under each kind of orbits, none is refused, and the picture is compared with them."""
    skies = [json.loads(json.loads(text)) for label, text in desk["calls"].items() if label.startswith("sky ")]
    assert [(sky["ok"], sky["best"], sky["svg"][:4]) for sky in skies] == [(True, "on the overhead shelf", "<svg")] * 4


def test_answers_do_not_hang_on_the_order_of_hashes(engine: Path, request_text: str, desk: dict[str, Any]) -> None:
    """Strings that hash otherwise, so that sets of them come in another order, change nothing."""
    assert on_desk(engine, request_text, hash_seed=2)["calls"] == desk["calls"]
