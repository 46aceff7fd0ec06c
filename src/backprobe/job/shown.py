"""What was shown to the signer, as bytes that are the same whoever writes them: findings, and how the job ended."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from backprobe.evidence.hand_over import HandOver
from backprobe.findings import Finding, worst
from backprobe.job.canonical import Body, Json, canonical
from backprobe.job.rows import figure, plain


def findings_bytes(findings: Sequence[Finding]) -> bytes:
    """The findings in canonical JSON with their worst verdict; figures are text, shown with their declared digits.

    >>> findings_bytes([])
    b'{"findings":[],"verdict":"open"}'
    """
    listed: list[Json] = [_finding(finding) for finding in findings]
    return canonical({"findings": listed, "verdict": str(worst(finding.verdict for finding in findings))})


def _finding(finding: Finding) -> Body:
    limit = finding.limit
    body: Body = {
        "id": plain(finding.id),
        "stage": str(finding.stage),
        "what": plain(finding.what),
        "verdict": str(finding.verdict),
        "because": plain(finding.because),
        "next": None if finding.next is None else plain(finding.next),
        "unit": plain(finding.unit),
        "limit": None,
    }
    for name, value in (("value", finding.value), ("low", finding.low), ("high", finding.high)):
        body[name] = None if value is None else shown_figure(value, finding.digits)
    if limit is not None:
        body["limit"] = {
            "id": limit.id,
            "value": figure(limit.value),
            "unit": limit.unit,
            "side": str(limit.side),
            "basis": plain(limit.basis),
            "standing": str(limit.standing),
        }
    return body


def shown_figure(value: float, digits: int) -> str:
    """`value` with `digits` decimals, without a negative zero.

    >>> shown_figure(12.345, 1), shown_figure(-0.001, 2)
    ('12.3', '0.00')
    """
    return f"{round(value, digits) + 0.0:.{digits}f}"


def hand_over_bytes(hand_over: HandOver) -> bytes:
    """How the job ended, in canonical JSON. It may hold names (who owes what), so it is a blob of its own."""
    missing: list[Json] = [
        {"what": plain(one.what), "owed_by": _plain(one.owed_by), "until": _plain(one.until)}
        for one in hand_over.missing
    ]
    return canonical(
        {
            "end": str(hand_over.end),
            "missing": missing,
            "undone": _texts(hand_over.undone),
            "restored": _texts(hand_over.restored),
            "why": _plain(hand_over.why),
            "told_driver": _texts(hand_over.told_driver),
        }
    )


def _plain(words: str | None) -> str | None:
    return None if words is None else plain(words)


def _texts(items: Iterable[str]) -> list[Json]:
    return [plain(item) for item in items]
