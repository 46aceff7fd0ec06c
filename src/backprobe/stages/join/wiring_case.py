"""Everything that the wiring of a job is judged by, and the resistances around its loop."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.join_sheet import Drop, JoinSheet
from backprobe.evidence.joint import Joint
from backprobe.evidence.meter import Meter
from backprobe.evidence.unit_sheet import Lead, Purpose, UnitSheet
from backprobe.limits.fuses import HOT_AMBIENT_C
from backprobe.physics.span import Span
from backprobe.stages.join.conductor import Conductor, conductor_of
from backprobe.stages.join.measured import (
    UNREAD_GROUND_OHM,
    UNREAD_JOINT_OHM,
    UNREAD_TAP_OHM,
    read_ohm,
)
from backprobe.stages.join.tap_bound import TapBound
from backprobe.stages.join.wire_calc import resistance_ohm


@dataclass(frozen=True, slots=True, kw_only=True)
class Waveform:
    """Volts of a vehicle's wire through a crank: `half_width_V` is how far each sample may be off.

    `verified` is False where the figures are from memory; then nothing is decided by it alone.
    """

    time_s: tuple[float, ...]
    volts: tuple[float, ...]
    half_width_V: float
    source: str
    verified: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class CrankLow:
    """A wire's lowest volts in a crank, as a meter held them: shown, and the range of what they can have been.

    `is_slow` is True where the hold is too slow for the starter's inrush.
    """

    volts: Span
    because: str
    is_slow: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WiringCase:
    """A job's sheets, its meter, the worst crank on the tapped wires, and the fleet's own policy.

    `tap_read` is what the probe's own readings say of the way up to the tap, where nobody measured its drop;
    `supply_low` and `ignition_low` what a meter held of the crank, where no recording shows it.
    """

    sheet: JobSheet
    unit: UnitSheet
    meter: Meter
    supply_crank: Waveform | None = None
    ignition_crank: Waveform | None = None
    policy: FleetPolicy | None = None
    tap_read: TapBound | None = None
    supply_low: CrankLow | None = None
    ignition_low: CrankLow | None = None

    @property
    def told(self) -> JoinSheet:
        """What was written beside the joints."""
        return self.sheet.join

    @property
    def ambient_C(self) -> float:
        """The hottest that the surroundings get [°C]."""
        return HOT_AMBIENT_C if self.told.ambient_C is None else self.told.ambient_C

    def joined(self, *purposes: Purpose) -> Iterator[tuple[Lead, Joint]]:
        """The leads of those purposes that were joined to a wire or grounded, with their joints."""
        said = {joint.lead: joint for joint in self.sheet.joints}
        for lead in self.unit.leads:
            joint = said.get(lead.name)
            if lead.purpose in purposes and joint is not None and (joint.wire or _grounded(lead, joint)):
                yield lead, joint


def _grounded(lead: Lead, joint: Joint) -> bool:
    return lead.purpose is Purpose.GROUND and joint.place is not None


def conductor_for(lead: Lead) -> Conductor | None:
    """The wire of a lead; None where the unit's sheet gives no size."""
    if lead.mm2 is None and lead.awg is None:
        return None
    return conductor_of(mm2=lead.mm2) if lead.mm2 is not None else conductor_of(awg=lead.awg)


def around_C(joint: Joint, *, ambient_C: float) -> float:
    """The hottest that a lead gets [°C]: the surroundings', or what was written of its joint where that is more."""
    return ambient_C if joint.hottest_C is None else max(ambient_C, joint.hottest_C)


def lead_ohm(lead: Lead, joint: Joint, *, ambient_C: float) -> Span | None:
    """The resistance of a lead once, hot [Ω]; None while its length or size is not told."""
    wire = conductor_for(lead)
    if wire is None or joint.length_m is None:
        return None
    return resistance_ohm(wire, joint.length_m, temperature_C=around_C(joint, ambient_C=ambient_C))


def joint_ohm(joint: Joint, meter: Meter) -> Span:
    """The resistance of a joint [Ω]: as read, else what joints that work have."""
    if joint.drop_mV is None or joint.drop_A is None:
        return UNREAD_JOINT_OHM
    return read_ohm(Drop(joint.drop_mV, joint.drop_A), meter)


def ground_ohm(case: WiringCase) -> Span:
    """The resistance from the unit's ground to the battery [Ω]: as read, else what grounds that work have."""
    drop = case.told.ground
    return UNREAD_GROUND_OHM if drop is None else read_ohm(drop, case.meter)


def tap_ohm(case: WiringCase) -> Span:
    """The resistance of battery and vehicle wiring up to the tap [Ω]: as read, else by its bound, else what is met."""
    drop, bound = case.told.tap, tap_limit(case)
    if drop is not None:
        return read_ohm(drop, case.meter)
    return UNREAD_TAP_OHM if bound is None else bound.ohm


def tap_limit(case: WiringCase) -> TapBound | None:
    """The bound that stands for the drop at the tap; None where that was measured, or nothing was read."""
    return case.tap_read if case.told.tap is None else None
