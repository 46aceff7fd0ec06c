"""The prove stage's door."""

import json

import pytest
from tests.samples.prove_cases import HEADER, HERE, STEPS, at, healthy, proven

from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.formats.corner_index import write_corner_index
from backprobe.stages.prove.door import prove_text

SCRIPT = "\n".join(["t,key", *(f"{at(t)},{key}" for t, key in STEPS)])
JOB = f"""
vehicle.system_V = 12
unit = {{ sheet = "unit.toml", id = "L1" }}
place = {{ lat = {HERE.lat_deg}, lon = {HERE.lon_deg}, accuracy_m = {HERE.accuracy_m} }}
"""


def asked(**parts):
    """The answer to these parts."""
    return json.loads(prove_text(json.dumps({"script": SCRIPT, "reports": "\n".join([HEADER, *healthy()]), **parts})))


def test_texts_give_the_same_answer_as_files():
    """With the job sheet's unit and place."""
    assert asked(**{"job.toml": JOB}) == json.loads(json.dumps(proven(healthy()).as_json()))


def test_columns_and_unit_as_typed():
    """Without sheets."""
    reports = "\n".join([HEADER.replace("unit_id", "Device"), *healthy()])
    found = asked(reports=reports, columns="unit_id=Device", unit_id="L1")
    assert (found["unit_id"], found["position"]["verdict"]) == ("L1", "open")


@pytest.mark.parametrize(
    "text", ["", "[]", "{}", '{"script": 1}', "[" * 100_000, json.dumps({"script": SCRIPT, "reports": ""})]
)
def test_what_cannot_be_used_is_refused_in_one_shape(text):
    """Never an exception."""
    found = json.loads(prove_text(text))
    assert found["ok"] is False
    assert found["error"]


def test_a_fault_in_a_text_names_its_place():
    """The texts go by the names of their parts."""
    assert asked(script="t,key\nx,off")["place"]["file"] == "script"


def test_corners_as_text():
    """An index beside the other parts names where the unit reports itself; one that is damaged is refused."""
    corner = Corner(HERE.lat_deg, HERE.lon_deg, ("Main Street", "Mill Lane"))
    text = write_corner_index(CornerIndex(corners=(corner,), attribution="© somebody", source="m.osm.pbf"))
    found = asked(corners=text, **{"job.toml": JOB})
    assert found["position"]["where"]["text"] == "corner of Main Street and Mill Lane"
    assert asked(corners=text[:-20])["code"] == "unreadable"
