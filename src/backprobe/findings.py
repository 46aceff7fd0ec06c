"""A finding: one measured value against one limit, and the next thing to do.

The verdict is always drawn the same way. The evidence allows a range of true values, `low` to `high`; the
meter shows one of them, `value`:

* `holds`  the whole range is inside the limit,
* `thin`   the shown value is inside, part of the range is not,
* `fails`  the shown value is outside,
* `open`   evidence is missing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    """How a value stands to its limit."""

    HOLDS = "holds"
    THIN = "thin"
    FAILS = "fails"
    OPEN = "open"


class Stage(StrEnum):
    """The stages of a job, in the order of the work."""

    WALKROUND = "walkround"
    PROBE = "probe"
    JOIN = "join"
    MOUNT = "mount"
    PROVE = "prove"
    HAND_OVER = "hand over"


class Side(StrEnum):
    """Which side of a limit is allowed."""

    AT_LEAST = "at least"
    AT_MOST = "at most"


class Standing(StrEnum):
    """How well a figure is founded."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice, no source"
    FROM_MEMORY = "from memory, unverified"
    MODEL = "our own model"


@dataclass(frozen=True, slots=True)
class Limit:
    """A figure that a value must not pass: `value` in `unit`, allowed on `side`, with what it rests on."""

    id: str
    value: float
    unit: str
    side: Side
    basis: str
    standing: Standing

    def allows(self, value: float) -> bool:
        """Whether `value` (in the limit's unit) is on the allowed side; the limit itself is allowed."""
        return value >= self.value if self.side is Side.AT_LEAST else value <= self.value

    def margin(self, value: float) -> float:
        """How far `value` is inside the limit, negative outside, in the limit's unit."""
        return value - self.value if self.side is Side.AT_LEAST else self.value - value

    @property
    def warrant(self) -> str:
        """The basis with its standing, as shown beside every finding."""
        return f"{self.basis} ({self.standing})" if self.basis else str(self.standing)


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing that was looked at: what was seen, against what, how it stands, and what to do next.

    `value`, `low` and `high` are in `unit` and None where nothing was measured; `low`..`high` is the whole
    range of true values that the evidence allows. `digits` is how many decimals are shown and compared.
    """

    id: str
    stage: Stage
    what: str
    verdict: Verdict
    because: str
    next: str | None = None
    value: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""
    digits: int = 2
    limit: Limit | None = None

    @property
    def margin(self) -> float | None:
        """How far the shown value is inside the limit, in `unit`; negative outside; None without both."""
        if self.limit is None or self.value is None:
            return None
        return round(self.limit.margin(self.value), self.digits)

    def as_json(self) -> dict[str, object]:
        """The finding as plain JSON values, figures rounded to `digits`."""
        limit = self.limit
        return {
            "id": self.id,
            "stage": str(self.stage),
            "what": self.what,
            "verdict": str(self.verdict),
            "value": rounded(self.value, self.digits),
            "low": rounded(self.low, self.digits),
            "high": rounded(self.high, self.digits),
            "unit": self.unit,
            "limit": None
            if limit is None
            else {
                "id": limit.id,
                "value": rounded(limit.value, self.digits),
                "side": str(limit.side),
                "basis": limit.basis,
                "standing": str(limit.standing),
            },
            "margin": self.margin,
            "because": self.because,
            "next": self.next,
        }


def rounded(value: float | None, digits: int) -> float | None:
    """`value` rounded to `digits` decimals, without a negative zero; None stays None."""
    return None if value is None else round(value, digits) + 0.0


def judge(limit: Limit, value: float | None, *, low: float | None, high: float | None) -> Verdict:
    """The verdict on a shown `value` whose true value may lie anywhere in `low`..`high` (limit's unit)."""
    if value is None or low is None or high is None:
        return Verdict.OPEN
    if not limit.allows(value):
        return Verdict.FAILS
    worst = low if limit.side is Side.AT_LEAST else high
    return Verdict.HOLDS if limit.allows(worst) else Verdict.THIN


_WORST_FIRST = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN, Verdict.HOLDS)


def worst(verdicts: Iterable[Verdict]) -> Verdict:
    """The worst of several verdicts: fails, then open, then thin, then holds; `open` when there are none."""
    found = set(verdicts)
    return next((verdict for verdict in _WORST_FIRST if verdict in found), Verdict.OPEN)
