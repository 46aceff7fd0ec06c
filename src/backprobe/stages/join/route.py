"""How the leads run: through metal, past heat, fuel and what moves, and where water goes."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.findings import Finding, Standing
from backprobe.stages.join.matter import either
from backprobe.stages.join.wiring_case import WiringCase

# What is written where it is not so, with the rule for it; without one it is common practice.
ASKED = {
    "grommets": "a hole in sheet metal without a grommet: its edge cuts the insulation (13 CCR 1249)",
    "sheathed": "not covered all round (49 CFR 393.28 by SAE J1292 and the agency's guidance: the whole circumference)",
    "held": "not tied along the way",
    "drip_loop": "no low point before the unit: water runs along the leads into it",
    "clear_of_heat": "beside exhaust, heater or engine: the insulation ages",
    "clear_of_fuel": "beside fuel lines or tanks: a spark there starts a fire (13 CCR 1249)",
    "clear_of_moving": "touches what moves: it chafes through",
}


def route(case: WiringCase) -> Iterator[Finding | str]:
    """The finding on how the leads run, or what is missing for it."""
    told = case.told.route
    untold = [key for key in ASKED if told is None or getattr(told, key) is None]
    faults = tuple(words for key, words in ASKED.items() if told is not None and getattr(told, key) is False)
    if untold:
        yield ", ".join(untold)
    if faults or not untold:
        yield either(
            "mount_route",
            "How the leads run",
            faults=faults,
            fine=f"grommets, sheath, ties, drip loop; clear of heat, fuel and what moves ({Standing.COMMON_PRACTICE})",
            then="lead them another way, or put right what is named",
        )
