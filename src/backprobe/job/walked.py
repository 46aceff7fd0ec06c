"""What a walkround comes to in a job: before the work, at the wires that are to be tapped, and after the work."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.keys import Key
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Finding
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.wires import Wire
from backprobe.stages.walkround.battery_switch import has_switch
from backprobe.stages.walkround.condition import condition_after
from backprobe.stages.walkround.upstream import Tapped, upstream
from backprobe.stages.walkround.walkround import photos_named, walkround_findings


@dataclass(frozen=True, slots=True, kw_only=True)
class Walked:
    """A job's walkround, None where there is none, with the sheets that it is held against.

    `missing` are the photos that it names and that are not there, `refused` those that are no pictures, each with what
    was expected; `readings` those of the whole job.
    """

    walkround: Walkround | None
    sheet: JobSheet
    unit: UnitSheet
    meter: Meter
    missing: tuple[str, ...]
    readings: Sequence[Reading]
    refused: tuple[str, ...] = ()

    def before(self) -> tuple[Finding, ...]:
        """The findings that belong before the probe."""
        cranked = any(reading.key is Key.CRANK for reading in self.readings)
        found = walkround_findings(self.walkround, self.sheet, unit=self.unit, meter=self.meter, cranked=cranked)
        return (*found, *photos_named(self.missing, self.refused))

    def at_wires(self, staked: Mapping[SlotName, Wire | None]) -> tuple[Finding, ...]:
        """Whether the wires at stake are dead with the battery switch open, on a dangerous-goods body that has one."""
        if self.walkround is None or not self.walkround.hazards.dangerous_goods:
            return ()
        hazards, vehicle = self.walkround.hazards, self.sheet.vehicle
        if not has_switch(hazards, vehicle.battery_switch):
            return ()
        return tuple(
            upstream(
                Tapped(slot, wire.name),
                self.readings,
                system_V=vehicle.system_V,
                meter=self.meter,
                consent=hazards.dangerous_goods_consent,
            )
            for slot, wire in staked.items()
            if wire is not None
        )

    def after(self) -> tuple[Finding, ...]:
        """The vehicle's condition after the work against that before; nothing without a walkround."""
        walked = self.walkround
        return () if walked is None else (condition_after(walked.before, walked.after),)
