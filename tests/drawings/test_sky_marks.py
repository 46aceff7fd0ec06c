"""The marks of a sky plot are told apart by shape, and are as full as the signal is strong."""

import math
import xml.etree.ElementTree as ElementTree

import pytest

from backprobe.drawings.palette import ACCENT
from backprobe.drawings.sky import SkySatellite
from backprobe.drawings.sky_marks import hatch_lines, hatched_outline, predicted_mark, satellite_mark, shaded

SQUARE = [(0.0, 0.0), (70.0, 0.0), (70.0, 70.0), (0.0, 70.0)]


def names(markup: str) -> list[str]:
    """The elements of a piece of markup."""
    return [node.tag for node in ElementTree.fromstring(f"<g>{markup}</g>")]


def test_four_kinds_have_four_shapes() -> None:
    """Used: round; heard: square; not heard: a cross; predicted: dashed."""
    used = satellite_mark(SkySatellite("G01", 0, 0, 40, used=True), (50, 50))
    heard = satellite_mark(SkySatellite("G01", 0, 0, 40), (50, 50))
    silent = satellite_mark(SkySatellite("G01", 0, 0), (50, 50))
    assert names(used) == ["circle", "path", "circle"]
    assert names(heard) == ["rect", "path", "rect"]
    assert names(silent) == ["circle", "path"]
    assert "dasharray" in predicted_mark((50, 50))


@pytest.mark.parametrize(("cn0_dBHz", "share"), [(20.0, 5 / 35), (32.5, 0.5), (45.0, 30 / 35), (60.0, 1.0)])
def test_the_square_glass_is_filled_to_its_share(cn0_dBHz: float, share: float) -> None:
    """15 dB-Hz is empty, 50 is full: the height of what is inside, of 13."""
    root = ElementTree.fromstring(f"<g>{satellite_mark(SkySatellite('G01', 0, 0, cn0_dBHz), (50, 50))}</g>")
    inside = next(node for node in root if node.get("fill") == ACCENT)
    ys = [float(pair.split()[1]) for pair in inside.get("d", "").strip("MZ").split("L")]
    assert max(ys) - min(ys) == pytest.approx(13 * share, abs=0.02)


def test_an_empty_glass_has_nothing_in_it() -> None:
    """At 15 dB-Hz and below only the glass is drawn."""
    assert ACCENT not in satellite_mark(SkySatellite("G01", 0, 0, 12.0), (50, 50))


def test_the_hatch_stays_inside() -> None:
    """Every line of the hatch begins and ends on the edge of a square, and they lie 7 apart along an edge."""
    lines = hatch_lines(SQUARE)
    assert len(lines) == 19  # x + y = 7, 14 … 133
    assert all(math.isclose(sum(a), sum(b)) for a, b in lines)
    assert all(0 <= v <= 70 for line in lines for point in line for v in point)


def test_the_hatch_leaves_out_a_notch() -> None:
    """A line across a hollow outline comes in two pieces."""
    corner = [(0.0, 0.0), (70.0, 0.0), (70.0, 20.0), (20.0, 20.0), (20.0, 70.0), (0.0, 70.0)]
    assert [line for line in hatch_lines(corner) if sum(line[0]) == 63] == [
        [(0.0, 63.0), (20.0, 43.0)],
        [(43.0, 20.0), (63.0, 0.0)],
    ]


def test_more_loss_is_darker() -> None:
    """Glass at 2 dB is paler than metal at 30 dB."""
    assert 'fill-opacity="0.08"' in shaded(SQUARE, 2.0)
    assert 'fill-opacity="0.42"' in shaded(SQUARE, 30.0)


def test_an_outline_has_a_firm_edge() -> None:
    """The hatch, and an edge two wide."""
    assert 'stroke-width="2"' in hatched_outline(SQUARE)
