"""Roles and probabilities in words."""

import pytest

from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.wording import share, words


def test_a_role_reads_as_words():
    """No underscore reaches a technician."""
    assert not any("_" in words(role) for role in Role)


@pytest.mark.parametrize(("probability", "said"), [(0.0, "0%"), (0.994, "99%"), (0.995, "over 99%"), (1.0, "over 99%")])
def test_no_reading_makes_a_wire_certain(probability: float, said: str):
    """From 99.5 % on it is 'over 99%', never 100 %."""
    assert share(probability) == said
