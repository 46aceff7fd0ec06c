"""A parked vehicle from what the sheets say: what is lacking, what is asked back, how full the battery is, the days."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.errors import OptionError
from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.meter import Meter
from backprobe.evidence.parked_sheet import ParkedSheet, Typed
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.limits.parked import ASLEEP
from backprobe.physics.span import Span, exactly
from backprobe.stages.parked.battery_calc import MAYBE_FAHRENHEIT_C, BatteryAnswer, BatteryCase, battery_answer
from backprobe.stages.parked.changes import Change, changes_for
from backprobe.stages.parked.days import Unsure
from backprobe.stages.parked.supposed import DRAIN_COUNTS, DRAIN_PERCENT, STARTS_TO_C, of_age
from backprobe.stages.parked.unit_drain import Plan, plan_of

ONE_BATTERY_V = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class ParkedCase:
    """All that a parked vehicle is judged by."""

    sheet: ParkedSheet
    unit: UnitSheet
    meter: Meter
    system_V: int
    policy: FleetPolicy | None = None

    @property
    def wanted_days(self) -> float | None:
        """How long it shall stand: as the job sheet wants, or the fleet's policy where that asks for more."""
        asked = (self.sheet.wanted_days, None if self.policy is None else self.policy.wanted_days)
        return max((days for days in asked if days is not None), default=None)

    @property
    def asleep(self) -> bool:
        """Whether the vehicle's drain was read late enough for its modules to sleep."""
        minutes = self.sheet.minutes_after_lock
        return minutes is not None and minutes >= ASLEEP.value


@dataclass(frozen=True, slots=True, kw_only=True)
class ParkedAnswer:
    """What it came to; `unsure`, and with it the days, is None while anything is `lacking`."""

    case: ParkedCase
    batteries: tuple[BatteryAnswer, ...]
    lacking: tuple[str, ...]
    questions: tuple[str, ...]
    plan: Plan | None
    unsure: Unsure | None

    @property
    def days(self) -> Span | None:
        """Days until a start at the coldest is no longer sure."""
        return None if self.unsure is None else self.unsure.days

    @property
    def changes(self) -> tuple[Change, ...]:
        """What to change to reach the wanted days; none where nobody wants any."""
        wanted = self.case.wanted_days
        if wanted is None or self.unsure is None or self.plan is None:
            return ()
        return changes_for(wanted, self.unsure, plan=self.plan)


def parked_answer(case: ParkedCase) -> ParkedAnswer:
    """The answer. Raises OptionError for a reading that no battery at rest gives."""
    _check_count(case)
    batteries = tuple(_batteries(case))
    plan = plan_of(case.unit)
    lacking = tuple(_lacking(case, plan))
    return ParkedAnswer(
        case=case,
        batteries=batteries,
        lacking=lacking,
        questions=tuple(_questions(case, batteries)),
        plan=None if isinstance(plan, str) else plan,
        unsure=None if lacking or isinstance(plan, str) else _unsure(case, plan, batteries=batteries),
    )


def _check_count(case: ParkedCase) -> None:
    battery, in_series = case.sheet.battery, case.system_V // ONE_BATTERY_V
    if battery.count is not None and battery.count != in_series:
        raise OptionError(
            f"{battery.count} battery of 12 V in series in a {case.system_V} V system: count = {in_series} is expected"
            "\ncapacity_Ah is that of one; batteries side by side count as one with their capacities added"
        )
    if len(battery.rest_V) > in_series:
        raise OptionError(
            f"{len(battery.rest_V)} rest voltages in a {case.system_V} V system: one over all is expected"
        )


def drain_span_mA(drain: Typed, *, asleep: bool) -> Span:
    """The vehicle's own drain with the meter's bounds [mA]; read too early it may be anything less."""
    spread = drain.value * DRAIN_PERCENT / 100.0 + DRAIN_COUNTS * drain.count
    return Span(max(0.0, drain.value - spread) if asleep else 0.0, drain.value, drain.value + spread)


def _batteries(case: ParkedCase) -> Iterator[BatteryAnswer]:
    """How full each battery is that was read; both at once where only the whole was."""
    battery = case.sheet.battery
    if battery.hours_since_charge is None:
        return
    each = len(battery.rest_V) > 1
    for rest in battery.rest_V:
        yield battery_answer(
            BatteryCase(
                rest_V=rest.value,
                count_V=rest.count,
                hours_since_charge=battery.hours_since_charge,
                meter=case.meter,
                system_V=ONE_BATTERY_V if each else case.system_V,
                temperature_C=battery.temperature_C,
                kind=battery.kind,
            )
        )


def _lacking(case: ParkedCase, plan: Plan | str) -> Iterator[str]:
    sheet, battery = case.sheet, case.sheet.battery
    if battery.capacity_Ah is None:
        yield "[battery] capacity_Ah, as printed on the battery"
    if not battery.rest_V:
        yield "[battery] rest_V, at the posts with no load"
    if battery.hours_since_charge is None:
        yield "[battery] hours_since_charge"
    if sheet.vehicle_drain_mA is None:
        yield "[parked] vehicle_drain_mA, measured without the unit once the vehicle sleeps"
    if sheet.coldest_C is None:
        yield "[parked] coldest_C, the coldest in which it must start"
    if isinstance(plan, str):
        yield plan


def _questions(case: ParkedCase, batteries: tuple[BatteryAnswer, ...]) -> Iterator[str]:
    sheet = case.sheet
    yield from dict.fromkeys(question for battery in batteries for question in battery.questions)
    for name, value in (("coldest_C", sheet.coldest_C), ("starts_to_C", sheet.starts_to_C)):
        if value is not None and value >= MAYBE_FAHRENHEIT_C:
            yield f"{name} = {value:g}: are these °F?"
    battery_C = sheet.battery.temperature_C
    if battery_C is not None and sheet.coldest_C is not None and sheet.coldest_C > battery_C:
        yield f"the coldest expected, {sheet.coldest_C:g} °C, is warmer than the battery is now, {battery_C:g} °C: °F?"
    drain = sheet.vehicle_drain_mA
    if drain is not None and drain.value == 0.0:
        yield "a drain of 0 mA: was the meter in series, and its range fine enough?"
    if drain is not None and 0.0 < drain.value < 1.0:
        yield f"a drain of {drain.value:g} mA: was that read in amperes?"


def _unsure(case: ParkedCase, plan: Plan, *, batteries: tuple[BatteryAnswer, ...]) -> Unsure | None:
    sheet, battery = case.sheet, case.sheet.battery
    if battery.capacity_Ah is None or sheet.vehicle_drain_mA is None or sheet.coldest_C is None:
        return None
    weakest = [answer.charge for answer in batteries]
    return Unsure(
        capacity_Ah=battery.capacity_Ah,
        charge=Span(*(min(getattr(charge, end) for charge in weakest) for end in ("low", "likely", "high"))),
        aged=of_age(battery.age_years),
        vehicle_mA=drain_span_mA(sheet.vehicle_drain_mA, asleep=case.asleep),
        unit_mA=plan.mean_mA,
        coldest_C=sheet.coldest_C,
        starts_to_C=STARTS_TO_C if sheet.starts_to_C is None else exactly(sheet.starts_to_C),
        store_C=battery.temperature_C,
    )
