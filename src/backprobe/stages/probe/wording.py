"""Roles and probabilities in words."""

from __future__ import annotations

from backprobe.stages.probe.roles import Role


def words(role: Role) -> str:
    """A role in words.

    >>> words(Role.IGNITION_NOT_IN_CRANK)
    'ignition not in crank'
    """
    return str(role).replace("_", " ")


def share(probability: float) -> str:
    """A probability in words; never 100 %, as no reading makes a wire certain.

    >>> share(0.873), share(0.9993)
    ('87%', 'over 99%')
    """
    return "over 99%" if probability >= 0.995 else f"{probability:.0%}"
