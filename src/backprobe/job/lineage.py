"""What stands after all corrections and withdrawals, in whatever order they arrived.

Every entry of evidence, every correction and every withdrawal is a statement; the last two name what they replace. A
statement that nobody replaces stands. Where two that say different things replace one and the same entry, both stand
and the matter is disputed until a statement replaces both.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from backprobe.job.canonical import Body
from backprobe.job.entry import Entry
from backprobe.job.kinds import CORRECTION, WITHDRAWN, content, table, text, texts


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """What `entry` says: a `body` of `kind`, or nothing (`kind` None, a withdrawal), in place of `replaces`."""

    entry: Entry
    kind: str | None
    body: Body
    replaces: tuple[str, ...] = ()
    disputed: bool = False

    @property
    def id(self) -> str:
        """The id of the entry."""
        return self.entry.id

    def says_as(self, other: Statement) -> bool:
        """Whether both say the same thing."""
        if self.kind is None or other.kind is None:
            return self.kind is other.kind
        return self.kind == other.kind and content(self.kind, self.body) == content(other.kind, other.body)


@dataclass(frozen=True, slots=True, order=True)
class Dispute:
    """One entry, `about`, in whose place several statements stand that say different things."""

    about: str
    standing: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """The statements that stand, the disputes among them, and the ids they name that have not arrived."""

    statements: tuple[Statement, ...]
    disputes: tuple[Dispute, ...]
    awaited: tuple[str, ...]


def statement(entry: Entry) -> Statement:
    """What `entry` says; its body must be well formed (`kinds.misfit`)."""
    if entry.kind == WITHDRAWN:
        return Statement(entry=entry, kind=None, body={}, replaces=_others(entry, texts(entry.body, "entry")))
    if entry.kind == CORRECTION:
        named = _others(entry, texts(entry.body, "replaces"))
        return Statement(entry=entry, kind=text(entry.body, "kind"), body=table(entry.body, "body"), replaces=named)
    return Statement(entry=entry, kind=entry.kind, body=entry.body)


def standing(statements: Iterable[Statement], arrived: Collection[str]) -> Standing:
    """What stands of `statements`; `arrived` are the ids of all entries, those not understood included.

    Of several statements in one place that say the same thing the one with the lowest id stands. Statements that
    replace one another in a circle all stand, disputed: nothing is lost to a forged or broken correction.
    """
    by_id = {one.id: one for one in sorted(statements, key=lambda one: one.id)}
    named = {name for one in by_id.values() for name in one.replaces}
    ancestry = {one.id: _ancestry(one, by_id) for one in by_id.values() if one.id not in named}
    circling = sorted(by_id.keys() - set().union(*ancestry.values()))
    firsts = {end: _firsts(reached, by_id) for end, reached in ancestry.items()}
    kept, disputes = _settled(firsts | dict.fromkeys(circling, circling[:1]), by_id)
    disputed = {name for dispute in disputes for name in dispute.standing}
    return Standing(
        statements=tuple(replace(one, disputed=one.id in disputed) for one in kept if one.kind is not None),
        disputes=disputes,
        awaited=tuple(sorted(named.difference(arrived))),
    )


def _others(entry: Entry, names: Iterable[str]) -> tuple[str, ...]:
    return tuple(sorted(set(names) - {entry.id}))


def _ancestry(end: Statement, by_id: Mapping[str, Statement]) -> set[str]:
    """The ids of `end` and of everything that it replaces, directly or not."""
    seen: set[str] = set()
    waiting = [end.id]
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting.extend(by_id[name].replaces if name in by_id else ())
    return seen


def _firsts(reached: Iterable[str], by_id: Mapping[str, Statement]) -> list[str]:
    """Those among the ids of an ancestry that replace nothing themselves, or have not arrived."""
    return sorted(name for name in reached if name not in by_id or not by_id[name].replaces)


def _settled(
    firsts: Mapping[str, Sequence[str]], by_id: Mapping[str, Statement]
) -> tuple[list[Statement], tuple[Dispute, ...]]:
    """Which statements stand, given the first entries in whose place each one is, and where different ones meet."""
    kept: list[Statement] = []
    places: dict[str, list[Statement]] = defaultdict(list)
    for name in sorted(firsts):
        one = by_id[name]
        if any(one.says_as(other) for first in firsts[name] for other in places[first]):
            continue
        kept.append(one)
        for first in firsts[name]:
            places[first].append(one)
    met = (Dispute(about, tuple(one.id for one in ends)) for about, ends in places.items() if len(ends) > 1)
    return kept, tuple(sorted(met))
