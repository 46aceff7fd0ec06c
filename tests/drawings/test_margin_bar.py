"""The margin bar: whatever the finding, the picture is whole, legible, and on the right side of its limit."""

import math
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.drawings.margin_bar import NARROWEST, WIDTH, margin_bar
from backprobe.drawings.palette import ACCENT, INK
from backprobe.drawings.svg import number
from backprobe.findings import Finding, Side, Verdict

Build = Callable[..., Finding]
SVG = "{http://www.w3.org/2000/svg}"
FIGURES = st.one_of(
    st.floats(-1e300, 1e300),
    st.floats(-50, 50).map(lambda value: round(value, 2)),
    st.floats(-10_000, 10_000).map(lambda value: round(value, 1)),
)
UNITS = st.sampled_from(["V", "mV", "min", "A", "mA", "days", "m", ""])
FIGURE_COLUMN_END = 112.2  # the column, and the rounding of a size to two decimals
WIDTHS = st.floats(NARROWEST, 700)


def limit_x(root: ElementTree.Element) -> float:
    """Where the limit line stands."""
    lines = [node for node in root.iter(f"{SVG}line") if node.get("stroke") == INK]
    assert len(lines) == 1
    return float(lines[0].get("x1", "nan"))


def measured_span(root: ElementTree.Element) -> tuple[float, float]:
    """From where to where the dot, or the arrow in its place, reaches."""
    for node in root.iter(f"{SVG}circle"):
        x, radius = float(node.get("cx", "nan")), float(node.get("r", "nan"))
        return x - radius, x + radius
    arrow = [node for node in root.iter(f"{SVG}path") if node.get("fill") == ACCENT][-1]
    corners = [float(pair.split()[0]) for pair in arrow.get("d", "").strip("MZ").split("L")]
    return min(corners), max(corners)


@settings(max_examples=300)
@given(value=FIGURES, limit=FIGURES, side=st.sampled_from(Side), width=WIDTHS)
def test_a_failing_value_is_never_drawn_inside(
    finding: Build, value: float, limit: float, side: Side, width: float
) -> None:
    """The whole dot stands on the side of the limit line to which its value belongs."""
    shown = finding(value, value, value, limit=limit, side=side)
    root = ElementTree.fromstring(margin_bar(shown, width=width))
    line, (left, right) = limit_x(root), measured_span(root)
    inside = left > line if side is Side.AT_LEAST else right < line
    outside = right < line if side is Side.AT_LEAST else left > line
    assert (inside, outside) == ((False, True) if shown.verdict is Verdict.FAILS else (True, False))


@settings(max_examples=300)
@given(data=st.data(), value=st.none() | FIGURES, limit=st.none() | FIGURES, width=WIDTHS)
def test_nothing_overlaps_and_nothing_runs_out(
    finding: Build,
    text_boxes: Any,
    clashes: Any,
    outside: Any,
    data: st.DataObject,
    value: float | None,
    limit: float | None,
    width: float,
) -> None:
    """For any figures, units, reasons and widths the lettering keeps apart and inside the picture."""
    low, high = data.draw(st.none() | FIGURES), data.draw(st.none() | FIGURES)
    side, unit = data.draw(st.sampled_from(Side)), data.draw(UNITS)
    digits, because = data.draw(st.integers(0, 4)), data.draw(st.text(max_size=200))
    svg = margin_bar(
        finding(value, low, high, limit=limit, side=side, unit=unit, digits=digits, because=because), width=width
    )
    assert clashes(svg) == []
    assert outside(svg) == []
    assert [box for box in text_boxes(svg) if box.left < 1 and box.right > FIGURE_COLUMN_END] == []


@pytest.mark.parametrize("verdict", Verdict)
def test_the_verdict_is_a_word_and_a_shape(finding: Build, verdict: Verdict) -> None:
    """The word stands in the picture; the title carries it for those who hear it."""
    root = ElementTree.fromstring(margin_bar(finding(12.0, 11.9, 12.1, verdict=verdict)))
    assert str(verdict) in [node.text for node in root.iter(f"{SVG}text")]
    assert root.findtext(f"{SVG}title") == f"Supply while cranking: {verdict}"


def test_the_shapes_of_the_verdicts_are_four(finding: Build) -> None:
    """With the word taken out, the four pictures of one value still differ."""
    pictures = {margin_bar(finding(12.0, verdict=verdict)).replace(str(verdict), "") for verdict in Verdict}
    assert len(pictures) == 4


def test_without_a_value_there_is_no_dot_but_a_reason(finding: Build, text_boxes: Any) -> None:
    """An open finding keeps its limit and says what is missing."""
    svg = margin_bar(finding(None))
    words = " ".join(box.text for box in text_boxes(svg))
    assert "no value" in words
    assert "no reading was taken while the starter turned" in words
    assert "at least 9 V" in words
    assert "<circle" not in svg
    assert ACCENT not in svg


def test_the_whisker_spans_the_range(finding: Build) -> None:
    """9.4 to 11 V about 10 V at a limit of 9 V: 4.5 V over the allowed side's pixels, reckoned here again."""
    root = ElementTree.fromstring(margin_bar(finding(10.0, 9.4, 11.0)))
    feet = [float(node.get("x1", "0")) for node in root.iter(f"{SVG}line") if node.get("stroke-width") == "2"]
    track = WIDTH - 112 - 10 - 50 - 10  # figure column, gap, verdict column, gap
    zero, pixels = 122 + 0.36 * track, (0.64 * track - 9) / 4.5
    assert feet == pytest.approx([zero + 0.4 * pixels, zero + 2.0 * pixels], abs=0.01)


def test_every_figure_has_its_unit(finding: Build, text_boxes: Any) -> None:
    """Range, margin, limit and ticks all carry V."""
    texts = [box.text for box in text_boxes(margin_bar(finding(10.0, 9.4, 11.0)))]
    with_digits = [text for text in texts if any(char.isdigit() for char in text)]
    assert [text for text in with_digits if "V" not in text] == ["10.00"]
    assert texts[texts.index("10.00") + 1] == "V"


def test_the_basis_is_never_cut(finding: Build, text_boxes: Any) -> None:
    """However long the basis is, all of it stands beneath the scale."""
    from dataclasses import replace

    shown = finding(10.0, 9.4, 11.0)
    assert shown.limit is not None
    basis = "edition of 2012, section 4.6.3, starting profile level II, read at the terminals of the unit " * 4
    words = " ".join(
        box.text for box in text_boxes(margin_bar(replace(shown, limit=replace(shown.limit, basis=basis))))
    )
    assert basis.strip() in words


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_drawn_as_no_value(finding: Build, value: float) -> None:
    """NaN and infinity do not reach the picture."""
    svg = margin_bar(finding(value, -math.inf, math.nan, verdict=Verdict.OPEN))
    assert "no value" in svg
    assert "nan" not in svg
    assert "inf" not in svg.replace("info", "")


def test_the_same_finding_gives_the_same_picture(finding: Build) -> None:
    """Nothing in the string depends on when or where it was made."""
    assert margin_bar(finding(10.0, 9.4, 11.0)) == margin_bar(finding(10.0, 9.4, 11.0))
    assert number(0.1 + 0.2) == "0.3"
