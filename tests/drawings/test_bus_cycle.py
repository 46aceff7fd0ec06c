"""The picture of the key cycle from inside."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from backprobe.drawings.bus_cycle import NOTHING, BusCycle, bus_cycle, described_cycle
from backprobe.drawings.trace import CrankSpan, KeySpan, LimitLine, Trace, Waveform

VOLTS = Waveform(
    traces=(Trace("supply", ((5.0, 12.4, 12.4), (9.0, 10.2, 10.2), (20.0, 14.0, 14.0))),),
    limits=(LimitLine(9.0, "supply at least 9 V"),),
    cranks=(CrankSpan(9.0, 9.9),),
)
SPEED = Waveform(
    traces=(Trace("engine speed", ((5.3, 0.0, 0.0), (10.0, 750.0, 750.0), (30.0, 0.0, 0.0))),),
    keys=(KeySpan(0.0, 5.0, "?"), KeySpan(5.0, 9.0, "on"), KeySpan(9.0, 40.0, "running")),
    unit="rpm",
)


def cycle(volts: Waveform | None = VOLTS, speed: Waveform | None = SPEED) -> BusCycle:
    """A cycle of 40 s."""
    return BusCycle(volts=volts, speed=speed, length_s=40.0, title="Key cycle: a.log", note="As reported.")


def ticks_s(svg: str) -> list[list[float]]:
    """Where the figure '20 s' stands in each field."""
    return [[float(x) for x in re.findall(r'<text x="([0-9.]+)"[^>]*>20 s<', part)] for part in svg.split("<g ")[1:]]


@pytest.mark.parametrize("width", [320.0, 760.0])
def test_both_fields_have_the_same_time(width: float) -> None:
    """What happened at once stands one above the other."""
    upper, lower = ticks_s(bus_cycle(cycle(), width=width))
    assert upper == lower != []


def test_it_is_one_picture_with_words() -> None:
    """Well formed, with a title, described, the crank named, the key beneath."""
    svg = bus_cycle(cycle())
    root = ElementTree.fromstring(svg)
    assert root.tag.endswith("svg")
    for word in ("Key cycle: a.log", "supply at least 9 V", "crank", "running", "engine speed", "As reported."):
        assert word in svg
    assert "supply: lowest 10.20 V" in described_cycle(cycle())
    assert "engine speed" in described_cycle(cycle())


@pytest.mark.parametrize(("volts", "speed"), [(VOLTS, None), (None, SPEED)])
def test_one_field_alone(volts: Waveform | None, speed: Waveform | None) -> None:
    """What nobody reported has no field."""
    assert bus_cycle(cycle(volts, speed)).count("<g ") >= 1


def test_nothing_to_draw_says_so() -> None:
    """A picture all the same."""
    assert NOTHING in bus_cycle(cycle(None, None))
    assert described_cycle(cycle(None, None)) == NOTHING
