"""Shapes and hatch."""

import re
import xml.etree.ElementTree as ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.marks import arrow_head, hatched, verdict_shape
from backprobe.findings import Verdict

NUMBERS = re.compile(r"-?\d+(?:\.\d+)?")


def coverage(verdict: Verdict) -> list[list[bool]]:
    """Which cells of a 24 × 24 raster a shape inks: drawn by Pillow, so that tone plays no part."""
    from PIL import Image, ImageDraw

    size, scale = 24, 8
    image = Image.new("L", (size * scale, size * scale), 255)
    pen = ImageDraw.Draw(image)
    for node in ElementTree.fromstring(f"<g>{verdict_shape(verdict, (0, 0), size=size)}</g>"):
        if node.tag == "rect":
            x, y, width, height = (float(node.get(key, "0")) * scale for key in ("x", "y", "width", "height"))
            outline = node.get("fill") == "none"
            pen.rectangle((x, y, x + width, y + height), fill=None if outline else 0, outline=0, width=16)
            continue
        for piece in node.get("d", "").strip("M").split("M"):
            values = [float(value) * scale for value in NUMBERS.findall(piece)]
            corners = list(zip(values[::2], values[1::2], strict=True))
            if node.get("fill") == "none":
                pen.line(corners, fill=0, width=16)
            else:
                pen.polygon(corners, fill=0)
    small = image.resize((size, size), Image.Resampling.BOX)
    return [[small.getpixel((x, y)) < 128 for x in range(size)] for y in range(size)]  # type: ignore[operator]


def test_the_four_shapes_differ_without_colour() -> None:
    """Any two shapes differ in at least a seventh of their area, in pure black and white."""
    rasters = {verdict: coverage(verdict) for verdict in Verdict}
    for one in Verdict:
        for other in Verdict:
            if one < other:
                cells = [
                    a != b for x, y in zip(rasters[one], rasters[other], strict=True) for a, b in zip(x, y, strict=True)
                ]
                assert sum(cells) > 24 * 24 / 7, (one, other, sum(cells))


@given(x=st.floats(0, 500), y=st.floats(0, 500), width=st.floats(0.1, 500), height=st.floats(0.1, 200))
def test_the_hatch_stays_in_its_box(x: float, y: float, width: float, height: float) -> None:
    """No line of the hatch leaves the box that it fills."""
    lines = ElementTree.fromstring(f"<g>{hatched((x, y, width, height))}</g>")[1].get("d", "")
    values = [float(value) for value in NUMBERS.findall(lines)]
    assert all(x - 0.01 <= value <= x + width + 0.01 for value in values[::2])
    assert all(y - 0.01 <= value <= y + height + 0.01 for value in values[1::2])


def test_a_box_without_area_has_no_hatch() -> None:
    """Nothing is drawn for nothing."""
    assert hatched((0, 0, 0, 20)) == ""


@pytest.mark.parametrize(("direction", "back"), [(1, 7.0), (-1, 13.0)])
def test_an_arrow_points_to_its_tip(direction: int, back: float) -> None:
    """The tip is at the place given, the back behind it: 10 − 3 to the right, 10 + 3 to the left."""
    data = ElementTree.fromstring(arrow_head((10, 5), direction, size=3, fill="#000000")).get("d", "")
    values = [float(value) for value in NUMBERS.findall(data)]
    assert values[:2] == [10, 5]
    assert values[2] == values[4] == back
