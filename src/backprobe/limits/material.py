"""What one row of the table of materials is."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.limits.sourced import Basis


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a material takes from a satellite's signal [dB]: the least, the value reckoned with, the most."""

    id: str
    what: str
    least_dB: float
    value_dB: float
    most_dB: float
    basis: Basis
