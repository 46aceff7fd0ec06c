"""What `prove --json` prints is what its JSON Schema says, for invented units of every kind."""

import json
from pathlib import Path

import pytest
from tests.samples.prove_world import FAULTS, PLACE, awkward_world, reports_text, script_text, world_of

from backprobe.evidence.key_turn import ScriptKey
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.reports_csv import read_reports
from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.prove import prove
from backprobe.stages.prove.setup import ProveSetup

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")

ROOT = Path(__file__).resolve().parents[2]
SCHEMA = json.loads((ROOT / "schemas" / "prove.schema.json").read_text(encoding="utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
PAGE = (ROOT / "docs" / "prove.md").read_text(encoding="utf-8")


def answer_of(world):
    """The answer as it is printed and read again."""
    script = read_key_script(script_text(world).splitlines(), file="script.csv")
    table = read_reports(reports_text(world).splitlines(), file="reports.csv")
    place = VehiclePlace(lat_deg=PLACE[0], lon_deg=PLACE[1])
    return json.loads(json.dumps(prove(script, table, setup=ProveSetup(unit_id="LN2-00417", place=place)).as_json()))


@pytest.mark.parametrize("fault", [None, *FAULTS])
def test_answers_are_as_the_schema_says(fault):
    """Three ordinary and three awkward units of each kind."""
    for seed in range(3):
        VALIDATOR.validate(answer_of(world_of(fault, seed)))
        VALIDATOR.validate(answer_of(awkward_world(fault, seed)))


def test_the_schema_would_notice():
    """A missing key, another one, a strength above 1, an unknown pattern."""
    good = answer_of(world_of("inverted", 1))
    bad = [
        {key: value for key, value in good.items() if key != "turns"},
        {**good, "more": 1},
        {**good, "patterns": [{**good["patterns"][0], "strength": 1.1}]},
        {**good, "patterns": [{**good["patterns"][0], "pattern": "upside_down"}]},
        {**good, "on_delay_s": {"value": 1}},
    ]
    assert [VALIDATOR.is_valid(each) for each in bad] == [False] * 5


def test_words_of_the_schema_are_those_of_the_code():
    """Patterns and script keys; and the page explains each of them."""
    assert SCHEMA["$defs"]["pattern"]["properties"]["pattern"]["enum"] == [str(each) for each in PatternId]
    assert SCHEMA["$defs"]["key"]["enum"] == [str(each) for each in ScriptKey]
    assert [str(word) for word in (*PatternId, *ScriptKey) if f"`{word}`" not in PAGE] == []
    assert [key for key in SCHEMA["$defs"]["proof"]["properties"] if f"`{key}" not in PAGE] == []
