"""`backprobe join` from the terminal."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from backprobe.cli.main import main

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")

ROOT = Path(__file__).resolve().parents[2]
UNIT = ROOT / "demo" / "linden-yard" / "unit.toml"
SHEET = """[vehicle]
system_V = 12
[unit]
sheet = "unit.toml"
[[joint]]
lead = "power"
wire = "Red"
method = "crimped_butt"
fuse_A = 20
length_m = 3
[[joint]]
lead = "ground"
method = "ring_terminal"
place = "painted floor panel"
length_m = 1
[join]
tap_drop_mV = 80
tap_load_A = 2
crank_level = "I"
[ground]
drop_mV = 340
load_A = 2
"""


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    """A job whose ground is poor and whose thin lead has too large a fuse."""
    (tmp_path / "job.toml").write_text(SHEET, encoding="utf-8")
    (tmp_path / "unit.toml").write_text(UNIT.read_text(encoding="utf-8"), encoding="utf-8")
    return tmp_path / "job.toml"


def test_the_answer_in_json_fits_its_schema(sheet: Path, capsys: pytest.CaptureFixture[str]):
    """Poor ground and over-fused lead are both found, with value, range, limit and basis."""
    assert main(["join", str(sheet), "--json"]) == 1
    answer = json.loads(capsys.readouterr().out)
    schema = json.loads((ROOT / "schemas" / "join.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate(answer)
    found = {each["id"]: each for each in answer["findings"]}
    assert answer["verdict"] == "fails"
    assert (found["join_ground_drop"]["verdict"], found["join_ground_drop"]["value"]) == ("fails", 340.0)
    assert found["join_ground_place"]["verdict"] == "fails"
    assert found["join_supply_wire_over_fuse"]["verdict"] == "fails"
    assert found["join_supply_wire_over_fuse"]["limit"]["value"] == 27.0  # 1.35 × 20 A


def test_the_answer_in_words(sheet: Path, capsys: pytest.CaptureFixture[str]):
    """The verdict first, the next step last."""
    assert main(["join", str(sheet)]) == 1
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "wire, fuse, ground, joint: fails"
    assert lines[-1].startswith("next: ")
    assert any("fails: The ground under load 340 mV" in line for line in lines)


def test_a_policy_that_loosens_is_refused(sheet: Path, capsys: pytest.CaptureFixture[str]):
    """With file, line and what is allowed; a tighter one is taken and named."""
    policy = sheet.parent / "fleet.toml"
    policy.write_text("[join]\nground_drop_mV = 500\n", encoding="utf-8")
    assert main(["join", str(sheet), "--policy", str(policy)]) == 2
    assert "never loosen it" in capsys.readouterr().err
    policy.write_text("[join]\nground_drop_mV = 50\n", encoding="utf-8")
    assert main(["join", str(sheet), "--policy", str(policy), "--json"]) == 1
    assert json.loads(capsys.readouterr().out)["policy"] == "fleet.toml"
