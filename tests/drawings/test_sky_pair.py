"""Two skies side by side."""

from __future__ import annotations

from xml.etree import ElementTree

from backprobe.drawings.sky import SkyMaskCell, SkyPlot, SkySatellite
from backprobe.drawings.sky_pair import PairRow, SkyPair, described_pair, sky_pair

PREDICTED = SkyPlot(mask=(SkyMaskCell(90.0, 270.0, 0.0, 60.0, 40.0, "metal"),), heading_deg=0.0)
HEARD = SkyPlot(satellites=(SkySatellite("G07", 30.0, 50.0, 42.0, used=True),), heading_deg=0.0)
ROWS = (PairRow("HDOP, half the time", "1.01", "0.92"), PairRow("a good fix, of a day", "97.0 %"))


def size(svg: str) -> tuple[float, float]:
    """Width and height of a picture that is whole XML."""
    root = ElementTree.fromstring(svg)
    return float(root.attrib["width"]), float(root.attrib["height"])


def test_both_with_their_figures() -> None:
    """Both disks, named, and each figure twice; what was not heard is a dash."""
    drawn = sky_pair(SkyPair(title="The sky", predicted=PREDICTED, heard=HEARD, rows=ROWS))
    assert drawn.count("<svg") == 3
    for words in ("as predicted", "as heard", "G07 42", "1.01", "0.92", "97.0 %", "–"):
        assert words in drawn


def test_one_alone_is_no_higher_than_its_disk() -> None:
    """Without anything heard the figures stand beside the disk: the picture is as wide, and lower."""
    one = size(sky_pair(SkyPair(title="The sky", predicted=PREDICTED, rows=ROWS)))
    both = size(sky_pair(SkyPair(title="The sky", predicted=PREDICTED, heard=HEARD, rows=ROWS)))
    assert one[0] == both[0]
    assert one[1] < both[1]


def test_figures_heard_without_a_picture_stand_beside_the_predicted_ones() -> None:
    """A unit's reports give figures but no sky: both columns stand beside the one disk; without any there is one."""
    drawn = sky_pair(SkyPair(title="The sky", predicted=PREDICTED, rows=ROWS))
    assert "as heard" not in drawn
    for words in (">heard<", "0.92", "–"):
        assert words in drawn
    assert ">heard<" not in sky_pair(SkyPair(title="The sky", predicted=PREDICTED, rows=ROWS[1:]))


def test_one_alone_may_be_narrow() -> None:
    """Its figures stand beneath the disk: as wide as the disk, higher than with the figures beside it."""
    content = SkyPair(title="The sky", predicted=PREDICTED, rows=ROWS)
    wide, narrow = size(sky_pair(content)), size(sky_pair(content, narrow=True))
    assert narrow[0] < wide[0] / 2
    assert narrow[1] > wide[1]
    both = SkyPair(title="The sky", predicted=PREDICTED, heard=HEARD, rows=ROWS)
    assert sky_pair(both, narrow=True) == sky_pair(both)


def test_in_words() -> None:
    """Both skies and each figure, for who cannot see them."""
    words = described_pair(SkyPair(title="The sky", predicted=PREDICTED, heard=HEARD, rows=ROWS))
    assert "As predicted:" in words
    assert "As heard:" in words
    assert "HDOP, half the time: predicted 1.01, heard 0.92" in words
    assert "a good fix, of a day: predicted 97.0 %." in words
