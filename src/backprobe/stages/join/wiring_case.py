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
from backprobe.limits.fuses import COLD_MOHM, HOT_AMBIENT_C
from backprobe.physics.span import Span
from backprobe.stages.join.conductor import Conductor, conductor_of
from backprobe.stages.join.fuse_opening import Fuse
from backprobe.stages.join.measured import (
    UNREAD_GROUND_OHM,
    UNREAD_JOINT_OHM,
    UNREAD_TAP_OHM,
    read_ohm,
    together,
)
from backprobe.stages.join.wire_calc import resistance_ohm

NOTHING = Span(0.0, 0.0, 0.0)
FUSE_SPREAD = 1.5  # our own model: a fuse in use has up to half more than its data sheet's figure, contacts and all


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
class WiringCase:
    """A job's sheets, its meter, the worst crank on the tapped wires, and the fleet's own policy."""

    sheet: JobSheet
    unit: UnitSheet
    meter: Meter
    supply_crank: Waveform | None = None
    ignition_crank: Waveform | None = None
    policy: FleetPolicy | None = None

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
            if lead.purpose in purposes and joint is not None and (joint.wire or joint.place):
                yield lead, joint


def conductor_for(lead: Lead) -> Conductor | None:
    """The wire of a lead; None where the unit's sheet gives no size."""
    if lead.mm2 is None and lead.awg is None:
        return None
    return conductor_of(mm2=lead.mm2) if lead.mm2 is not None else conductor_of(awg=lead.awg)


def lead_ohm(lead: Lead, joint: Joint, *, ambient_C: float) -> Span | None:
    """The resistance of a lead once, hot [Ω]; None while its length or size is not told."""
    wire = conductor_for(lead)
    if wire is None or joint.length_m is None:
        return None
    return resistance_ohm(wire, joint.length_m, temperature_C=ambient_C)


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
    """The resistance of battery and vehicle wiring up to the tap [Ω]: as read, else what is met."""
    drop = case.told.tap
    return UNREAD_TAP_OHM if drop is None else read_ohm(drop, case.meter)


def fuse_ohm(fuse: Fuse) -> Span:
    """The resistance of a fuse in use [Ω]; that of the next smaller one where its own was not read."""
    rows = sorted((rating, mohm) for (kind, rating), (mohm, _) in COLD_MOHM.items() if kind == fuse.type)
    smaller = [mohm for rating, mohm in rows if rating <= fuse.rating_A] or [rows[0][1] * rows[0][0] / fuse.rating_A]
    cold = smaller[-1] / 1000.0
    return Span(0.0, cold, cold * FUSE_SPREAD)


def to_unit_ohm(case: WiringCase, lead: Lead, *, joint: Joint, fuse: Fuse | None) -> Span | None:
    """From the tap through joint, fuse, lead and ground lead to the battery's negative [Ω]; None where not told."""
    out = lead_ohm(lead, joint, ambient_C=case.ambient_C)
    if out is None:
        return None
    back = [
        together(ohm, joint_ohm(grounded, case.meter))
        for ground, grounded in case.joined(Purpose.GROUND)
        if (ohm := lead_ohm(ground, grounded, ambient_C=case.ambient_C)) is not None
    ]
    through = NOTHING if fuse is None else fuse_ohm(fuse)
    return together(joint_ohm(joint, case.meter), through, out, *back[:1], ground_ohm(case))
