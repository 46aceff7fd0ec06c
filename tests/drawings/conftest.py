"""What the tests of the pictures share: findings to draw, and the boxes of the lettering in a picture."""

from __future__ import annotations

import itertools
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable, Iterator

import pytest

from backprobe.drawings.lettering import figure_width, text_width
from backprobe.findings import Finding, Limit, Side, Stage, Standing, judge

DESCENDING = set("gjpqy,;()[]{}|/_Q$…")
SVG = "{http://www.w3.org/2000/svg}"


class Box:
    """The box of a line of lettering: where it stands, and what it says."""

    def __init__(self, text: str, left: float, right: float, *, top: float, bottom: float) -> None:
        self.text, self.left, self.right, self.top, self.bottom = text, left, right, top, bottom

    def __repr__(self) -> str:
        return f"{self.text!r} x {self.left:.1f}..{self.right:.1f} y {self.top:.1f}..{self.bottom:.1f}"

    def meets(self, other: Box) -> bool:
        """Whether two boxes overlap."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )


def text_box(node: ElementTree.Element) -> Box:
    """The box of one text element: from cap height (0.7 of the size) to the baseline, or 0.2 below it."""
    text, size, y = node.text or "", float(node.get("font-size", "0")), float(node.get("y", "0"))
    places = [float(x) for x in node.get("x", "0").split()]
    if len(places) > 1:
        width = figure_width(text, size)
        left = places[0] - figure_width(text[0], size) / 2
    else:
        width = text_width(text, size, bold=node.get("font-weight") == "bold")
        left = places[0] - {"middle": width / 2, "end": width}.get(node.get("text-anchor", ""), 0.0)
    return Box(
        text,
        left,
        left + width,
        top=y - 0.7 * size,
        bottom=y + (0.2 if DESCENDING & set(text) or not text.replace("−", "-").isascii() else 0.02) * size,
    )


@pytest.fixture(scope="session")
def text_boxes() -> Callable[[str], list[Box]]:
    """From an SVG string the boxes of all its lettering."""
    return lambda svg: [text_box(node) for node in ElementTree.fromstring(svg).iter(f"{SVG}text")]


@pytest.fixture(scope="session")
def clashes(text_boxes: Callable[[str], list[Box]]) -> Callable[[str], list[tuple[Box, Box]]]:
    """From an SVG string the pairs of lettering that overlap."""

    def pairs(svg: str) -> Iterator[tuple[Box, Box]]:
        return ((one, other) for one, other in itertools.combinations(text_boxes(svg), 2) if one.meets(other))

    return lambda svg: list(pairs(svg))


@pytest.fixture(scope="session")
def outside(text_boxes: Callable[[str], list[Box]]) -> Callable[[str], list[Box]]:
    """From an SVG string the lettering that runs out of the picture (by more than half a unit)."""

    def runaways(svg: str) -> list[Box]:
        root = ElementTree.fromstring(svg)
        width, height = float(root.get("width", "0")), float(root.get("height", "0"))
        return [
            box
            for box in text_boxes(svg)
            if box.left < -0.5 or box.right > width + 0.5 or box.top < -0.5 or box.bottom > height + 0.5
        ]

    return runaways


@pytest.fixture(scope="session")
def finding() -> Callable[..., Finding]:
    """Builds a finding against a limit; its verdict is the one that the numbers give."""

    def build(
        value: float | None,
        low: float | None = None,
        high: float | None = None,
        *,
        limit: float | None = 9.0,
        side: Side = Side.AT_LEAST,
        **fields: object,
    ) -> Finding:
        unit = str(fields.get("unit", "V"))
        against = None
        if limit is not None:
            against = Limit("least", limit, unit, side, "measured at the wire", Standing.COMMON_PRACTICE)
        given: dict[str, object] = {
            "id": "x",
            "stage": Stage.PROBE,
            "what": "Supply while cranking",
            "because": "no reading was taken while the starter turned",
            "verdict": judge(against, value, low=low, high=high) if against else "open",
            "unit": unit,
        }
        return Finding(**{**given, **fields}, value=value, low=low, high=high, limit=against)  # type: ignore[arg-type]

    return build
