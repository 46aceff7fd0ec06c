"""The demo's reports are those that their builder makes, and show what the builder says."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).resolve().parents[2]
BUILDER = ROOT / "builders" / "build_demo_reports.py"


@pytest.fixture(scope="module")
def builder() -> ModuleType:
    """The builder as a module."""
    spec = importlib.util.spec_from_file_location("build_demo_reports", BUILDER)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # dataclasses look their module up
    spec.loader.exec_module(module)
    return module


def test_the_files_in_the_tree_are_up_to_date():
    """Running the builder again would change nothing."""
    ran = subprocess.run([sys.executable, BUILDER, "--check"], capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout
    assert ran.stdout.count(": current\n") == 4


def test_a_file_that_was_altered_is_noticed(builder: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """--check on no file, on the right one, and on one with a figure changed."""
    monkeypatch.setattr(builder, "YARD", tmp_path)
    for truck in ("truck-07", "truck-12"):
        (tmp_path / truck).mkdir()
    monkeypatch.setattr(sys, "argv", ["build", "--check"])
    assert builder.main() == 1
    monkeypatch.setattr(sys, "argv", ["build"])
    assert builder.main() == 0
    monkeypatch.setattr(sys, "argv", ["build", "--check"])
    assert builder.main() == 0
    file = tmp_path / "truck-12" / "reports.csv"
    file.write_text(file.read_text(encoding="utf-8").replace("12.11", "12.12", 1), encoding="utf-8")
    assert builder.main() == 1


def test_a_true_ignition_is_reported_after_its_debounce(builder: ModuleType):
    """On 2 s after 14:13:22, off 20 s after 14:20:37; neither accessory nor a crank of 3 s shows."""
    assert builder.ignition_events(builder.SEVEN) == [
        (builder.clock(14, 13, seconds=24), "ignition_on"),
        (builder.clock(14, 20, seconds=57), "ignition_off"),
    ]


def test_an_accessory_wire_goes_on_in_accessory(builder: ModuleType):
    """On 2 s after 10:04:33, off 20 s after 10:07:40; again with the ignition; its 3 s in the crank do not show."""
    events = [(at, event) for at, event in builder.ignition_events(builder.TWELVE)]
    assert [event for _, event in events] == ["ignition_on", "ignition_off"] * 2
    assert events[0][0] == builder.clock(10, 4, seconds=35)


def test_each_export_holds_what_had_arrived_by_then(builder: ModuleType):
    """At noon truck 12's unit alone; the next morning both, and truck 7's over more than eight hours of night."""
    noon = builder.files()[builder.YARD / "truck-12" / "reports.csv"]
    assert {line.split(",")[0] for line in noon.splitlines()[1:]} == {"LN2-00422"}
    morning = builder.files()[builder.YARD / "truck-07" / "reports.csv"].splitlines()
    seven = [line for line in morning if line.startswith("LN2-00417")]
    assert seven[-1].split(",")[1] > "2026-04-01T05:30"
    assert sum(1 for line in seven if ",boot" in line) == 1
