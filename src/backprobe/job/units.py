"""What the server has said of the job's unit: a finding where the unit is in another vehicle."""

from __future__ import annotations

from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.fold import JobState
from backprobe.job.kinds import UNIT_REFUSED, text

FINDING = "unit_elsewhere"


def unit_findings(state: JobState) -> tuple[Finding, ...]:
    """One finding, which fails, for each unit that this job was refused and still waits for."""
    refused = state.of_kind(UNIT_REFUSED)
    return tuple(
        _elsewhere(text(one.body, "serial") or "", text(one.body, "held_by") or "", vehicle=text(one.body, "vehicle"))
        for one in refused
    )


def _elsewhere(serial: str, job: str, *, vehicle: str | None) -> Finding:
    where = f"job {job}" if vehicle is None else f"job {job}, vehicle {vehicle}"
    return Finding(
        id=FINDING,
        stage=Stage.MOUNT,
        what=f"Unit {serial}",
        verdict=Verdict.FAILS,
        because=f"this serial number is in another vehicle: {where}",
        next=f"read the number off the unit again; if it is {serial}, settle with the lead which vehicle has it",
    )
