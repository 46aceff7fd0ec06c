"""Which gates a blade fuse of some type and rating has."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.errors import OptionError
from backprobe.limits.fuses import COLOURS, GATES
from backprobe.limits.sourced import Gate

TYPES = ("C", "E", "F")
TYPE_C_TO_A = 40.0


@dataclass(frozen=True, slots=True)
class Gates:
    """The gates that a fuse is judged by, ascending in percent, and those from memory that are only shown.

    Percents are of `as_A`: the rating itself, or the nearest for which figures were read. `only_faster_read` is set
    where that nearest one is smaller, so that the fuse at hand can be slower than the gates say.
    """

    as_A: float
    verified: tuple[Gate, ...]
    unverified: tuple[Gate, ...]
    only_faster_read: bool = False


def usual_type(rating_A: float) -> str:
    """The type that a rating is taken for where nobody says: C up to 40 A, E above."""
    return "C" if rating_A <= TYPE_C_TO_A else "E"


def ratings_of(fuse_type: str) -> tuple[float, ...]:
    """The ratings that a type is made in [A], ascending."""
    return tuple(sorted(rating_A for type_, rating_A in COLOURS if type_ == fuse_type))


def gates_of(fuse_type: str, rating_A: float) -> Gates:
    """The gates of a fuse. Raises OptionError for a rating that the type does not have.

    Below the smallest rating that was read its gates serve, at the same amperes: a smaller fuse of the same body opens
    no later. Between two groups the larger one's do, for the same reason.

    >>> gates_of("C", 1).as_A, [gate.percent for gate in gates_of("C", 10).verified]
    (3.0, [110.0, 135.0, 160.0, 200.0, 350.0])
    """
    _check(fuse_type, rating_A)
    of_type = [gate for gate in GATES if gate.type == fuse_type]
    read = [gate for gate in of_type if gate.verified]
    smallest_A, largest_A = min(gate.from_A for gate in read), max(gate.to_A for gate in read)
    if rating_A > largest_A:
        return Gates(largest_A, _at(read, largest_A), _at(of_type, rating_A), only_faster_read=True)
    as_A = max(rating_A, smallest_A)
    if not _at(read, as_A):
        as_A = min(gate.from_A for gate in read if gate.from_A > as_A)
    verified = _at(read, as_A)
    known = {gate.percent for gate in verified}
    others = tuple(gate for gate in _at(of_type, as_A) if gate.percent not in known)
    return Gates(as_A, verified, others)


def _at(gates: list[Gate], rating_A: float) -> tuple[Gate, ...]:
    chosen = (gate for gate in gates if gate.from_A <= rating_A <= gate.to_A)
    return tuple(sorted(chosen, key=lambda gate: gate.percent))


def _check(fuse_type: str, rating_A: float) -> None:
    if fuse_type not in TYPES:
        raise OptionError(f"no blade fuse is of type '{fuse_type}': C (medium), E (high current) or F (miniature)")
    ratings = ratings_of(fuse_type)
    if not ratings[0] <= rating_A <= ratings[-1]:
        span = f"{ratings[0]:g} to {ratings[-1]:g} A"
        raise OptionError(f"a fuse of {rating_A:g} A: blade fuses of type {fuse_type} are made for {span}")
