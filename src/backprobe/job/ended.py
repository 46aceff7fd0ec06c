"""What is left to do of a job that has ended: its signature, then what it owes."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.evidence.hand_over import End, HandOver
from backprobe.findings import Finding, Verdict
from backprobe.job.signed import FINDING
from backprobe.stages.hand_over.ending import ENDING, obstacles


def closing(hand_over: HandOver | None, findings: Sequence[Finding]) -> Finding | None:
    """The finding that alone says what is left to do: the sign-off while it does not hold, then that on the end.

    None while there is work to do: nobody has said how the job ends, something stands in the way of it, or a job that
    was not given up is not signed over all that there is.
    """
    last = {each.id: each for each in findings if each.id in (FINDING, ENDING)}
    if hand_over is None or len(last) < len((FINDING, ENDING)):
        return None
    if obstacles(hand_over, [each for each in findings if each.id not in last]):
        return None
    if last[FINDING].verdict is Verdict.HOLDS:
        return last[ENDING]
    return last[FINDING] if hand_over.end is End.ABANDONED else None
