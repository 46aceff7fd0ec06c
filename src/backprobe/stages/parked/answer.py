"""The answer on a parked vehicle as plain JSON values: figures, what they rest on, what was not read by anybody."""

from __future__ import annotations

from backprobe.limits.batteries import (
    CAPACITY,
    CAPACITY_BASIS,
    CAPACITY_SIZING_BASIS,
    CRANK_BASIS,
    LOAD_TEST_BASIS,
    LOAD_TEST_V,
    REST_AGM_BASIS,
    REST_FLOODED_BASIS,
    SELF_DISCHARGE_BASIS,
)
from backprobe.physics.capacity import capacity_fraction
from backprobe.physics.interpolation import linear
from backprobe.physics.span import Span
from backprobe.stages.parked.changes import if_full
from backprobe.stages.parked.days import Unsure, bound_by, shares
from backprobe.stages.parked.findings import findings_of
from backprobe.stages.parked.parked import ParkedAnswer
from backprobe.stages.parked.supposed import AGE_BASIS, COLD_BASIS, DRAIN_BASIS, STARTS_TO_BASIS

KEPT_APART = (
    "levels of ISO 16750-2 say what a unit must survive, not how well a battery is: none is used here",
    "the load test says how well a battery is, not how long it lasts: it does not enter the days",
)
PART_DIGITS, MA_DIGITS, DAY_DIGITS = 3, 2, 1


def parked_json(answer: ParkedAnswer) -> dict[str, object]:
    """The answer; `days` and what belongs to them are null while anything is lacking."""
    case, unsure = answer.case, answer.unsure
    return {
        "ok": True,
        "system_V": case.system_V,
        "days": None if answer.days is None else answer.days.rounded(DAY_DIGITS),
        "wanted_days": case.wanted_days,
        "bound_by": None if unsure is None else bound_by(unsure.rests()[1]),
        "shares": None if unsure is None else {k: round(v, PART_DIGITS) for k, v in shares(unsure.rests()[1]).items()},
        "figures": None if unsure is None else _figures(unsure),
        "if_charged_full_days": None if unsure is None else if_full(unsure).rounded(DAY_DIGITS),
        "changes": [change.as_json() for change in answer.changes],
        "health": _health(answer),
        "findings": [finding.as_json() for finding in findings_of(answer)],
        "policy": None if case.policy is None else case.policy.file,
        "lacking": list(answer.lacking),
        "questions": list(answer.questions),
        "notes": list(notes_of(answer)),
        "bases": list(bases_of(answer)),
        "unverified": [] if unsure is None else [_sizing(unsure)],
    }


def _figures(unsure: Unsure) -> dict[str, object]:
    return {
        "capacity_Ah": unsure.capacity_Ah,
        "coldest_C": unsure.coldest_C,
        "state_of_charge": unsure.charge.rounded(PART_DIGITS),
        "left_of_rated": unsure.aged.rounded(PART_DIGITS),
        "had_when_cold": unsure.cold.rounded(PART_DIGITS),
        "needed_to_crank": unsure.need.rounded(PART_DIGITS),
        "vehicle_mA": unsure.vehicle_mA.rounded(MA_DIGITS),
        "unit_mA": unsure.unit_mA.rounded(MA_DIGITS),
        "self_discharge_per_day": unsure.loss_per_day.rounded(5),
    }


def _health(answer: ParkedAnswer) -> dict[str, object]:
    """The load test at the battery's temperature, which has nothing to do with the days."""
    battery_C = answer.case.sheet.battery.temperature_C
    return {
        "load_test_least_V": None if battery_C is None else round(linear(battery_C, LOAD_TEST_V), 2),
        "basis": LOAD_TEST_BASIS.warrant,
        "kept_apart": list(KEPT_APART),
    }


def _sizing(unsure: Unsure) -> dict[str, object]:
    """What a table from memory would say of the capacity at the coldest; it decides nothing."""
    return {
        "what": "capacity to be had at the coldest, part of the rated",
        "value": round(capacity_fraction(unsure.coldest_C, CAPACITY["sizing"]), PART_DIGITS),
        "basis": CAPACITY_SIZING_BASIS.warrant,
    }


def notes_of(answer: ParkedAnswer) -> tuple[str, ...]:
    """What should be known beside the figures."""
    notes = [note for battery in answer.batteries[:1] for note in battery.notes]
    notes += answer.plan.notes if answer.plan else ()
    if answer.case.sheet.battery.age_years is None:
        notes.append("the battery's age is unknown: new to 6 years is allowed for")
    if answer.case.sheet.battery.temperature_C is None:
        notes.append("the battery's temperature is unknown: its own loss is taken at 25 °C")
    if answer.case.system_V > 12:
        notes.append("currents of the unit are taken as its sheet states them, whatever the system's volts")
    return tuple(notes)


def bases_of(answer: ParkedAnswer) -> tuple[str, ...]:
    """What the figures rest on, each with its standing."""
    starts = () if answer.case.sheet.starts_to_C is not None else (STARTS_TO_BASIS,)
    bases = (
        *(REST_FLOODED_BASIS, REST_AGM_BASIS, CAPACITY_BASIS, COLD_BASIS, CRANK_BASIS, *starts),
        *(SELF_DISCHARGE_BASIS, AGE_BASIS, DRAIN_BASIS),
    )
    return tuple(basis.warrant for basis in bases)


def days_in_words(days: Span) -> str:
    """The days in a line.

    >>> days_in_words(Span(3, 10.04, 30))
    '10.0 days, anywhere from 3.0 to 30.0'
    """
    return f"{days.likely:.1f} days, anywhere from {days.low:.1f} to {days.high:.1f}"
