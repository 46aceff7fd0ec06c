"""Was another tracker or alarm fitted before, and what became of it?"""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.walkround import Fate, FoundDevice, Walkround
from backprobe.findings import Finding
from backprobe.stages.walkround.doubts import Doubt, Matter, not_said, wrong

DEVICES = Matter("previous_device", "Devices fitted before")
LOOK = (
    "look behind the dash, under the seats and at the batteries for another unit or an alarm; write it under [devices]"
)
ASK = "ask whoever may say so, and write who consented (consent)"


def previous_device(walkround: Walkround) -> Finding:
    """The finding on devices that somebody fitted before.

    What was found must be left or removed by somebody's consent; removed without one fails.
    """
    doubts = [doubt for device in walkround.devices for doubt in _doubts(device)]
    if not walkround.devices and not walkround.looked_for_devices:
        doubts = [not_said("nobody is said to have looked for another unit or an alarm", LOOK)]
    found = ", ".join(f"{one.what} ({one.fate} by consent of {one.consent})" for one in walkround.devices)
    return DEVICES.finding(doubts, well=f"found: {found}" if found else "no other device found")


def _doubts(device: FoundDevice) -> Iterator[Doubt]:
    if device.fate is None:
        yield not_said(f"{device.what}: left or removed is not said", 'write fate = "left" or "removed"')
    elif device.consent is None and device.fate is Fate.REMOVED:
        yield wrong(f"{device.what} was removed, and nobody is named who consented", ASK)
    elif device.consent is None:
        yield not_said(f"{device.what} was left; by whose consent is not said", ASK)
