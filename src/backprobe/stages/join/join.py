"""Will it hold: every finding on the wiring of a job that has joints."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.findings import Finding
from backprobe.stages.join.crank_low import crank_low
from backprobe.stages.join.crank_volts import crank_volts, ignition_dip
from backprobe.stages.join.ground import ground
from backprobe.stages.join.idle_transmit import idle_transmit
from backprobe.stages.join.inputs import inputs
from backprobe.stages.join.joint_work import joint_work
from backprobe.stages.join.lead_fuse import lead_fuses
from backprobe.stages.join.matter import Matter, findings_of, matter
from backprobe.stages.join.mount import mount
from backprobe.stages.join.order import order
from backprobe.stages.join.path_budget import path_budget
from backprobe.stages.join.route import route
from backprobe.stages.join.unused import unused
from backprobe.stages.join.vehicle_fuse import vehicle_fuse
from backprobe.stages.join.wiring_case import WiringCase


def join_findings(case: WiringCase) -> tuple[Finding, ...]:
    """The findings on order, wire, fuse, ground, joints, inputs and mount; none while there is no joint.

    What was not told stands in one `open` finding for each of these matters.
    """
    if not case.sheet.joints:
        return ()
    return tuple(finding for each in _matters(case) for finding in findings_of(each))


def _matters(case: WiringCase) -> Iterator[Matter]:
    yield matter("order", order(case), table="[join] and [[joint]]")
    wire = (*crank_volts(case), *crank_low(case), *path_budget(case), *idle_transmit(case), *ignition_dip(case))
    yield matter("wire", wire, table="[join] and [[joint]]")
    yield matter("fuse", (*lead_fuses(case), *vehicle_fuse(case)), table="[join]")
    yield matter("ground", ground(case), table="[ground]")
    yield matter("joints", joint_work(case), table="[[joint]]")
    yield matter("inputs", (*inputs(case), *unused(case)), table="[[input]]")
    yield matter("mount", mount(case), table="[mount]")
    yield matter("route", route(case), table="[route]")
