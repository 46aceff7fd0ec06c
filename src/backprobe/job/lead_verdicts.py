"""What the findings on the wiring say of one lead of the unit, in a word and a line, as the drawing shows it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Verdict, rounded

URGENCY = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN)
# findings that name no lead, by what the lead is for
OF_PURPOSE = {
    Purpose.SUPPLY: (
        *("join_unit_volts", "join_unit_reset", "join_path_budget", "join_idle_transmit"),
        *("join_vehicle_fuse", "join_selectivity"),
    )
}


def verdict_of_lead(findings: Sequence[Finding], lead: Lead) -> tuple[Verdict, str] | None:
    """The worst verdict on a lead with the finding behind it in a line; None where all of them hold."""
    own = list(_of(findings, lead))
    for verdict in URGENCY:
        bad = [finding for finding in own if finding.verdict is verdict]
        if bad:
            more = "" if len(bad) == 1 else f" (and {len(bad) - 1} more)"
            return verdict, f"{_line(bad[0], lead)}{more}"
    return None


def standing_of_lead(findings: Sequence[Finding], lead: Lead) -> Verdict:
    """How a lead stands: the worst of the findings on it; open where there is none."""
    own = {finding.verdict for finding in _of(findings, lead)}
    return next((verdict for verdict in (*URGENCY, Verdict.HOLDS) if verdict in own), Verdict.OPEN)


def _of(findings: Sequence[Finding], lead: Lead) -> Iterator[Finding]:
    """The findings on a lead; what nobody told of a whole matter is on none of them."""
    named = OF_PURPOSE.get(lead.purpose, ())
    starts = (f"join_{lead.name}_", f"join_{lead.purpose}_")
    for finding in findings:
        if finding.id in named or (finding.id.startswith(starts) and not finding.id.endswith("_told")):
            yield finding


def _line(finding: Finding, lead: Lead) -> str:
    """The finding in a line: its figure against the limit, else why."""
    what = finding.what.removeprefix(f"'{lead.name}': ")
    limit, value = finding.limit, rounded(finding.value, finding.digits)
    if limit is None or value is None:
        return f"{what}: {finding.because}"
    return f"{what}: {value:g} {finding.unit}, {limit.side} {limit.value:g} {limit.unit}"
