"""The bus stage's door: texts in, texts out."""

from __future__ import annotations

import json
from typing import Any

import pytest
from tests.samples.bus_frames import aligned, close, key_cycle
from tests.samples.bus_heard import VIN, cycle_heard, with_vin

from backprobe.errors import UnreadableError
from backprobe.stages.bus.answer import answer
from backprobe.stages.bus.door import bus_text, listen_to_lines


def asked(**parts: Any) -> Any:
    """The answer to these parts."""
    return json.loads(bus_text(json.dumps(parts)))


@pytest.mark.parametrize("write", [aligned, close])
def test_a_log_in_either_text(write: Any) -> None:
    """The same answer as the frames themselves give, and the picture beside it."""
    found = asked(file="truck.log", log="\r\n".join(write(with_vin(key_cycle()))) + "\r\n", vin=VIN, system_V=12)
    assert found.pop("picture").startswith("<svg")
    expected = json.loads(json.dumps(answer(cycle_heard(), vin=VIN, system_V=12).as_json()))
    assert {**found, "format": "candump"} == expected


def test_engine_data() -> None:
    """A CSV with an engine speed."""
    rows = (
        "time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()\n0,0,12.4\n0.5,0,9.6\n1,900,12\n1.5,850,14\n2,800,14\n3,800,14"
    )
    assert asked(log=rows)["format"] == "obd-csv"


@pytest.mark.parametrize(
    ("parts", "word"),
    [
        ({}, "log: a text"),
        ({"log": 5}, "log: a text"),
        ({"log": "(0.1) can0 18FEF100#00", "vin": 5}, "vin: a text"),
        ({"log": "x", "system_V": 48}, "system_V: 12 or 24"),
        ({"log": "x", "system_V": 12.0}, "system_V: 12 or 24"),
        ({"log": "nothing of the kind"}, "a bus log as candump writes it"),
        ({"log": ""}, "a bus log as candump writes it"),
    ],
)
def test_what_is_no_log_is_refused(parts: dict[str, Any], word: str) -> None:
    """In the shape of every refusal."""
    found = asked(**parts)
    assert found["ok"] is False
    assert word in found["error"]


@pytest.mark.parametrize("text", ["", "[]", "{", "null"])
def test_what_is_no_json_is_refused(text: str) -> None:
    """The door itself never fails."""
    assert json.loads(bus_text(text))["ok"] is False


def test_lines_without_a_frame_are_refused_with_the_first() -> None:
    """So that it shows what was given."""
    with pytest.raises(UnreadableError, match="time_s,red"):
        listen_to_lines(["", "time_s,red", "0,12.4"], file="a.log")
