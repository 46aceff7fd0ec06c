"""What the demo's other trucks hold is what their builder makes, and shows what the builder says."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).resolve().parents[2]
BUILDER = ROOT / "builders" / "build_demo_fleet.py"


@pytest.fixture(scope="module")
def builder() -> ModuleType:
    """The builder as a module."""
    spec = importlib.util.spec_from_file_location("build_demo_fleet", BUILDER)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def checked(builder: ModuleType, monkeypatch: pytest.MonkeyPatch) -> int:
    """What --check comes to."""
    monkeypatch.setattr(sys, "argv", ["build_demo_fleet.py", "--check"])
    return int(builder.main())


def test_the_files_in_the_tree_are_up_to_date():
    """Running the builder again would change nothing."""
    ran = subprocess.run([sys.executable, BUILDER, "--check"], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout) == (0, "fleet: current\n")


def test_a_file_that_was_altered_is_noticed(
    builder: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    """No file, then the right ones, then one figure changed and one photo put in another's place: both are named."""
    monkeypatch.setattr(builder, "YARD", tmp_path)
    assert checked(builder, monkeypatch) == 1
    monkeypatch.setattr(sys, "argv", ["build_demo_fleet.py"])
    assert builder.main() == 0
    assert checked(builder, monkeypatch) == 0
    reports = tmp_path / "truck-18" / "reports.csv"
    reports.write_text(reports.read_text(encoding="utf-8").replace("12.11", "12.12", 1), encoding="utf-8")
    photos = tmp_path / "truck-15" / "photos"
    (photos / "ground.jpg").write_bytes((photos / "bare-joint.jpg").read_bytes())
    capsys.readouterr()
    assert checked(builder, monkeypatch) == 1
    assert [line.split(":")[0] for line in capsys.readouterr().out.splitlines()] == [
        "truck-18/reports.csv",
        "truck-15/photos/ground.jpg",
    ]


def test_the_24_V_crank_ends_just_above_its_limit(builder: ModuleType):
    """Plateau 20.92 V, ripple 0.38 V, dip 1.02 V: the ignition wire's lowest is above 20 V, by less than the 0.1 V."""
    rows = [row.split(",") for row in builder.texts()["truck-15/recordings/crank.csv"].splitlines()[1:]]
    lowest = min(float(row[3]) for row in rows if 2.4 <= float(row[0]) < 3.3)
    assert 20.0 < lowest < 20.1


def test_one_unit_was_heard_for_a_night_and_the_other_was_not(builder: ModuleType):
    """Truck 15's last report is of the next morning; truck 18's of the same afternoon, an hour after key-off."""
    last = {truck: builder.texts()[f"{truck}/reports.csv"].splitlines()[-1].split(",") for truck in builder.STARTS}
    assert last["truck-15"][0] == "LN2-00431"
    assert last["truck-15"][1].startswith("2026-03-31T06:")
    assert last["truck-18"][0] == "TL5-10641"
    assert last["truck-18"][1].startswith("2026-04-01T13:")


def test_a_24_V_unit_reports_24_volts(builder: ModuleType):
    """At rest two batteries in series less the unit's diode: twice 12.31 V; charging twice 13.72 V."""
    volts = [float(row.split(",")[9]) for row in builder.texts()["truck-15/reports.csv"].splitlines()[1:]]
    assert min(volts) == pytest.approx(2 * 12.12, abs=0.03)
    assert max(volts) == pytest.approx(2 * 13.72, abs=0.03)
