"""How full a battery is, for one who asks for that alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.errors import OptionError
from backprobe.evidence.meter import Meter
from backprobe.limits.batteries import REST_AGM_BASIS, REST_CORRECTION_BASIS, REST_FLOODED_BASIS
from backprobe.physics.battery import RESTED_H, surface_charge_V
from backprobe.physics.meter import accuracy_V
from backprobe.physics.span import Span
from backprobe.stages.given import within
from backprobe.stages.parked.rest_voltage import CHARGE_DIGITS, not_at_rest, state_of_charge

SYSTEMS_V = (12, 24)
HOURS_MOST = 100_000.0
COLDEST_C, HOTTEST_C = -50.0, 60.0
MAYBE_FAHRENHEIT_C = 41.0
EMPTY_V = 11.89
COUNT_V = 0.01
RESTS_V = (11.0, 13.2)


@dataclass(frozen=True, slots=True, kw_only=True)
class BatteryCase:
    """A reading at the battery's posts: `count_V` is one count of its last digit; `system_V` is 12, or 24 for two.

    `temperature_C` is the battery's, None where nobody measured it; `kind` is flooded, agm or unknown.
    """

    rest_V: float
    count_V: float
    hours_since_charge: float
    meter: Meter
    system_V: int = 12
    temperature_C: float | None = None
    kind: str = "unknown"

    @property
    def batteries(self) -> int:
        """How many 12 V batteries are in series."""
        return self.system_V // 12

    @property
    def each_V(self) -> Span:
        """What one 12 V battery reads, with the meter's bounds [V]."""
        spread = accuracy_V(self.rest_V, percent=self.meter.percent, counts=self.meter.counts, count_V=self.count_V)
        low, likely, high = self.rest_V - spread, self.rest_V, self.rest_V + spread
        return Span(low, likely, high).times(1.0 / self.batteries)


@dataclass(frozen=True, slots=True, kw_only=True)
class BatteryAnswer:
    """State of charge, 0 to 1, with what makes it unsure."""

    case: BatteryCase
    charge: Span
    questions: tuple[str, ...]
    notes: tuple[str, ...]

    @property
    def rested(self) -> bool:
        """Whether the battery has stood long enough for its volts to be believed."""
        return self.case.hours_since_charge >= RESTED_H

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values."""
        case = self.case
        return {
            "ok": True,
            "system_V": case.system_V,
            "rest_V": case.rest_V,
            "each_V": case.each_V.rounded(3),
            "hours_since_charge": case.hours_since_charge,
            "temperature_C": case.temperature_C,
            "kind": case.kind,
            "meter": case.meter.name,
            "state_of_charge": self.charge.rounded(CHARGE_DIGITS),
            "rested": self.rested,
            "surface_charge_V": round(surface_charge_V(case.hours_since_charge), 3),
            "bases": [basis.warrant for basis in (REST_FLOODED_BASIS, REST_AGM_BASIS, REST_CORRECTION_BASIS)],
            "notes": list(self.notes),
            "questions": list(self.questions),
        }


def battery_answer(case: BatteryCase) -> BatteryAnswer:
    """The answer on a reading. Raises OptionError where it cannot be one of a battery at rest."""
    _check(case)
    charge = state_of_charge(
        case.each_V, hours=case.hours_since_charge, kind=case.kind, temperature_C=case.temperature_C
    )
    return BatteryAnswer(case=case, charge=charge, questions=tuple(_questions(case)), notes=tuple(_notes(case)))


def _check(case: BatteryCase) -> None:
    if case.system_V not in SYSTEMS_V:
        raise OptionError(f"a system of {case.system_V} V is not known: 12 or 24")
    within(case.hours_since_charge, what="a rest", unit="h", least=0.0, most=HOURS_MOST)
    if case.temperature_C is not None:
        _check_temperature(case.temperature_C)
    _check_volts(case)


def _check_temperature(temperature_C: float) -> None:
    if temperature_C > HOTTEST_C:
        as_C = (temperature_C - 32.0) * 5.0 / 9.0
        raise OptionError(
            f"no battery gets to {temperature_C:g} °C: are these °F? {temperature_C:g} °F are {as_C:.0f} °C"
        )
    within(temperature_C, what="a battery's temperature", unit="°C", least=COLDEST_C, most=HOTTEST_C)


def _check_volts(case: BatteryCase) -> None:
    within(case.rest_V, what="a rest voltage", unit="V", least=0.0, most=60.0)
    fault = not_at_rest(case.each_V.likely, hours=case.hours_since_charge)
    if fault is None:
        return
    other_V = 36 - case.system_V
    least, most = RESTS_V
    if least <= case.rest_V * 12 / other_V <= most:
        fault = f"{case.rest_V:g} V at rest in a {case.system_V} V system: is it a {other_V} V system"
        fault += ", or was one battery of the two measured?" if case.batteries > 1 else "?"
    elif case.batteries > 1:
        fault = f"{case.rest_V:g} V over two batteries, each: {fault}"
    raise OptionError(fault)


def _questions(case: BatteryCase) -> Iterator[str]:
    if case.temperature_C is not None and case.temperature_C >= MAYBE_FAHRENHEIT_C:
        yield f"{case.temperature_C:g} °C is hot for a battery: are these °F?"
    if round(case.count_V, 6) > COUNT_V:
        yield f"the reading is to {case.count_V:g} V only: can two decimals be read?"


def _notes(case: BatteryCase) -> Iterator[str]:
    if case.hours_since_charge < RESTED_H:
        surface = f"up to {surface_charge_V(case.hours_since_charge):.2f} V of surface charge may still be on it"
        yield f"{surface}: our own model; wait 8 h, better 24 h, and measure again"
    if case.each_V.likely < EMPTY_V:
        yield "below the tables' empty: charge and test the battery before it is relied on"
    if case.batteries > 1:
        yield "two in series show their mean: measure each, the weaker one counts"
    if case.kind == "unknown":
        yield "the kind is unknown: flooded is likely, AGM (which rests higher) is allowed for"
    if case.temperature_C is not None:
        yield "the printed correction for temperature is the hydrometer's: both with and without it are allowed for"
