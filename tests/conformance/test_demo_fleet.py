"""The demo fleet: each job judges as demo/README.md says, and together they show every state of the work."""

from __future__ import annotations

import re
import shutil
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from tests.samples.demo_jobs import DEMO

from backprobe.cases.judge import judge_folder
from backprobe.findings import Finding, Verdict
from backprobe.stages.walkround.same_type import same_type

ROW = re.compile(r"^\| `(truck-\d\d)` \| (\w+) \| ([\w ]+) \|", re.M)
MOST_BYTES = 1_200_000
TRUCKS = sorted(path.parent.name for path in DEMO.glob("*/job.toml"))


def sheet(truck: str) -> dict[str, Any]:
    """A truck's job sheet as it is written."""
    return tomllib.loads((DEMO / truck / "job.toml").read_text(encoding="utf-8"))


@cache
def said() -> dict[str, tuple[str, str]]:
    """What the page says of each truck: verdict and technician."""
    return {row[1]: (row[2], row[3]) for row in ROW.finditer((DEMO.parent / "README.md").read_text(encoding="utf-8"))}


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the fleet without the journals that were made in it."""
    copy = tmp_path_factory.mktemp("demo") / "linden-yard"
    shutil.copytree(DEMO, copy, ignore=shutil.ignore_patterns("*journal*", "blobs"))
    return copy


def unsettled(yard: Path, truck: str) -> dict[str, Finding]:
    """What does not hold in a truck, by the findings' ids."""
    found = judge_folder(yard / truck).judged.findings
    return {each.id: each for each in found if each.verdict is not Verdict.HOLDS}


def test_the_page_tells_of_every_truck() -> None:
    """Between six and eight trucks, each of them in the table, with its technician."""
    assert sorted(said()) == TRUCKS
    assert 6 <= len(TRUCKS) <= 8
    assert {truck: sheet(truck)["job"]["technician"] for truck in TRUCKS} == {
        truck: who for truck, (_, who) in said().items()
    }


@pytest.mark.parametrize("truck", TRUCKS)
def test_each_truck_judges_as_the_page_says(truck: str, yard: Path) -> None:
    """The verdict of the whole job; nothing in its files was passed over or refused."""
    found = judge_folder(yard / truck)
    assert str(found.judged.verdict) == said()[truck][0]
    assert found.imported.notes == ()


def test_every_verdict_and_every_end_is_there() -> None:
    """Holds, thin, fails and open; proven, provisional, abandoned and not ended."""
    assert {verdict for verdict, _ in said().values()} == {str(verdict) for verdict in Verdict}
    ends = {sheet(truck).get("hand_over", {}).get("end") for truck in TRUCKS}
    assert ends == {"proven", "provisional", "abandoned", None}


def test_the_truck_that_is_not_begun_is_of_the_type_of_truck_7() -> None:
    """A job sheet alone, for the same person, so that a phone can offer what was done in truck 7."""
    assert [path.name for path in (DEMO / "truck-09").iterdir() if path.name not in ("journal.jsonl", "blobs")] == [
        "job.toml"
    ]
    nine, seven = sheet("truck-09"), sheet("truck-07")
    assert same_type(nine["vehicle"]["vin"]) == same_type(seven["vehicle"]["vin"])
    assert nine["unit"]["sheet"] == seven["unit"]["sheet"]
    assert nine["job"]["technician"] == seven["job"]["technician"]


def test_the_24_V_truck_is_thin_in_its_crank_alone(yard: Path) -> None:
    """Of everything only the ignition wire while the engine cranks is in doubt."""
    assert {name: each.verdict for name, each in unsettled(yard, "truck-15").items()} == {
        "ignition_crank": Verdict.THIN
    }


def test_the_provisional_truck_owes_a_night_alone(yard: Path) -> None:
    """Beside its end and its signature only the parked night is open."""
    assert set(unsettled(yard, "truck-18")) == {"prove_parked", "sign_off", "ending"}


def test_the_tanker_waits_for_its_battery_switch(yard: Path) -> None:
    """Both wires are open with the switch open, and that is the next thing to do."""
    assert {"supply_isolated", "ignition_isolated"} <= set(unsettled(yard, "truck-21"))
    asked = judge_folder(yard / "truck-21").judged.next
    assert asked is not None
    assert "with the battery switch open" in asked


def test_the_abandoned_truck_never_tapped_the_brakes(yard: Path) -> None:
    """The circuit is what fails, and no wire of it is joined."""
    fails = [each for each in unsettled(yard, "truck-23").values() if each.verdict is Verdict.FAILS]
    assert [each.id for each in fails] == ["supply_circuit"]
    assert "brake circuit" in fails[0].because
    assert "joint" not in sheet("truck-23")


def test_the_fleet_is_small() -> None:
    """What git holds of it stays below 1.2 MB."""
    kept = (path for path in DEMO.rglob("*") if path.is_file() and "blobs" not in path.parts)
    assert sum(path.stat().st_size for path in kept if "journal" not in path.name) < MOST_BYTES
