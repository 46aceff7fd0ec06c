"""The proof under way: the plan for this unit and vehicle, what the unit says, what its lights mean."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from tests.job.test_journal_door import Held
from tests.samples.demo_jobs import DEMO
from tests.samples.jobs import demo_job

from backprobe.cli.main import main
from backprobe.job.proof_door import proof_text


@pytest.fixture
def held(tmp_path: Path) -> Held:
    """Truck 7's journal."""
    return Held(demo_job(tmp_path, "truck-07"))


def told(held: Held) -> dict[str, Any]:
    """What the door says."""
    return dict(json.loads(proof_text(held.asked())))


def test_the_plan_is_that_of_the_terminal(held: Held, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Step for step, by the same sheets."""
    assert main(["prove", "--plan", "--job", str(next(tmp_path.rglob("truck-07")) / "job.toml"), "--json"]) == 0
    assert told(held)["plan"] == json.loads(capsys.readouterr().out)["plan"]


def test_a_position_that_the_vehicle_lacks_is_not_planned(tmp_path: Path) -> None:
    """Somebody found before any reading that there is no accessory."""
    folder = demo_job(tmp_path, "truck-07")
    (folder / "readings.csv").unlink()
    held = Held(folder)
    held.say("absent_key", {"key": "accessory", "file": None})
    assert [step["key"] for step in told(held)["plan"]] == ["off", "on", "crank", "running", "off", "doors_shut"]


def test_what_the_unit_says_and_what_its_lights_showed(held: Held) -> None:
    """The demo's unit was heard to its end, off by then, a neighbour beside it; each light was seen as stated."""
    found = told(held)
    reports = (DEMO / "truck-07" / "reports.csv").read_text(encoding="utf-8").splitlines()[1:]
    own = [line for line in reports if line.startswith("LN2-00417,")]
    assert (found["heard"]["count"], found["heard"]["others"]) == (len(own), len(reports) - len(own))
    assert found["heard"]["ignition"] is False
    assert {light["light"]: light["as_stated"] for light in found["lights"]} == {"network": True, "sky": True}


def test_a_light_seen_on_the_phone_counts(held: Held) -> None:
    """Said again on a phone, beside no file: dark, which is not as stated."""
    held.say("light_seen", {"file": None, "line": None, "light": "network", "pattern": "dark", "after_s": None})
    network = next(light for light in told(held)["lights"] if light["light"] == "network")
    assert (network["seen"], network["as_stated"], network["colour"]) == ("dark", False, "green")


@pytest.mark.parametrize("text", ["", "{}", "[]", '{"entries": [], "blobs": {}}'])
def test_what_cannot_be_used_is_refused_in_one_shape(text: str) -> None:
    """Never an exception."""
    found = json.loads(proof_text(text))
    assert found["ok"] is False
    assert found["error"]
