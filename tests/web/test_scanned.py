"""What a code on a label says, and how far a VIN that was typed in part goes."""

from __future__ import annotations

from typing import Any

import pytest
from tests.web.test_core import Call, call, phone

from backprobe.limits.vin import VALUES
from backprobe.stages.walkround.vin_number import check_digit, has_right_check_digit

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


OTHER = "1M8GDM9AXKP042788"  # 49 CFR 565.15 asks for X in its ninth place
WRONG = "1M8GDM9A1KP042788"


def test_the_check_digit_is_that_of_the_engine(phone: Call) -> None:
    """The same for a hundred VINs of which every letter and figure is somewhere, right and wrong."""
    letters = "".join(VALUES)
    vins = ["".join(letters[(n * 7 + at * (n % 5 + 1)) % len(letters)] for at in range(17)) for n in range(100)]
    vins += [VIN[:8] + check_digit(VIN) + VIN[9:], OTHER, WRONG]
    vins += [vin[:8] + check_digit(vin) + vin[9:] for vin in vins]
    answers = phone([call("scanned.ts", "hasRightCheckDigit", vin) for vin in vins])
    assert [answer["value"] for answer in answers] == [has_right_check_digit(vin) for vin in vins]
    assert {letter for vin in vins for letter in vin} == set(letters)


@pytest.mark.parametrize(
    ("codes", "expected", "vins"),
    [
        (["LN2-00417", VIN], None, [VIN]),  # a part's number beside it
        ([WRONG, OTHER], None, [OTHER, WRONG]),  # the one with the right check digit
        ([OTHER, WRONG], WRONG, [WRONG, OTHER]),  # the sheet's own, whatever its check digit
        ([VIN, f"I{VIN}"], None, [VIN]),  # twice the same
        (["LN2-00417"], None, []),  # the camera goes on looking
    ],
)
def test_of_two_codes_the_vin_is_taken(phone: Call, codes: list[str], expected: str | None, vins: list[str]) -> None:
    """The others are offered beside it."""
    assert said(phone, "likelyVins", codes, expected) == vins


@pytest.mark.parametrize(
    ("codes", "expected", "known", "serials"),
    [
        ([VIN, "LN2-00417"], None, [], ["LN2-00417", VIN]),  # a VIN is the last that is meant
        (["356938035643809", "ln2 00417"], "LN2-00417", [], ["ln2 00417", "356938035643809"]),  # as on the sheet
        (
            ["356938035643809", "LN2-00422"],
            None,
            ["LN2-00422"],
            ["LN2-00422", "356938035643809"],
        ),  # as in the day's list
        (["A1", "B2"], None, [], ["A1", "B2"]),  # nothing tells them apart: as they were read
        ([" ", ""], None, [], []),
    ],
)
def test_of_two_codes_the_serial_is_taken(
    phone: Call, codes: list[str], expected: str | None, known: list[str], serials: list[str]
) -> None:
    """The others are offered beside it."""
    assert said(phone, "likelySerials", codes, expected, known) == serials


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
