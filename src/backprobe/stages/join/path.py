"""The way of the unit's current from the tap to the battery's negative, part by part."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.physics.span import Span
from backprobe.stages.join.fuse_opening import Fuse
from backprobe.stages.join.fuse_resistance import fuse_ohm
from backprobe.stages.join.measured import together
from backprobe.stages.join.wiring_case import WiringCase, ground_ohm, joint_ohm, lead_ohm


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the way: what it is, what it resists [Ω], and how its drop is read where nobody read it (else '')."""

    name: str
    ohm: Span
    unread: str = ""


def path_parts(case: WiringCase, lead: Lead, *, joint: Joint, fuse: Fuse | None) -> tuple[Part, ...] | None:
    """The parts from the tap through joint, fuse, lead and ground to the battery's negative; None where not told."""
    out = lead_ohm(lead, joint, ambient_C=case.ambient_C)
    if out is None:
        return None
    through = () if fuse is None else (Part(f"the {fuse.rating_A:g} A fuse", fuse_ohm(fuse)),)
    return (_joint(case, joint), *through, Part(f"lead '{lead.name}'", out), *_back(case), _ground(case))


def to_unit_ohm(case: WiringCase, lead: Lead, *, joint: Joint, fuse: Fuse | None) -> Span | None:
    """What all of them resist together [Ω]; None where not told."""
    parts = path_parts(case, lead, joint=joint, fuse=fuse)
    return None if parts is None else together(*(part.ohm for part in parts))


def _back(case: WiringCase) -> Iterator[Part]:
    """The ground lead with its joint: the first that is told."""
    for lead, joint in case.joined(Purpose.GROUND):
        ohm = lead_ohm(lead, joint, ambient_C=case.ambient_C)
        if ohm is not None:
            yield _joint(case, joint)
            yield Part(f"lead '{lead.name}'", ohm)
            return


def _joint(case: WiringCase, joint: Joint) -> Part:
    unread = "" if joint.drop_mV is not None and joint.drop_A is not None else "drop_mV and drop_A across that joint"
    return Part(f"the joint of '{joint.lead}'", joint_ohm(joint, case.meter), unread)


def _ground(case: WiringCase) -> Part:
    unread = "" if case.told.ground is not None else "drop_mV and load_A under [ground]"
    return Part("the ground", ground_ohm(case), unread)
