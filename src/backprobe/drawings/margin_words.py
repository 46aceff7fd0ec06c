"""A finding in words and figures: what a margin bar says, and what those hear who cannot see it."""

from __future__ import annotations

import math

from backprobe.drawings.figures import figure_text, short_figure_text, with_unit
from backprobe.findings import Finding

_LIMIT_DIGITS = 6  # a limit is shown as it is set, however few decimals the value has


def described(finding: Finding) -> str:
    """The finding in one paragraph, for those who hear the picture instead of seeing it.

    >>> from backprobe.findings import Stage, Verdict
    >>> described(Finding(id="a", stage=Stage.PROBE, what="Supply", verdict=Verdict.OPEN, because="no reading"))
    'Supply: no value. Verdict: open. no reading'
    """
    value, margin = finite(finding.value), finite(finding.margin)
    parts = [f"{finding.what}: {'no value' if value is None else shown_figure(finding, value)}"]
    span = range_text(finding)
    if span:
        parts[0] += f", the evidence allows {span}"
    if finding.limit is not None:
        parts.append(f"Limit: {limit_text(finding)}")
        if margin is not None:
            parts.append(f"Margin: {margin_text(finding, margin)}")
    parts.append(f"Verdict: {finding.verdict}")
    if finding.limit is not None:
        parts.append(f"Basis: {finding.limit.warrant}")
    return ". ".join(parts) + (f". {finding.because}" if finding.because else ".")


def finite(value: float | None) -> float | None:
    """`value` where it is a number that can be drawn, else None."""
    return value if value is not None and math.isfinite(value) else None


def shown_figure(finding: Finding, value: float) -> str:
    """`value` with the finding's decimals and unit."""
    return with_unit(figure_text(value, finding.digits), finding.unit)


def range_text(finding: Finding) -> str:
    """The range that the evidence allows, '9.40 to 10.40 V'; empty where none is known."""
    low, high = finite(finding.low), finite(finding.high)
    if low is None or high is None:
        return ""
    return f"{figure_text(low, finding.digits)} to {shown_figure(finding, high)}"


def limit_text(finding: Finding) -> str:
    """The limit, 'at least 9 V'; empty where there is none."""
    if finding.limit is None:
        return ""
    return f"{finding.limit.side} {with_unit(short_figure_text(finding.limit.value, _LIMIT_DIGITS), finding.unit)}"


def margin_text(finding: Finding, margin: float) -> str:
    """How far the value is inside or outside the limit, '0.30 V inside'."""
    if margin == 0:
        return "on the limit"
    return f"{shown_figure(finding, abs(margin))} {'inside' if margin > 0 else 'outside'}"
