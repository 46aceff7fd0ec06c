"""Figures in the units of whoever holds the phone: what was typed is shown again, and what is written is metric."""

from __future__ import annotations

import random
from typing import Any

import pytest
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

UNITS = ("km", "m", "mm", "N", "°C", "km/h")
# NIST Special Publication 811 (2008), appendix B.8: each of them exact by definition
EXACT = [
    ("mm", "1", 25.4),
    ("km", "1", 1.609344),
    ("km/h", "1", 1.609344),
    ("m", "1", 0.3048),
    ("N", "1", 4.4482216152605),
]


def said(phone: Call, name: str, *rows: tuple[object, ...]) -> list[Any]:
    """What a function of units.ts gives for each row of arguments."""
    return [answer["value"] for answer in phone([call("units.ts", name, *row) for row in rows])]


@pytest.mark.parametrize(("unit", "typed", "metric"), EXACT)
def test_the_factors_are_those_of_nist(phone: Call, unit: str, typed: str, metric: float) -> None:
    """One of the US unit, typed with ten decimals so that thirteen are kept."""
    assert said(phone, "toSheet", (f"{typed}.0000000000", unit, "us")) == [pytest.approx(metric, abs=1e-12)]


def test_degrees_meet_where_they_must(phone: Call) -> None:
    """32 °F is 0 °C, 212 °F is 100 °C, 23 °F is -5 °C, and -40 is -40."""
    rows = [(typed, "°C", "us") for typed in ("32", "212", "23", "-40")]
    assert said(phone, "toSheet", *rows) == [0, 100, -5, -40]
    assert said(phone, "fromSheet", *[(value, "°C", "us") for value in (0, 100, -5, -40)]) == ["32", "212", "23", "-40"]


def test_what_was_typed_is_shown_again(phone: Call) -> None:
    """Three hundred invented figures with up to three decimals, none of which ends in nothing, in six units."""
    dice = random.Random(7)
    typed = []
    for at in range(300):
        decimals = dice.randrange(4)
        whole = dice.randrange(1, 10 ** dice.randrange(1, 7))
        tail = str(dice.randrange(10**decimals)).zfill(decimals)[:-1] + str(dice.randrange(1, 10)) if decimals else ""
        typed.append((f"{whole}.{tail}" if tail else str(whole), UNITS[at % len(UNITS)]))
    metric = said(phone, "toSheet", *[(figure, unit, "us") for figure, unit in typed])
    again = said(phone, "fromSheet", *[(value, unit, "us") for value, (_, unit) in zip(metric, typed, strict=True)])
    assert again == [figure for figure, _ in typed]


def test_metric_stays_as_it_is(phone: Call) -> None:
    """No unit is another, no figure is touched; nor is a unit that has no twin, such as V or A."""
    assert said(phone, "toSheet", ("12.5", "mm", "metric"), ("12.5", "V", "us")) == [12.5, 12.5]
    assert said(phone, "fromSheet", (12.5, "mm", "metric"), (12.5, "V", "us")) == ["12.5", "12.5"]
    assert said(phone, "unitFor", ("mm", "metric"), ("mm", "us"), ("V", "us")) == ["mm", "in", "V"]


def test_what_nobody_typed_has_four_digits_that_count(phone: Call) -> None:
    """60 mm are 2.362 in, 1.8 m are 5.906 ft, 165 N are 37.09 lbf: 60/25.4, 1.8/0.3048, 165/4.4482."""
    rows = [(60, "mm", "us"), (1.8, "m", "us"), (165, "N", "us")]
    assert said(phone, "shownIn", *rows) == ["2.362", "5.906", "37.09"]
    assert said(phone, "fromSheet", *rows) == ["2.362", "5.906", "37.09"]


def test_an_odometer_is_asked_in_the_person_s_unit_unless_the_other_is_written(phone: Call) -> None:
    """Miles for who reads miles; kilometres stay where they stand; after the work the same unit as before it."""
    ask = {"kind": "figure", "table": "before", "key": "odometer_km", "word": "odometer", "unit": "km"}
    ask["twin"] = {"key": "odometer_mi", "unit": "mi", "as": "before"}
    after = ask | {"table": "after"}
    rows = [(ask, "us", ""), (ask, "metric", ""), (ask, "us", "[before]\nodometer_km = 5\n")]
    rows += [(after, "metric", "[before]\nodometer_mi = 5\n"), (after, "us", "[before]\nodometer_km = 5\n")]
    answers = phone([call("../page/forms/ask.ts", "inUnits", *row) for row in rows])
    keys = [answer["value"]["key"] for answer in answers]
    assert keys == ["odometer_mi", "odometer_km", "odometer_km", "odometer_mi", "odometer_km"]
