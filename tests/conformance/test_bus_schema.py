"""What `bus --json` prints is what its JSON Schema says, and the page explains it."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from tests.samples.bus_frames import key_cycle
from tests.samples.bus_heard import cycle_heard, listened

from backprobe.evidence.frame import Frame
from backprobe.stages.bus.answer import answer
from backprobe.stages.bus.heard import Health, Heard, SilentNode

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")

ROOT = Path(__file__).resolve().parents[2]
SCHEMA = json.loads((ROOT / "schemas" / "bus.schema.json").read_text(encoding="utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
PAGE = (ROOT / "docs" / "bus.md").read_text(encoding="utf-8")


def logs() -> dict[str, Heard]:
    """Logs of every kind."""
    errors = [Frame(0.0, 0, b"", error=True)] * 3
    return {
        "a whole cycle": cycle_heard(),
        "a start that fails": cycle_heard(starts=False),
        "24 V": cycle_heard(scale=2.0),
        "no VIN": cycle_heard(None),
        "a wrong VIN": cycle_heard("NOT A VIN"),
        "driving": listened([frame for frame in key_cycle() if 12 < frame.time_s < 25]).heard,
        "broken off in the crank": listened([frame for frame in key_cycle() if frame.time_s < 9.5]).heard,
        "a car": listened([Frame(i / 10, 0x100, bytes(8), extended=False) for i in range(200)]).heard,
        "errors": listened([*errors, *key_cycle(), *errors]).heard,
        "everything": replace(
            cycle_heard(),
            distance=(917, 12.0),
            clock=(1.7e9, 1.0),
            stamped_s=1.7e9,
            lost_messages=1,
            skipped={"torn_line": 1, "lost_packets": 1},
            health=Health(nodes=3, silent=(SilentNode(3, 1.0, None),), busiest=(0.2, 0.3)),
        ),
    }


def printed(heard: Heard, vin: str | None) -> Any:
    """The answer as it is printed and read again."""
    return json.loads(json.dumps(answer(heard, vin=vin).as_json()))


@pytest.mark.parametrize("name", logs())
def test_answers_are_as_the_schema_says(name: str) -> None:
    """With and without a job's VIN."""
    for vin in (None, "1M8GDM9AXKP042788", "1G4AH59H45G118341"):
        VALIDATOR.validate(printed(logs()[name], vin))


def test_the_schema_would_notice() -> None:
    """A missing key, another one, another format, an unknown reason, an unknown finding."""
    good = printed(cycle_heard(), None)
    bad = [
        {key: value for key, value in good.items() if key != "key"},
        {**good, "more": 1},
        {**good, "format": "pcap"},
        {**good, "skipped": {"lost": 1}},
        {**good, "skipped": {"torn_line": 0}},
        {**good, "findings": [{**good["findings"][0], "id": "bus_other"}]},
        {**good, "key": {"on_s": 1.0, "off_s": None}},
    ]
    assert [VALIDATOR.is_valid(each) for each in bad] == [False] * len(bad)


def test_the_page_explains_every_word() -> None:
    """Keys, formats, reasons and findings."""
    properties = SCHEMA["properties"]
    words = [
        *(key for key in properties if key != "ok"),
        *properties["format"]["enum"],
        *properties["skipped"]["properties"],
        *SCHEMA["$defs"]["finding"]["properties"]["id"]["enum"],
    ]
    assert [word for word in words if f"`{word}`" not in PAGE] == []
