"""A sheet is changed one key at a time: what Python's TOML reader reads afterwards is what was meant, and no more."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.demo_jobs import DEMO
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

JOB = (DEMO / "truck-12" / "job.toml").read_text(encoding="utf-8")
VEHICLE = {"name": "vehicle"}
IGNITION = {"name": "joint", "where": {"key": "lead", "value": "ignition"}}
VALUES = (
    st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
    | st.booleans()
    | st.integers(0, 10**6)
    | st.sampled_from([0.5, 12.25, 3.75])
    | st.lists(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=8), max_size=3)
)


def changed(phone: Call, sheet: str, table: dict[str, Any], *, key: str, value: object) -> str:
    """The sheet with one key changed."""
    return str(phone([call("sheet.ts", "withValue", sheet, table, key, value)])[0]["value"])


def test_any_value_is_read_back_by_python(phone: Call) -> None:
    """A hundred invented values put into a demo job's sheet: read back as they were, the rest as before."""
    values: list[object] = []

    @settings(max_examples=100, database=None, derandomize=True)
    @given(VALUES)
    def collect(value: object) -> None:
        values.append(value)

    collect()
    assert len(values) > 50
    calls = [call("sheet.ts", "withValue", JOB, VEHICLE, "maker", value) for value in values]
    before = tomllib.loads(JOB)
    for value, answer in zip(values, phone(calls), strict=True):
        after = tomllib.loads(answer["value"])
        assert after["vehicle"].pop("maker") == value
        assert after | {"vehicle": after["vehicle"] | {"maker": before["vehicle"]["maker"]}} == before


def test_a_line_that_is_not_touched_stays(phone: Call) -> None:
    """Of all lines one differs; remarks and blank lines are where they were."""
    after = changed(phone, JOB, IGNITION, key="fuse_A", value=1).splitlines()
    before = JOB.rstrip("\n").splitlines()
    assert [(a, b) for a, b in zip(before, after, strict=True) if a != b] == [("fuse_A = 15", "fuse_A = 1")]


def test_of_several_tables_the_one_that_is_meant_is_changed(phone: Call) -> None:
    """The joint of one lead gets a new key, at its own end; the joints of the others do not."""
    joints = tomllib.loads(changed(phone, JOB, IGNITION, key="damp", value=True))["joint"]
    assert [joint.get("damp") for joint in joints] == [
        True if joint["lead"] == "ignition" else joint.get("damp") for joint in tomllib.loads(JOB)["joint"]
    ]


@pytest.mark.parametrize("sheet", ["", JOB])
def test_a_table_that_is_not_there_is_added(phone: Call, sheet: str) -> None:
    """In an empty sheet and at the end of a full one; of several tables with what tells it from the others."""
    table = {"name": "hand_over.missing", "where": {"key": "what", "value": "parked night"}}
    after = changed(phone, sheet, table, key="owed_by", value="Linden Yard")
    missing = [{"what": "parked night", "owed_by": "Linden Yard"}]
    assert tomllib.loads(after) == tomllib.loads(sheet) | {"hand_over": {"missing": missing}}
    ended = tomllib.loads(changed(phone, after, {"name": "hand_over"}, key="end", value="provisional"))
    assert ended["hand_over"] == {"end": "provisional", "missing": missing}


def test_what_is_taken_out_is_gone(phone: Call) -> None:
    """A key goes; with its last key one of several tables goes, too; what is not there cannot go."""
    table = {"name": "hand_over.missing", "where": {"key": "what", "value": "parked night"}}
    begun = changed(phone, JOB, table, key="owed_by", value="Linden Yard")
    assert tomllib.loads(changed(phone, begun, table, key="owed_by", value=None)) == tomllib.loads(JOB)
    assert "plate" not in tomllib.loads(changed(phone, JOB, VEHICLE, key="plate", value=None))["vehicle"]
    assert changed(phone, JOB, VEHICLE, key="wings", value=None) == JOB


def test_values_are_read_as_python_reads_them(phone: Call) -> None:
    """Texts, numbers, flags, lists, days; None for what is not said."""
    asked = [(VEHICLE, "plate"), (VEHICLE, "heavy"), (VEHICLE, "cylinders"), ({"name": "job"}, "date")]
    asked += [(IGNITION, "wire"), (IGNITION, "wings"), ({"name": "nothing"}, "plate")]
    answers = phone([call("sheet.ts", "valueIn", JOB, table, key) for table, key in asked])
    said = [answer["value"] for answer in answers]
    assert said == ["LY 12", True, 6, "2026-03-31", "X12/6 GY", None, None]


def test_a_list_over_several_lines_is_one_value(phone: Call) -> None:
    """Read as Python reads it, changed and taken out whole; what stands around it stays."""
    sheet = '[hand_over]\ntold_driver = [\n  "a] = [b",\n  "c, d",\n]  # said\nend = "proven"\n\n[job]\nid = "x"\n'
    table = {"name": "hand_over"}
    said = phone([call("sheet.ts", "valueIn", sheet, table, "told_driver")])[0]["value"]
    assert said == tomllib.loads(sheet)["hand_over"]["told_driver"] == ["a] = [b", "c, d"]
    after = changed(phone, sheet, table, key="told_driver", value=["e"])
    assert after == '[hand_over]\ntold_driver = ["e"]\nend = "proven"\n\n[job]\nid = "x"\n'
    gone = changed(phone, sheet, table, key="told_driver", value=None)
    assert tomllib.loads(gone) == {"hand_over": {"end": "proven"}, "job": {"id": "x"}}


def test_a_text_over_several_lines_is_left_alone(phone: Call) -> None:
    """What is not understood is not changed: the change is refused."""
    for text in ('"""\na\n"""', "[\n  # why\n  'a',\n]"):
        sheet = f"[hand_over]\ntold_driver = {text}\n"
        answer = phone([call("sheet.ts", "withValue", sheet, {"name": "hand_over"}, "told_driver", ["c"])])[0]
        assert answer == {"fault": "told_driver"}


def test_what_stands_above_all_headers_is_changed_there(phone: Call) -> None:
    """A key without a table goes before the first header and its remark, or is changed where it stands."""
    top, sheet = {"name": ""}, '# places\n\n[[place]]\nname = "dash"\n'
    chosen = changed(phone, sheet, top, key="chosen", value="dash")
    assert tomllib.loads(chosen) == {"chosen": "dash", "place": [{"name": "dash"}]}
    again = changed(phone, chosen, top, key="chosen", value="shelf")
    assert [b for a, b in zip(chosen.splitlines(), again.splitlines(), strict=True) if a != b] == ['chosen = "shelf"']
    assert "chosen" not in changed(phone, again, top, key="chosen", value=None)
