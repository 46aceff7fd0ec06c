"""The door: texts in, the answer as text out."""

from __future__ import annotations

import json
from xml.etree import ElementTree

import pytest
from tests.samples.mount import DASH_TOML, ROOF_TOML
from tests.samples.navigation import constellation, rinex2

from backprobe.stages.mount.door import sky_text

PARTS = {"mount.toml": DASH_TOML + ROOF_TOML, "lat": 60.2, "lon": 24.9, "date": "2021-04-29"}


def asked(**more: object) -> dict[str, object]:
    """The answer to the sample's parts with some changed."""
    return dict(json.loads(sky_text(json.dumps({**PARTS, **more}))))


def test_an_answer_with_its_picture() -> None:
    """The same keys as in the terminal, and the best place's picture."""
    answer = asked(time="12:00", nav="\r\n".join(rinex2(constellation(31))), nav_name="brdc.21n")
    assert (answer["ok"], answer["best"], answer["orbits"]) == (True, "on the roof", "RINEX 2 navigation file")
    assert answer["satellites"]
    ElementTree.fromstring(str(answer["svg"]))


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"mount.toml": None}, "mount.toml: a text is expected"),
        ({"lat": "60"}, "lat: a number of degrees is expected"),
        ({"lat": True}, "lat: a number of degrees is expected"),
        ({"lat": 91}, "91 is no latitude"),
        ({"nav": "nothing"}, "a RINEX 2 or 3 navigation file"),
        ({"time": 12}, "time: a text is expected"),
    ],
)
def test_faults_come_back_in_the_usual_shape(more: dict[str, object], says: str) -> None:
    """Every fault is an answer, never an exception."""
    answer = asked(**more)
    assert answer["ok"] is False
    assert says in str(answer["error"])


@pytest.mark.parametrize("text", ["", "[]", "{" * 100_000])
def test_no_json_no_object(text: str) -> None:
    """What is no JSON object is said to be none."""
    assert "is no JSON" in json.loads(sky_text(text))["error"]
