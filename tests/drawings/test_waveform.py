"""The crank waveform: whole, legible and true to its extremes."""

import itertools
import math
import xml.etree.ElementTree as ElementTree
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.drawings.trace import CrankSpan, KeySpan, LimitLine, Trace, Waveform
from backprobe.drawings.waveform import WIDTH, described_waveform, waveform

SVG = "{http://www.w3.org/2000/svg}"
LIMITS = (LimitLine(9.0, "9 V supply"), LimitLine(10.0, "10 V ignition"))
KEYS = (KeySpan(0, 3, "off"), KeySpan(3, 6, "on"), KeySpan(6, 7, "crank"), KeySpan(7, 12, "running"))


def crank_trace(name: str, lowest: float = 9.4) -> Trace:
    """12 s of a made-up crank: 12.5 V, a dip to `lowest` at 6 s, 10.5 V for a second, 14 V."""
    points = []
    for index in range(1200):
        time_s = index / 100
        volts = 12.5 if time_s < 6 else lowest if time_s < 6.05 else 10.5 if time_s < 7 else 14.0
        points.append((time_s, volts - 0.05 if volts != lowest else volts, volts + 0.05))
    return Trace(name, tuple(points))


def whole(**changes: Any) -> Waveform:
    """A waveform of two wires, with limits, key and one crank."""
    parts: dict[str, Any] = {
        "traces": (crank_trace("battery", 9.6), crank_trace("red/yellow", 9.4)),
        "limits": LIMITS,
        "keys": KEYS,
        "cranks": (CrankSpan(6, 7, "crank"),),
    }
    return Waveform(**{**parts, **changes})


def lines_of(svg: str) -> list[list[tuple[float, float]]]:
    """The lines of the traces: paths with a stroke and several points."""
    nodes = [node for node in ElementTree.fromstring(svg).iter(f"{SVG}path") if node.get("stroke-linejoin")]
    pieces = [piece for node in nodes for piece in node.get("d", "").strip("M").split("M")]
    lines = [[tuple(float(v) for v in pair.split()) for pair in piece.split("L")] for piece in pieces]
    return [line for line in lines if len(line) > 2]  # type: ignore[misc]


def test_the_dip_is_drawn_at_its_true_depth() -> None:
    """The lowest point of a line stands between the limits as 9.4 V stands between 9 V and 10 V: six tenths down."""
    svg = waveform(whole(traces=(crank_trace("red", 9.4),)))
    root = ElementTree.fromstring(svg)
    levels = sorted(float(node.get("y1", "0")) for node in root.iter(f"{SVG}line") if node.get("stroke-width") == "1.4")
    ten, nine = levels
    deepest = max(y for _, y in lines_of(svg)[0])
    assert deepest == pytest.approx(ten + 0.6 * (nine - ten), abs=0.02)


def test_the_dip_of_a_single_row_survives_a_million_rows() -> None:
    """A picture 400 units wide of 200,000 points shows the one point that went to 7.5 V."""
    points = [(index / 1000, 12.0, 12.1) for index in range(200_000)]
    points[123_456] = (123.456, 7.5, 12.1)
    svg = waveform(Waveform(traces=(Trace("red", tuple(points)),), limits=(LimitLine(9.0, "9 V"),)), width=400)
    root = ElementTree.fromstring(svg)
    nine = [float(n.get("y1", "0")) for n in root.iter(f"{SVG}line") if n.get("stroke-width") == "1.4"]
    line = lines_of(svg)[0]
    assert max(y for _, y in line) > nine[0]
    assert len(line) <= 400
    assert len(svg) < 40_000


def test_a_gap_is_not_bridged() -> None:
    """A dropout splits the line in two."""
    points = ((0.0, 12.0, 12.0), (0.5, 12.1, 12.1), (1.0, 12.0, 12.0), (1.5, math.nan, math.nan))
    more = tuple((time_s + 2, low, high) for time_s, low, high in points[:3])
    assert len(lines_of(waveform(Waveform(traces=(Trace("red", points + more),))))) == 2


def test_lines_are_told_apart_by_their_dashes() -> None:
    """Six channels have six different dashes; names stand at the lines' ends, not in a legend."""
    svg = waveform(whole(traces=tuple(crank_trace(f"wire {n}") for n in range(6))))
    root = ElementTree.fromstring(svg)
    dashes = {node.get("stroke-dasharray") for node in root.iter(f"{SVG}path") if node.get("stroke-linejoin")}
    assert len(dashes) == 6
    texts = [node.text for node in root.iter(f"{SVG}text")]
    assert all(f"wire {n}" in texts for n in range(6))


def test_limit_words_hide_no_dip(text_boxes: Any) -> None:
    """The words of a limit stand where no wire is: never over the deepest point of a line."""
    svg = waveform(whole())
    for box in text_boxes(svg):
        if box.text in {line.label for line in LIMITS}:
            for x, y in itertools.chain(*lines_of(svg)):
                assert not (box.left <= x <= box.right and box.top <= y <= box.bottom)


def test_the_key_stands_beneath_in_words(text_boxes: Any) -> None:
    """Every position of the key is named once, also the short ones."""
    keys = (*KEYS[:2], KeySpan(6, 6.02, "crank"), KeySpan(6.02, 6.05, "accessory"), KeySpan(6.05, 12, "running"))
    words = [box.text for box in text_boxes(waveform(whole(keys=keys, cranks=())))]
    assert [words.count(span.label) for span in keys] == [1, 1, 1, 1, 1]


def test_nothing_recorded_says_so(text_boxes: Any) -> None:
    """No points, still a picture."""
    words = [box.text for box in text_boxes(waveform(whole(traces=())))]
    assert "Nothing was recorded that can be drawn." in words
    assert waveform(Waveform(traces=(Trace("red", ()),)))


def test_the_words_for_those_who_cannot_see_it() -> None:
    """Extremes of each channel, the limits, the cranks, the key."""
    said = described_waveform(whole(traces=(crank_trace("red", 9.4),), note="Invented."))
    assert said == (
        "red: lowest 9.40 V, highest 14.05 V. Limit 9 V supply. Limit 10 V ignition. "
        "crank from 6.00 s to 7.00 s. key off from 0.00 s. key on from 3.00 s. key crank from 6.00 s. "
        "key running from 7.00 s. Invented.."
    )


LABELS = st.text(alphabet="abc WX/-12", min_size=1, max_size=40)
POINTS = st.lists(st.tuples(st.floats(0, 60), st.floats(-5, 35), st.floats(-5, 35)), max_size=40)


@settings(max_examples=150, deadline=None)
@given(
    traces=st.lists(st.tuples(LABELS, POINTS), max_size=5),
    limits=st.lists(st.tuples(st.floats(0, 30), LABELS), max_size=3),
    keys=st.lists(st.tuples(st.floats(0, 60), st.sampled_from(["off", "accessory", "on", "crank"])), max_size=5),
    cranks=st.lists(st.floats(0, 60), max_size=3),
    width=st.floats(360, 900),
)
def test_any_recording_gives_a_picture_that_stays_in_its_frame(
    outside: Any, traces: Any, limits: Any, keys: Any, cranks: Any, width: float
) -> None:
    """Names, limits, key positions and cranks of any kind: well formed, and no lettering runs out."""
    starts = sorted(keys)
    ends = [*(start for start, _ in starts[1:]), 60.0][: len(starts)]
    svg = waveform(
        Waveform(
            traces=tuple(
                Trace(name, tuple((t, min(a, b), max(a, b)) for t, a, b in sorted(points))) for name, points in traces
            ),
            limits=tuple(LimitLine(value, label) for value, label in limits),
            keys=tuple(KeySpan(start, end, label) for (start, label), end in zip(starts, ends, strict=True)),
            cranks=tuple(CrankSpan(start, start + 1.0) for start in sorted(cranks)),
        ),
        width=width,
    )
    assert outside(svg) == []
    assert "nan" not in svg


def test_the_same_recording_gives_the_same_picture() -> None:
    """The string depends on nothing but its input; the default width is a page's."""
    assert waveform(whole()) == waveform(whole(), width=WIDTH)
