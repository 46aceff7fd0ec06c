"""What `roster --json` and `corners --json` print fits their schemas, in the code's own words; nothing less does."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from tests.samples.corners import INDEX

from backprobe.evidence.corner import CornerKind
from backprobe.evidence.roster import VALUES, RosterKind
from backprobe.formats.roster_columns import KNOWN
from backprobe.formats.roster_csv import read_roster
from backprobe.job.roster_preview import preview_roster
from backprobe.physics.bearing import POINTS
from backprobe.stages.named_place import named_place

ROOT = Path(__file__).resolve().parents[2]
SCHEMAS = {
    name: json.loads((ROOT / "schemas" / f"{name}.schema.json").read_text(encoding="utf-8"))
    for name in ("roster", "corners")
}
LIST = [
    "plate,day,colour,serial",
    *(f"T{n},2026-03-31,red,000{n}" for n in range(5)),
    "T8,soon,red,0008",
    "T9,,red,009",
]


def roster_answer() -> dict[str, Any]:
    """An answer with something in every part."""
    known = read_roster(["plate,day,serial", "T0,2026-03-30,", "T1,2026-03-31,0001"], file="k.csv").rows
    answer = preview_roster(read_roster(LIST, file="t.csv"), known).as_json()
    answer["notes"] = ["read from the sheet 'Trucks'"]
    return dict(json.loads(json.dumps(answer)))


def corner_answer() -> dict[str, Any]:
    """An answer with a corner in it."""
    return {"ok": True, **named_place(INDEX, (-33.10015, 151.20035)).as_json(), "reach_m": 300.0}


ANSWERS = {"roster": roster_answer(), "corners": corner_answer()}


def spoiled(value: Any) -> list[Any]:
    """The value with one thing wrong: a key less, a key more, or another kind of value somewhere inside."""
    if isinstance(value, dict):
        found = [{name: other for name, other in value.items() if name != key} for key in value]
        found.append({**value, "more": 1})
        return found + [{**value, key: wrong} for key, part in value.items() for wrong in spoiled(part)]
    if isinstance(value, list):
        return [[*value[:at], wrong, *value[at + 1 :]] for at, part in enumerate(value[:1]) for wrong in spoiled(part)]
    return [[value]]


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_answer_fits_and_nothing_less(name: str) -> None:
    """Whole it is valid; with any key missing, any key more or any value of another kind it is not."""
    validator = Draft202012Validator(SCHEMAS[name])
    answer = copy.deepcopy(ANSWERS[name])
    columns = answer.pop("columns", None)  # which columns a list has differs from list to list
    wrong = spoiled(answer)
    assert len(wrong) > 10
    for each in (answer, *wrong):
        whole = each if columns is None else {**each, "columns": columns}
        assert validator.is_valid(whole) is (each is answer), each


def test_every_part_of_a_roster_was_seen() -> None:
    """New, changed, bad, doubtful, passed over."""
    answer = ANSWERS["roster"]
    assert all(answer[part] for part in ("new", "changed", "bad", "doubts", "passed_over", "unchanged", "notes")), (
        answer
    )


def test_words_are_those_of_the_code() -> None:
    """Columns, values, kinds, directions; and the pages name each column and say each kind."""
    roster, corners = SCHEMAS["roster"], SCHEMAS["corners"]["$defs"]["corner"]["properties"]
    change = roster["$defs"]["change"]["properties"]["changes"]["items"]["properties"]
    assert set(roster["properties"]["columns"]["propertyNames"]["enum"]) == set(KNOWN)
    assert set(change["what"]["enum"]) == set(VALUES)
    assert roster["properties"]["kind"]["enum"] == [str(kind) for kind in RosterKind]
    assert corners["kind"]["enum"] == [str(kind) for kind in CornerKind]
    assert corners["direction"]["enum"] == list(POINTS)
    page = (ROOT / "docs" / "rosters.md").read_text(encoding="utf-8")
    assert [name for name in KNOWN if f"`{name}`" not in page] == []
