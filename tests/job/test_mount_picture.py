"""The picture of a job's sky."""

from __future__ import annotations

from xml.etree import ElementTree

from tests.samples.mount import BOX, JOB, ROOF, sheet

from backprobe.drawings.sky import SkyPlot, SkySatellite
from backprobe.job.mount_picture import mount_picture
from backprobe.job.mounted import judged_mount
from backprobe.stages.mount.beside import Measured


def test_predicted_alone() -> None:
    """The place, its heading and its figures; nothing where there is no sheet or no choice."""
    shown = mount_picture(judged_mount(sheet(ROOF, heading_deg=90.0), JOB))
    assert shown is not None
    svg, caption, words = shown
    ElementTree.fromstring(svg)
    assert "as heard" not in svg
    assert caption.startswith("on the roof, heading 90°")
    assert "a good fix, of a day: predicted 100.0 %" in words
    assert mount_picture(None) is None
    assert mount_picture(judged_mount(sheet(ROOF, BOX), JOB)) is None


def test_predicted_beside_heard() -> None:
    """What a log showed stands beside, with the figures of both."""
    heard = Measured(hdop=0.93, hdop_low=0.8, hdop_high=1.24, used=12.0, source="reception.nmea")
    log = SkyPlot(satellites=(SkySatellite("G07", 30.0, 50.0, 42.0, used=True),))
    shown = mount_picture(judged_mount(sheet(ROOF), JOB, heard=[heard]), log)
    assert shown is not None
    svg, _, words = shown
    for part in ("as predicted", "as heard", "0.93", "1.24", "G07"):
        assert part in svg
    assert "HDOP, half the time: predicted" in words
