"""The code on a record, read back by a reader of codes (zxing-cpp)."""

from __future__ import annotations

import io
from xml.etree import ElementTree

import numpy as np
import pytest
import typst
import zxingcpp
from PIL import Image, ImageFilter

from backprobe.paper.qr import qr_svg

DIGEST = "sha256:" + "0123456789abcdef" * 4


def picture(svg: str, pixels: int = 400) -> Image.Image:
    """The drawn code as a printer would set it, on white."""
    page = f"#set page(width: {pixels}pt, height: {pixels}pt, margin: 0pt)\n#image(bytes(sys.inputs.svg), width: 100%)"
    png = typst.compile(page.encode(), format="png", ppi=72, sys_inputs={"svg": svg})
    assert isinstance(png, bytes)
    return Image.open(io.BytesIO(png)).convert("L")


def read(image: Image.Image) -> list[str]:
    """What a reader makes of a picture."""
    return [found.text for found in zxingcpp.read_barcodes(np.asarray(image))]


@pytest.mark.parametrize("text", [DIGEST, "sha256:" + "f" * 64, "a", "größer 漢"])
def test_the_code_reads_back(text: str):
    """Letter for letter."""
    assert read(picture(qr_svg(text))) == [text]


def test_it_reads_when_small_turned_and_soiled():
    """Printed 19 mm wide and seen by a poor camera: 180 pixels, turned by 7 degrees, blurred, with a stain on it."""
    small = picture(qr_svg(DIGEST), 180).rotate(7, expand=True, fillcolor=255).filter(ImageFilter.GaussianBlur(0.7))
    small.paste(128, (95, 95, 108, 106))
    assert read(small) == [DIGEST]


def test_a_code_that_says_something_else_is_told_apart():
    """The reader does not simply say what is asked for."""
    assert read(picture(qr_svg(DIGEST[:-1] + "0"))) != [DIGEST]
    assert read(Image.new("L", (200, 200), 255)) == []


def test_equal_texts_give_equal_codes():
    """So that a record's bytes depend on its content alone."""
    assert qr_svg(DIGEST) == qr_svg(DIGEST) != qr_svg(DIGEST[:-1])


def test_the_code_fills_the_box_it_is_set_in():
    """Its coordinates are those of its size in modules: a version 1 code of 21, and 4 of quiet zone on each side."""
    drawn = ElementTree.fromstring(qr_svg("a"))
    assert drawn.get("viewBox") == f"0 0 {4 + 21 + 4} {4 + 21 + 4}"
    assert (drawn.get("width"), drawn.get("height")) == ("29", "29")


def test_the_quiet_zone_is_white():
    """All round, four modules wide: on a dark page a reader finds the code's edge by it."""
    seen = np.asarray(picture(qr_svg("a"), 290))  # 10 pixels for each of the 29 modules
    seen = seen.copy()
    assert seen[45:245, 45:245].min() == 0
    seen[40:250, 40:250] = 255
    assert seen.min() == 255
