"""The picture of the sky as a job's receiver heard it."""

from tests.samples.receptions import reception

from backprobe.drawings.sky import SkyMaskCell
from backprobe.job.heard_picture import heard_picture


def test_the_longest_log_is_drawn() -> None:
    """Of two logs the longer; the caption names its file, the words its satellites."""
    found = heard_picture((reception(file="nmea/a.nmea", duration_ms=60_000), reception(file="nmea/b.nmea")))
    assert found is not None
    svg, caption, words = found
    assert svg.startswith("<svg")
    assert caption == "nmea/b.nmea: the sky as the receiver heard it"
    assert "G01 at azimuth 5°" in words


def test_nothing_told_is_nothing_to_draw() -> None:
    """No log, or one without satellites."""
    assert heard_picture(()) is None
    assert heard_picture((reception(bins=()),)) is None


def test_a_prediction_goes_beneath() -> None:
    """The caption says so, and the legend names what stands in the way."""
    found = heard_picture((reception(),), mask=(SkyMaskCell(0, 90, 0, 40, 30.0, "sheet metal"),))
    assert found is not None
    assert "predicted" in found[1]
    assert "sheet metal, 30 dB" in found[0]
