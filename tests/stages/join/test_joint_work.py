"""How a joint was made."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import ON_RED, built, found

from backprobe.evidence.joint import Method
from backprobe.findings import Verdict


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"method": Method.TAP_CONNECTOR}, "not for a supply"),
        ({"strip_mm": 25.0}, "25 mm stripped"),
        ({"strain_relief": False}, "no strain relief"),
        ({"damp": True, "drip_loop": False}, "no drip loop"),
        ({"tugged": False}, "nobody tugged"),
    ],
)
def test_a_joint_made_badly_fails(change: dict[str, object], words: str):
    """Each fault is named."""
    made = found(built(replace(ON_RED, **change)))["join_power_made"]
    assert made.verdict is Verdict.FAILS
    assert words in made.because


def test_where_water_is_the_drip_loop_is_asked_for():
    """It must be said either way."""
    wet = found(built(replace(ON_RED, damp=True)))
    assert "of 'power' drip_loop" in wet["join_joints_told"].because
