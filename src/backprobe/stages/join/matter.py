"""What a check on the wiring comes to: its findings, and what it could not be told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from backprobe.findings import Finding, Stage, Verdict


@dataclass(frozen=True, slots=True)
class Matter:
    """One matter, as 'ground': the findings, what is `missing` in words, and where that is written down."""

    name: str
    findings: tuple[Finding, ...]
    missing: tuple[str, ...]
    table: str


def matter(name: str, parts: Iterable[Finding | str], *, table: str) -> Matter:
    """The matter of what a check gives: findings, and texts for what is missing."""
    given = tuple(parts)
    found = tuple(part for part in given if isinstance(part, Finding))
    return Matter(name, found, tuple(dict.fromkeys(part for part in given if isinstance(part, str))), table)


def findings_of(each: Matter) -> Iterator[Finding]:
    """The findings of a matter; all that is missing stands in one of them."""
    yield from each.findings
    if each.missing:
        yield Finding(
            id=f"join_{each.name}_told",
            stage=Stage.JOIN,
            what=f"What is known of the {each.name}",
            verdict=Verdict.OPEN,
            because=f"not told: {'; '.join(each.missing)}",
            next=f"complete {each.table} of the job sheet: {each.missing[0]}",
        )


def plain(name: str, what: str, *, verdict: Verdict, because: str, then: str | None = None) -> Finding:
    """A finding without a figure."""
    return Finding(id=name, stage=Stage.JOIN, what=what, verdict=verdict, because=because, next=then)


def either(name: str, what: str, *, faults: tuple[str, ...], fine: str, then: str) -> Finding:
    """A finding without a figure that fails for its `faults`, all of them named, and holds where there is none."""
    if faults:
        return plain(name, what, verdict=Verdict.FAILS, because="; ".join(faults), then=then)
    return plain(name, what, verdict=Verdict.HOLDS, because=fine)
