"""Text and edges on the pages stand out from what is behind them, in both themes, for a cab in sun and one in the dark.

Contrast is computed as WCAG 2.2 defines it (W3C Recommendation, "relative luminance" and "contrast ratio"): text at
least 7:1 (success criterion 1.4.6), edges of controls and rules at least 3:1 (1.4.11).
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

WEB = Path(__file__).resolve().parents[2] / "web"
LOOK = (WEB / "page" / "look.css").read_text(encoding="utf-8")
DESK = (WEB / "desk" / "desk.css").read_text(encoding="utf-8")
TEXT, EDGE = 7.0, 3.0
COLOURS = ("paper", "tint", "ink", "soft", "rule", "copper")

# every colour that text has, on every ground that it can stand on
TEXTS = [
    ("ink", "paper"),  # all text
    ("soft", "paper"),  # remarks, labels, what is disabled
    ("copper", "paper"),  # measured figures
    ("ink", "tint"),  # a button while it is touched; tinted boxes
    ("soft", "tint"),
    ("copper", "tint"),
    ("paper", "ink"),  # the main button; what is chosen
    ("paper", "soft"),  # the main button while it is touched
]
EDGES = [
    ("rule", "paper"),  # fields, choices, rules
    ("rule", "tint"),
    ("ink", "paper"),  # buttons, the outline of what has the focus
    ("ink", "tint"),
    ("copper", "paper"),  # what is taken over from the last vehicle, the camera's frame
]
# drawings and signatures are white paper in both themes, as they are printed; no text stands on the camera's picture
# before there is one, nor on the veil behind a dialog
FIXED = {"color: #1b1a17", "background: #ffffff", "background: #000000", "background: rgb(0 0 0 / 55%)"}


def colours_of(selector: str) -> dict[str, str]:
    """The colours of a theme by their names."""
    block = LOOK[LOOK.index(selector) :].partition("}")[0]
    return dict(re.findall(r"--([a-z]+): (#[0-9a-f]{6})", block))


THEMES = {
    "light": colours_of(":root {"),
    "dark by the phone": colours_of(':root:not([data-theme="light"])'),
    "dark by the settings": colours_of(':root[data-theme="dark"]'),
}


def luminance(colour: str) -> float:
    """The relative luminance of #rrggbb (WCAG 2.2)."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours (WCAG 2.2), 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_gives_the_known_ends() -> None:
    """Black on white is 21:1; #767676 on white is the well-known grey just above 4.5:1, #777777 the one below."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#ffffff", "#ffffff") == pytest.approx(1.0)
    assert contrast("#777777", "#ffffff") < 4.5 < contrast("#767676", "#ffffff")


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize(("pairs", "least"), [(TEXTS, TEXT), (EDGES, EDGE)], ids=["text", "edges"])
def test_everything_stands_out(theme: str, pairs: list[tuple[str, str]], least: float) -> None:
    """Each pair that is used, in each theme."""
    colours = THEMES[theme]
    low = {pair: round(contrast(*(colours[name] for name in pair)), 2) for pair in pairs}
    assert {pair: ratio for pair, ratio in low.items() if ratio < least} == {}


def test_both_ways_into_the_dark_look_alike() -> None:
    """The phone's setting and the app's own give the same colours, and every colour has a value in each."""
    assert THEMES["dark by the phone"] == THEMES["dark by the settings"]
    assert set(THEMES["light"]) == set(THEMES["dark by the phone"]) == set(COLOURS)


def used(name: str) -> set[str]:
    """The colours that a property is given in both style sheets."""
    return set(re.findall(rf"(?<![a-z-]){name}:[^;}}]*?var\(--([a-z]+)\)", LOOK + DESK)) & set(COLOURS)


def test_no_colour_is_used_that_is_not_in_the_lists() -> None:
    """What text is coloured with and what it stands on, what edges are drawn with; nothing has a colour of its own."""
    assert used("color") <= {text for text, _ in TEXTS}
    assert used("background") | used("background-color") <= {ground for _, ground in TEXTS}
    for side in ("border", "border-top", "border-bottom", "border-left", "border-right", "border-color", "outline"):
        assert used(side) <= {edge for edge, _ in EDGES}, side
    rules = re.sub(r"--[a-z]+: #[0-9a-f]{6};", "", LOOK + DESK)
    loose = re.findall(r"(?:color|background|border[a-z-]*|outline):[^;}]*(?:#[0-9a-f]{3,6}|\brgb|\bhsl)[^;}]*", rules)
    assert set(loose) <= FIXED
    assert contrast("#1b1a17", "#ffffff") >= TEXT
