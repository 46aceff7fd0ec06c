"""Is this the vehicle on the job sheet? VIN, plate and fleet number as read on it against the sheet; and its key."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.job_sheet import Vehicle
from backprobe.evidence.walkround import OnVehicle, VinRead
from backprobe.findings import Finding
from backprobe.stages.walkround.doubts import Doubt, Matter, not_said, wrong
from backprobe.stages.walkround.vin_number import has_right_check_digit, is_north_american, tidied

IDENTITY = Matter("identity", "Vehicle as on the job sheet")
ANOTHER = "stop: make sure which vehicle this is, and put sheet and walkround right"


def identity(seen: OnVehicle, sheet: Vehicle) -> Finding:
    """Whether what was read on the vehicle is what the sheet says, spaces, hyphens, dots and capitals aside.

    A disagreement fails and names both; what the sheet says and nobody read is open. What the sheet does not say cannot
    be compared and is told with what agrees.
    """
    names = (
        ("VIN", sheet.vin, seen.vin),
        ("plate", sheet.plate, seen.plate),
        ("fleet number", sheet.fleet_number, seen.fleet_number),
    )
    doubts = [doubt for name, said, read in names for doubt in _compared(name, said, read=read)]
    if not any(read for _, _, read in names):
        doubts = [not_said("nothing was read on the vehicle", "read VIN, plate and fleet number on the vehicle itself")]
    if seen.key_with is None:
        doubts.append(not_said("who holds the key is not said", "write who holds the key (key_with)"))
    agreed = [name for name, said, read in names if said and read]
    only_read = [f"{name} {read}, not on the sheet" for name, said, read in names if read and not said]
    same = [f"{', '.join(agreed)} as on the sheet{_how(seen)}"] if agreed else []
    return IDENTITY.finding(doubts, well="; ".join([*same, *only_read, f"key with {seen.key_with}"]))


def _how(seen: OnVehicle) -> str:
    """What is to be known of a VIN that was not read whole."""
    return (
        " (of the VIN the last six were typed, the rest compared by eye)" if seen.vin_read is VinRead.LAST_SIX else ""
    )


def _compared(name: str, said: str | None, *, read: str | None) -> Iterator[Doubt]:
    if said and not read:
        yield not_said(f"{name} not read on the vehicle (the sheet says {said})", f"read the {name} on the vehicle")
    elif said and read and tidied(said)[0].casefold() != tidied(read)[0].casefold():
        hint = _which_checks_out(said, read) if name == "VIN" else ""
        yield wrong(f"{name}: {said} on the sheet, {read} on the vehicle{hint}", ANOTHER)


def _which_checks_out(said: str, read: str) -> str:
    """Which of two VINs has the right check digit, where just one has: the other was most likely misread."""
    right = {
        place: has_right_check_digit(vin) and is_north_american(vin)
        for place, vin in (("sheet", tidied(said)[0]), ("vehicle", tidied(read)[0]))
    }
    one = [place for place, is_right in right.items() if is_right]
    return f" (of the two, the one on the {one[0]} has the right check digit)" if len(one) == 1 else ""
