"""Places for a unit as evidence."""

from __future__ import annotations

from backprobe.evidence.mount_sheet import MountPlace, MountSheet, Part, Side


def test_what_is_not_said_is_metal_and_any_heading() -> None:
    """A place without parts is shut in metal; a sheet without heading is for any; an upright part has a rake of 90°."""
    place = MountPlace(name="somewhere")
    assert (place.elsewhere, place.parts, place.cover) == ("metal", (), ())
    assert MountSheet(file="mount.toml", places=(place,)).heading_deg is None
    assert Part(material="glass", side=Side.AHEAD, away_mm=300).rake_deg == 90
