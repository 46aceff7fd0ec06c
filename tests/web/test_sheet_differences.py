"""What differs between two sheets of one job, as two phones wrote them."""

from __future__ import annotations

from typing import Any

from tests.samples.demo_jobs import DEMO
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

HERE = """
[unit]
serial = "LN2-00431"
activated = true

[[joint]]
lead = "power"
fuse_A = 3
"""
THERE = """
# by another hand
[unit]
serial = "LN2-00499"
activated = true
firmware = "4.2.1"

[[joint]]
lead = "power"
fuse_A = 5

[[joint]]
lead = "ground"
"""


def differences(phone: Call, here: str, there: str) -> list[tuple[str, str, Any, Any]]:
    """Table, key, and what the one and the other say."""
    found = phone([call("sheet-differences.ts", "differences", here, there)])[0]["value"]
    return [(each["table"], each["key"], each["here"], each["there"]) for each in found]


def test_each_key_that_differs_is_named_once(phone: Call) -> None:
    """Another serial, a firmware that one alone says, another fuse on one lead, a lead that the other has alone."""
    assert differences(phone, HERE, THERE) == [
        ("unit", "serial", "LN2-00431", "LN2-00499"),
        ("joint power", "fuse_A", 3, 5),
        ("unit", "firmware", None, "4.2.1"),
        ("joint ground", "lead", None, "ground"),
    ]


def test_the_same_sheet_differs_in_nothing(phone: Call) -> None:
    """Nor do remarks and blank lines."""
    sheet = (DEMO / "truck-12" / "walkround.toml").read_text(encoding="utf-8")
    bare = "\n".join(line for line in sheet.splitlines() if line and not line.startswith("#"))
    assert differences(phone, sheet, bare) == []
