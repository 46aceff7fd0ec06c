"""How one matter of the walkround is judged: by what is wrong with it or not said, and if nothing is, as well."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.findings import Finding, Stage, Verdict, worst


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing that is wrong (`fails`) or not said (`open`), and what to do about it; None where that is not due."""

    verdict: Verdict
    because: str
    then: str | None


def not_said(because: str, then: str | None) -> Doubt:
    """A doubt about evidence that is missing."""
    return Doubt(Verdict.OPEN, because, then)


def wrong(because: str, then: str) -> Doubt:
    """A doubt about evidence that speaks against the work."""
    return Doubt(Verdict.FAILS, because, then)


@dataclass(frozen=True, slots=True)
class Matter:
    """A matter of the walkround: its finding's id, what it is about, and the stage it belongs to."""

    id: str
    what: str
    stage: Stage = Stage.WALKROUND

    def finding(self, doubts: Sequence[Doubt], *, well: str) -> Finding:
        """The finding: the worst of the doubts and what to do about it, all of them told; `well` where there is none.

        >>> Matter("key", "Key").finding([], well="with the driver").verdict
        <Verdict.HOLDS: 'holds'>
        """
        verdict = worst(doubt.verdict for doubt in doubts) if doubts else Verdict.HOLDS
        first = next((doubt for doubt in doubts if doubt.verdict is verdict and doubt.then), None)
        return Finding(
            id=self.id,
            stage=self.stage,
            what=self.what,
            verdict=verdict,
            because="; ".join(doubt.because for doubt in doubts) or well,
            next=None if first is None else first.then,
        )


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words in a row as they are said.

    >>> listed(["VIN", "plate", "fleet number"]), listed(["VIN"])
    ('VIN, plate and fleet number', 'VIN')
    """
    return f" {last} ".join([*([", ".join(words[:-1])] if len(words) > 1 else []), *words[-1:]])
