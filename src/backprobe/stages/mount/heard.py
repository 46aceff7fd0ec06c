"""Which satellites are strong enough at a place: the open sky's level less the loss, against what a fix needs."""

from __future__ import annotations

from enum import Enum
from itertools import pairwise

from backprobe.limits.sky import OPEN_SKY, SKY
from backprobe.stages.mount.bent import bent
from backprobe.stages.mount.mask import CELL_DEG, Mask

LEAST_ELEVATION_DEG = SKY["elevation_least"].value


class Case(Enum):
    """How the doubt about losses and needs is settled: against the place, in the middle, in its favour."""

    HARD = "hard"
    USUAL = "usual"
    KIND = "kind"


_NEEDS = {Case.HARD: "cn0_sure", Case.USUAL: "cn0_needed", Case.KIND: "cn0_least"}


def open_sky_dBHz(elevation_deg: float) -> float:
    """How strongly a small upright antenna in the open hears a satellite at an elevation: our own model.

    >>> open_sky_dBHz(5.0), open_sky_dBHz(32.5), open_sky_dBHz(90.0)
    (35.5, 39.5, 43.5)
    """
    if elevation_deg <= OPEN_SKY[0][0]:
        return OPEN_SKY[0][1]
    for (low_deg, low), (high_deg, high) in pairwise(OPEN_SKY):
        if elevation_deg <= high_deg:
            return low + (high - low) * (elevation_deg - low_deg) / (high_deg - low_deg)
    return OPEN_SKY[-1][1]


def usable(mask: Mask, case: Case) -> list[list[bool]]:
    """For each cell of the mask whether a satellite there can be used; against the place, nothing bends round edges."""
    need = SKY[_NEEDS[case]].value
    losses = losses_dB(mask, case)
    return [
        [open_sky_dBHz((row + 0.5) * CELL_DEG) - loss >= need for loss in losses[row]] for row in range(len(losses))
    ]


def losses_dB(mask: Mask, case: Case) -> list[list[float]]:
    """What is lost in each cell [dB]."""
    name = {Case.HARD: "most_dB", Case.USUAL: "value_dB", Case.KIND: "least_dB"}[case]
    straight = [[float(getattr(loss, name)) for loss in row] for row in mask.cells]
    return straight if case is Case.HARD else bent(straight)
