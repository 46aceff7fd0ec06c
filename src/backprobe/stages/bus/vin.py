"""The VIN that the vehicle says of itself: whether it is a right one, and whether it is the job's."""

from __future__ import annotations

from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.bus.heard import Heard
from backprobe.stages.walkround.vin import check_vin
from backprobe.stages.walkround.vin_number import tidied

WHAT = "VIN on the bus"
READ_THE_PLATE = "compare the plate at the windscreen or the door frame with the job sheet"
OTHER_VEHICLE = (
    "stop: is this the job's vehicle? Compare the plate with the job sheet; where both agree, an engine computer of "
    "another vehicle may have been fitted, so ask the fleet"
)


def vin_valid(text: str) -> bool:
    """Whether a VIN has the right form and, for North America, the right check digit.

    >>> vin_valid("1M8GDM9AXKP042788"), vin_valid("1M8GDM9A0KP042788")
    (True, False)
    """
    judged = check_vin(text).findings
    return all(each.verdict is Verdict.HOLDS for each in judged if each.id in ("vin_form", "vin_check_digit"))


def vin_said(heard: Heard) -> str | None:
    """The VIN that was sent most often; None where none was sent."""
    return heard.vins[0].text if heard.vins else None


def vin_finding(heard: Heard, *, wanted: str | None) -> Finding | None:
    """The finding on the VIN, against the job's VIN where that is known; None where neither is there."""
    said = vin_said(heard)
    if said is None:
        return None if wanted is None else _unsaid()
    several = sorted({tidied(each.text)[0] for each in heard.vins})
    senders = ", ".join(sorted({f"computer {each.source}" for each in heard.vins if each.text == said}))
    if len(several) > 1:
        why = f"computers of this vehicle say different VINs: {', '.join(several)}"
        return _finding(Verdict.OPEN, why, then=f"decide which is right: {READ_THE_PLATE}")
    if wanted is not None and tidied(wanted)[0] != several[0]:
        why = f"{senders} says {said}, the job says {wanted}"
        return _finding(Verdict.FAILS, why, then=OTHER_VEHICLE)
    if not vin_valid(said):
        wrong = next(each for each in check_vin(said).findings if each.verdict is not Verdict.HOLDS)
        return _finding(Verdict.FAILS, f"{senders} says {said}: {wrong.because}", then=READ_THE_PLATE)
    agrees = ", as the job does" if wanted is not None else ""
    return _finding(Verdict.HOLDS, f"{senders} says {said}{agrees}; its form and check digit are right")


def _unsaid() -> Finding:
    why = "the log holds no VIN; many vehicles send theirs only when they are asked"
    return _finding(Verdict.OPEN, why, then=READ_THE_PLATE)


def _finding(verdict: Verdict, because: str, *, then: str | None = None) -> Finding:
    return Finding(id="bus_vin", stage=Stage.WALKROUND, what=WHAT, verdict=verdict, because=because, next=then)
