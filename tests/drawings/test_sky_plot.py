"""The sky plot: true to the compass, legible, and the same without colour."""

import xml.etree.ElementTree as ElementTree
from typing import Any

from backprobe.drawings.sky import SkyMaskCell, SkyPlot, SkySatellite, SkySector
from backprobe.drawings.sky_plot import WIDTH, described_sky, sky_plot

SVG = "{http://www.w3.org/2000/svg}"
HEARD = (
    SkySatellite("G02", 45, 20, 35, used=True),
    SkySatellite("G13", 150, 55, 29),
    SkySatellite("R70", 310, 33, 40, used=True),
    SkySatellite("E11", 170, 12),
)


def whole(**changes: Any) -> SkyPlot:
    """A plot with everything on it."""
    parts: dict[str, Any] = {
        "satellites": HEARD,
        "predicted": (SkySatellite("G02", 46, 21), SkySatellite("G29", 220, 30)),
        "sectors": (SkySector(100, 175, "blocked"),),
        "mask": (SkyMaskCell(90, 180, 0, 60, 30, "metal roof"), SkyMaskCell(270, 90, 0, 40, 3, "glass")),
    }
    return SkyPlot(**{**parts, **changes})


def words(svg: str) -> list[str]:
    """All words of a picture."""
    return [node.text or "" for node in ElementTree.fromstring(svg).iter(f"{SVG}text")]


def test_each_satellite_is_named_with_its_strength() -> None:
    """Heard ones with dB-Hz, one that is not heard by its name alone, one that is predicted and measured only once."""
    said = words(sky_plot(whole()))
    assert [text for text in said if text[:1] in "GRE" and text[1:2].isdigit()] == [
        "G29",
        "G02 35",
        "G13 29",
        "R70 40",
        "E11",
    ]


def test_north_is_up_without_a_heading(text_boxes: Any) -> None:
    """N stands above S, E right of W, and no side of the cab is named."""
    boxes = {box.text: box for box in text_boxes(sky_plot(whole()))}
    assert boxes["N"].top < boxes["S"].top
    assert boxes["E"].left > boxes["W"].left
    assert "front" not in boxes


def test_the_front_is_up_with_a_heading(text_boxes: Any) -> None:
    """With the front to the east, E is up and the right side of the cab is south."""
    boxes = {box.text: box for box in text_boxes(sky_plot(whole(heading_deg=90.0)))}
    assert boxes["front"].top < boxes["rear"].top
    assert boxes["E"].top < boxes["W"].top
    assert boxes["S"].left > boxes["N"].left
    assert boxes["right"].left > boxes["left"].left


def test_words_stay_inside_and_apart(clashes: Any, outside: Any) -> None:
    """No two words lie on one another and none runs out of the picture, at any width, with 12 satellites spread out."""
    many = tuple(SkySatellite(f"G{n:02d}", n * 30.0, 15 + (n * 37) % 60, 30 + n, used=True) for n in range(12))
    for width in (320.0, WIDTH, 700.0):
        svg = sky_plot(whole(satellites=many, predicted=(), heading_deg=20.0), width=width)
        assert clashes(svg) == []
        assert outside(svg) == []


def test_on_a_wide_page_the_words_stand_beside(text_boxes: Any) -> None:
    """At 760 the picture is 400 high, all words of the legend right of the disc; at 480 they stand beneath it."""
    wide, narrow = (ElementTree.fromstring(sky_plot(whole(), width=width)) for width in (760.0, 480.0))
    assert float(wide.get("height", "0")) == 400
    assert float(narrow.get("height", "0")) > 480
    legend = next(box for box in text_boxes(sky_plot(whole(), width=760.0)) if box.text == "used for the position")
    assert legend.left > 400


def test_the_legend_names_only_what_is_there() -> None:
    """Without predictions and mask there is no word of them."""
    said = words(sky_plot(SkyPlot(satellites=HEARD[:1])))
    assert "used for the position" in said
    assert not {"predicted", "not heard", "heard, not used"} & set(said)
    assert "metal roof, 30 dB" in words(sky_plot(whole()))


def test_no_satellites_is_said() -> None:
    """An empty sky is still a picture."""
    assert "No satellite's place in the sky is known." in words(sky_plot(SkyPlot()))


def test_the_picture_in_words() -> None:
    """Blocked sectors first, then each satellite with its place and strength."""
    said = described_sky(whole(heading_deg=90.0, note="Heading as typed"))
    assert said.startswith("blocked: azimuth 100° to 175°. the vehicle's front points to 90°. G02 at azimuth 45°")
    assert "E11 at azimuth 170°, elevation 12°, not heard" in said
    assert said.endswith("in the way: metal roof, glass. Heading as typed.")


def test_the_same_content_gives_the_same_string() -> None:
    """No ids, no order of sets: the string is the same each time."""
    assert sky_plot(whole()) == sky_plot(whole())
    assert " id=" not in sky_plot(whole())
