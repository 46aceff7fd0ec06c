"""A fleet's own limits: they may tighten ours, never loosen them."""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.findings import Finding, Side, judge, worst

BY_POLICY = "{file}, the fleet's own policy; without it {value:g} {unit}, {basis}"


def tightened(finding: Finding, value: float | None, *, policy: FleetPolicy | None) -> Finding:
    """The finding held against the fleet's limit `value`, where that is the tighter one; else as it is."""
    limit = finding.limit
    if value is None or policy is None or limit is None:
        return finding
    tighter = value > limit.value if limit.side is Side.AT_LEAST else value < limit.value
    if not tighter:
        return finding
    basis = BY_POLICY.format(file=policy.file, value=limit.value, unit=limit.unit, basis=limit.basis)
    own = replace(limit, value=value, basis=basis)
    verdict = worst((finding.verdict, judge(own, finding.value, low=finding.low, high=finding.high)))
    same = verdict is finding.verdict
    then = finding.next if same else finding.next or f"the fleet's policy asks for {own.side} {value:g} {own.unit}"
    return replace(finding, limit=own, verdict=verdict, next=then)
