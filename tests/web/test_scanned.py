"""What a code on a label says, and how far a VIN that was typed in part goes."""

from __future__ import annotations

from typing import Any

import pytest
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

VIN = "5ZLDR7HV5KR200417"


def said(phone: Call, name: str, *args: object) -> Any:
    """What a function of scanned.ts gives."""
    return phone([call("scanned.ts", name, *args)])[0]["value"]


@pytest.mark.parametrize(
    ("code", "vin"),
    [
        (VIN, VIN),
        (f"I{VIN}", VIN),  # with a letter I before it, as some labels have it (from memory)
        (f" {VIN.lower()} ", VIN),
        (f"https://yard.example/v?vin={VIN}&x=1", VIN),
        ("LN2-00417", None),
        (f"{VIN}7", None),  # 18 characters: no VIN, and none is cut out of it
        ("5ZLDR7HV5KR2O0417", None),  # the letter O stands in no VIN
    ],
)
def test_a_vin_is_told_from_other_codes(phone: Call, code: str, vin: str | None) -> None:
    """The camera goes on looking where a code holds none."""
    assert said(phone, "vinIn", code) == vin


def test_the_last_six_leave_eleven_to_compare(phone: Call) -> None:
    """Only where they are those of the sheet's VIN; five, seven or others leave nothing."""
    assert said(phone, "restOf", "200 417", VIN) == VIN[:11]
    assert [said(phone, "restOf", typed, VIN) for typed in ("00417", "R200417", "200471")] == [None, None, None]
    assert said(phone, "restOf", "200417", None) is None
    assert said(phone, "restOf", VIN, VIN) is None


def test_spaces_hyphens_and_capitals_make_no_other_number(phone: Call) -> None:
    """As the engine compares them."""
    assert said(phone, "isSameCode", "ln2 00417", "LN2-00417")
    assert not said(phone, "isSameCode", "LN2-00417", "LN2-00471")
