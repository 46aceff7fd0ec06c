"""The findings on a job's receiver logs."""

from tests.samples.receptions import OPEN_SKY, reception, sky_bins

from backprobe.findings import Stage
from backprobe.job.received import received


def test_every_log_has_its_findings() -> None:
    """Two logs, named by their files; nothing without a log."""
    found = received((reception(file="nmea/a.nmea"), reception(file="nmea/b.nmea")))
    assert {finding.what.rpartition(", ")[2] for finding in found} == {"nmea/a.nmea", "nmea/b.nmea"}
    assert {finding.stage for finding in found} == {Stage.MOUNT}
    assert received(()) == ()


def test_sides_of_the_cab() -> None:
    """With a heading the blocked side is one of the cab's."""
    bins = sky_bins({az: cn0 - 16 if 90 <= az < 180 else cn0 for az, cn0 in OPEN_SKY.items()})
    assert "left" in received((reception(bins=bins),), heading_deg=225.0)[0].what
