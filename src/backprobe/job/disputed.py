"""What a journal leaves open, as findings: two people said two things, or an entry has not arrived."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.findings import Finding, Stage, Verdict


def disputed(matters: Sequence[str]) -> tuple[Finding, ...]:
    """A finding for each matter that is open, given in words."""
    return tuple(
        Finding(
            id="journal_open",
            stage=Stage.HAND_OVER,
            what="Journal",
            verdict=Verdict.OPEN,
            because=text,
            next="decide which of the two is right and write it down",
        )
        for text in matters
    )
