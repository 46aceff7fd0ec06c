"""A bus log's findings, and its answer as plain JSON values."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.findings import Finding, Verdict, rounded, worst
from backprobe.stages.bus.dip import dip, sampled_fast_enough
from backprobe.stages.bus.health import health_findings
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import KeyCycle
from backprobe.stages.bus.key_finding import clock_finding, distance_finding, key_finding
from backprobe.stages.bus.vin import vin_finding, vin_said, vin_valid


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a bus log came to in view of a job."""

    heard: Heard
    findings: tuple[Finding, ...]
    system_V: int

    @property
    def verdict(self) -> Verdict:
        """The worst of all findings."""
        return worst(finding.verdict for finding in self.findings)

    def as_json(self) -> dict[str, object]:
        """The whole answer as plain JSON values; times in seconds from the first frame, to the millisecond."""
        heard, vin = self.heard, vin_said(self.heard)
        volts = heard.volts
        return {
            "ok": True,
            "format": heard.format,
            "frames": heard.frames,
            "skipped": dict(heard.skipped),
            "vin": None if vin is None else {"value": vin, "valid": vin_valid(vin)},
            "key": key_json(heard.key),
            "lowest": None if volts is None else {"V": rounded(volts.lowest_V, 2), "at_s": rounded(volts.lowest_s, 3)},
            "rpm_max": rounded(heard.rpm_max, 3),
            "sampled_fast_enough": sampled_fast_enough(heard, system_V=self.system_V),
            "verdict": str(self.verdict),
            "findings": [finding.as_json() for finding in self.findings],
        }


def key_json(key: KeyCycle) -> dict[str, object]:
    """The key's turns as plain JSON values; None where a turn was not seen."""
    return {
        "on_s": rounded(key.on_s, 3),
        "off_s": rounded(key.off_s, 3),
        "cranks": [
            {"start_s": rounded(each.start_s, 3), "end_s": rounded(each.end_s, 3), "started": each.started}
            for each in key.cranks
        ],
    }


def answer(heard: Heard, *, vin: str | None = None, system_V: int | None = None, has_crank: bool = True) -> Answer:
    """The findings on a log; `vin` is the job's, `system_V` the vehicle's where it is known, else as its volts tell.

    Without `has_crank`, an electric or hybrid vehicle, nothing is asked of a starter.
    """
    told_V = 12 if heard.volts is None else heard.volts.system_V
    system = told_V if system_V is None else system_V
    found = [
        vin_finding(heard, wanted=vin),
        key_finding(heard, has_crank=has_crank),
        dip(heard, system_V=system) if has_crank else None,
        *health_findings(heard),
        distance_finding(heard),
        clock_finding(heard),
    ]
    return Answer(heard=heard, findings=tuple(each for each in found if each is not None), system_V=system)
