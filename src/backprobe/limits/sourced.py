"""What the rows of the electrical tables are made of, and the words for what they rest on."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.findings import Standing


@dataclass(frozen=True, slots=True)
class Basis:
    """What a table rests on, and how well that stands."""

    text: str
    standing: Standing

    @property
    def warrant(self) -> str:
        """The basis with its standing, as shown beside a figure.

        >>> Basis("ISO 6722-1:2011", Standing.FROM_MEMORY).warrant
        'ISO 6722-1:2011 (from memory, unverified)'
        """
        return f"{self.text} ({self.standing})"


@dataclass(frozen=True, slots=True)
class Insulation:
    """An insulation: what the conductor may have for good [°C], its factor k, and where its current is looked up."""

    name: str
    what: str
    conductor_C: float
    k: float
    ampacity_column: int
    basis: Basis


@dataclass(frozen=True, slots=True)
class Gate:
    """At `percent` of its rating a fuse opens after `least_s` at the earliest and `most_s` at the latest; None: unsaid.

    `type` is C, E or F of ISO 8820-3; the gate is for ratings of `from_A` to `to_A`.
    """

    type: str
    from_A: float
    to_A: float
    percent: float
    least_s: float | None
    most_s: float | None
    basis: Basis

    @property
    def verified(self) -> bool:
        """Whether somebody read the figures."""
        return self.basis.standing is not Standing.FROM_MEMORY
