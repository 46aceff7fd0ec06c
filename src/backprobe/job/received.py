"""The findings on a job's receiver logs."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.evidence.reception import Reception
from backprobe.findings import Finding
from backprobe.stages.mount.reception.findings import reception_findings


def received(logs: Sequence[Reception], *, heading_deg: float | None = None) -> tuple[Finding, ...]:
    """The findings on every log; with `heading_deg`, where the vehicle's front pointed, sides of the cab are named."""
    return tuple(finding for log in logs for finding in reception_findings(log, heading_deg=heading_deg))
