"""What the unit draws of a parked vehicle's battery, from its maker's figures and its reporting plan."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.physics.drain import mean_mA
from backprobe.physics.span import Span, exactly
from backprobe.stages.parked.supposed import REPORT_BASIS, REPORT_S


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A unit at rest: `sleep_mA`, waking every `interval_s` to draw `transmit_mA` for `report_s`."""

    sleep_mA: float
    transmit_mA: float
    interval_s: float
    report_s: Span
    notes: tuple[str, ...] = ()

    @property
    def mean_mA(self) -> Span:
        """The mean current [mA]."""
        low, likely, high = (self._mean(s) for s in (self.report_s.low, self.report_s.likely, self.report_s.high))
        return Span(low, likely, high)

    def _mean(self, report_s: float) -> float:
        awake_s = min(report_s, self.interval_s)
        return mean_mA([(self.sleep_mA, self.interval_s - awake_s), (self.transmit_mA, awake_s)])

    def interval_for_s(self, bearable_mA: float, report_s: float) -> float | None:
        """The shortest interval at which the mean is no more than `bearable_mA` [s]; None where none is."""
        if bearable_mA <= self.sleep_mA:
            return None
        return report_s * max(1.0, (self.transmit_mA - self.sleep_mA) / (bearable_mA - self.sleep_mA))


def plan_of(unit: UnitSheet) -> Plan | str:
    """The unit's plan, or what its sheet lacks, in words."""
    supply, reporting = unit.supply, unit.reporting
    sleep_mA = supply.idle_mA if supply.sleep_mA is None else supply.sleep_mA
    if sleep_mA is None:
        return "the unit's sheet states neither sleep_mA nor idle_mA"
    if not reporting.stopped_interval_s:
        return "the unit's sheet states no stopped_interval_s"
    transmit_mA = supply.peak_A * 1000.0 if supply.transmit_mA is None and supply.peak_A else supply.transmit_mA
    if transmit_mA is None:
        return "the unit's sheet states neither transmit_mA nor peak_A"
    return Plan(
        sleep_mA=sleep_mA,
        transmit_mA=max(transmit_mA, sleep_mA),
        interval_s=reporting.stopped_interval_s,
        report_s=REPORT_S if reporting.report_s is None else exactly(reporting.report_s),
        notes=_notes(unit),
    )


def _notes(unit: UnitSheet) -> tuple[str, ...]:
    notes = []
    if unit.supply.sleep_mA is None:
        notes.append("the unit's sheet states no sleep_mA: it is taken to stay awake at idle_mA")
    if unit.supply.transmit_mA is None:
        notes.append("the unit's sheet states no transmit_mA: its peak_A is taken")
    if unit.reporting.report_s is None:
        notes.append(f"the unit's sheet states no report_s: {REPORT_BASIS.text} ({REPORT_BASIS.standing})")
    return tuple(notes)
