"""The answer as JSON."""

import json
from pathlib import Path

import pytest
from tests.samples.parked import parked

from backprobe.evidence.parked_sheet import Typed
from backprobe.stages.parked.answer import parked_json
from backprobe.stages.parked.parked import parked_answer

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")
SCHEMAS = Path(__file__).resolve().parents[3] / "schemas"
CASES = {
    "usual": {},
    "lacking": {"capacity_Ah": None, "hours_since_charge": None},
    "nothing wanted": {"wanted_days": None},
    "too cold": {"coldest_C": -40.0},
    "two": {"system_V": 24, "rest_V": (Typed(12.7, 0.01), Typed(12.3, 0.01)), "age_years": None, "temperature_C": None},
}


@pytest.mark.parametrize("figures", CASES.values(), ids=CASES)
def test_it_is_what_the_schema_says(figures):
    """Plain values: no infinity, no NaN."""
    answer = parked_json(parked_answer(parked(**figures)))
    schema = json.loads((SCHEMAS / "parked.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate({**answer, "svg": None})
    assert json.loads(json.dumps(answer, allow_nan=False)) == answer


def test_what_is_from_memory_stands_apart_and_decides_nothing():
    """It is in `unverified` alone, and not among what the figures rest on."""
    answer = parked_json(parked_answer(parked()))
    assert ["from memory" in each["basis"] for each in answer["unverified"]] == [True]
    assert not any("from memory" in basis for basis in answer["bases"])


def test_health_is_another_thing():
    """The load test at 20 °C is 9.6 V; it has no part in the days."""
    health = parked_json(parked_answer(parked()))["health"]
    assert health["load_test_least_V"] == 9.6
    assert any("ISO 16750-2" in note for note in health["kept_apart"])
