"""The demo's recording is the one that its builder makes, and shows what the builder says."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).resolve().parents[2]
BUILDER = ROOT / "builders" / "build_demo.py"


@pytest.fixture(scope="module")
def builder() -> ModuleType:
    """The builder as a module."""
    spec = importlib.util.spec_from_file_location("build_demo", BUILDER)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # dataclasses look their module up
    spec.loader.exec_module(module)
    return module


def test_the_recording_in_the_tree_is_up_to_date():
    """Running the builder again would change nothing."""
    ran = subprocess.run([sys.executable, BUILDER, "--check"], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout) == (0, "crank.csv: current\n")


def test_a_recording_that_was_altered_is_noticed(builder: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """--check on a file with one figure changed, and on no file at all; writing puts it right."""
    monkeypatch.setattr(builder, "OUT", tmp_path / "recordings" / "crank.csv")
    monkeypatch.setattr(sys, "argv", ["build_demo.py", "--check"])
    assert builder.main() == 1
    monkeypatch.setattr(sys, "argv", ["build_demo.py"])
    assert builder.main() == 0
    monkeypatch.setattr(sys, "argv", ["build_demo.py", "--check"])
    assert builder.main() == 0
    builder.OUT.write_text(builder.text().replace("12.620", "12.621", 1), encoding="utf-8")
    assert builder.main() == 1


def test_the_recording_has_the_rows_that_its_times_ask_for(builder: ModuleType):
    """6.4 s at 4 ms are 1600 rows, the last one at 6.396 s, each with a time and four channels."""
    head, *rows = builder.text().splitlines()
    assert head == "time_s,battery,X12/4 RD,X12/9 VT,X12/6 GY"
    assert len(rows) == round(6.4 / 0.004) == 1600
    assert rows[-1].startswith("6.396,")
    assert {row.count(",") for row in rows} == {4}


def test_the_crank_has_a_trough_a_plateau_and_a_generator(builder: ModuleType):
    """Rest 12.62 V, key on 12.41 V, a trough of 11.15 ± 0.22 - 0.85 V, charging 14.05 V at the end."""
    level = builder.battery_V
    assert level(0.5) == 12.62
    assert level(2.0) == 12.41
    trough = min(level(2.4 + ms / 1000) for ms in range(100))
    assert 11.15 - 0.22 - 0.85 < trough < 11.15 + 0.22 - 0.85
    assert abs(level(6.39) - 14.05) < 0.01


def test_the_wires_follow_the_key(builder: ModuleType):
    """Supply always live; ignition dead until key on, live in the crank; accessory dead in the crank."""
    supply, ignition, accessory = zip(*(row(builder, at) for at in (0.5, 2.0, 3.0, 5.0)), strict=True)
    assert all(volts > 10 for volts in supply)
    assert [volts > 10 for volts in ignition] == [False, True, True, True]
    assert [volts > 10 for volts in accessory] == [False, True, False, True]


def row(builder: ModuleType, time_s: float) -> list[float]:
    """Volts of supply, ignition and accessory wire at a time."""
    return [float(cell) for cell in builder.row_at(round(time_s / builder.STEP_S)).split(",")[2:]]
