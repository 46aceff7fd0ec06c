"""A row of the table of materials."""

from __future__ import annotations

from backprobe.findings import Standing
from backprobe.limits.material import Material
from backprobe.limits.sourced import Basis


def test_a_row_says_what_it_rests_on() -> None:
    """The basis comes with its standing."""
    row = Material(id="x", what="x", least_dB=1, value_dB=2, most_dB=3, basis=Basis("a test", Standing.FROM_MEMORY))
    assert row.basis.warrant == "a test (from memory, unverified)"
