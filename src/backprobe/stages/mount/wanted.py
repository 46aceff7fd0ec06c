"""What is asked of a place: the sheet's own figures, or those of the performance standard."""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.mount_sheet import MountSheet
from backprobe.findings import Limit, Standing
from backprobe.limits.sky import SKY
from backprobe.stages.mount.day import Quality


def quality_of(sheet: MountSheet) -> Quality:
    """What a fix must be; an HDOP of the sheet's own stands alone, without the standard's PDOP."""
    if sheet.hdop_most is not None and sheet.pdop_most is None:
        return Quality(pdop_most=float("inf"), hdop_most=sheet.hdop_most)
    return Quality(pdop_most=sheet.pdop_most or SKY["pdop_most"].value, hdop_most=sheet.hdop_most)


def quality_words(sheet: MountSheet) -> str:
    """The same in words.

    >>> quality_words(MountSheet(file="mount.toml", places=()))
    'four satellites and PDOP 6 or less'
    """
    quality = quality_of(sheet)
    asked = [] if quality.pdop_most == float("inf") else [f"PDOP {quality.pdop_most:g} or less"]
    asked += [] if quality.hdop_most is None else [f"HDOP {quality.hdop_most:g} or less"]
    return " and ".join(["four satellites", *asked])


def share_limit(sheet: MountSheet) -> Limit:
    """How much of the day such a fix must be there."""
    usual = SKY["fix_share"]
    if sheet.share_percent is None:
        return usual
    basis = f"{sheet.file}: what this fleet wants"
    return replace(usual, value=sheet.share_percent, basis=basis, standing=Standing.COMMON_PRACTICE)
