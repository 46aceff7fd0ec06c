"""The one thing to do next."""

import pytest
from tests.samples.prove_cases import STEPS, healthy, proven, row

BEATS = [row(t, "heartbeat") for t in range(-30, 1500, 60)]
ACCESSORY = [row(t, "ignition_on" if on else "ignition_off") for t, on in ((102, 1), (220, 0), (302, 1), (820, 0))]


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ([row(-60, "boot"), row(500.5, "ignition_on"), row(502.5, "ignition_off"), *BEATS], "never be tapped"),
        ([row(-60, "boot"), *BEATS], "Look for the ignition lead"),
        ([row(-60, "boot"), *ACCESSORY], "dead in accessory"),
        ([row(-60, "boot"), row(302, "ignition_on"), *BEATS], "'off' at 2026-03-31T08:13:20Z was not reported"),
        ([each.replace("-33.1,151.2,4", "0,0,") for each in healthy()], "wait until the unit reports a position"),
        ([each.replace("-33.1,151.2,4", "-33.10013,151.2,4") for each in healthy()], "clear sky"),
        (healthy(), "parked overnight"),
    ],
)
def test_the_most_pressing_first(rows, words):
    """A start circuit, no contact, a pattern, a missing turn, the position, the night."""
    assert words in proven(rows).next


def test_nothing_is_left_after_a_parked_night():
    """Everything holds, and it held for nine hours."""
    assert proven([*healthy(), row(820 + 9 * 3600, ignition=0)]).next is None


def test_open_turns_are_named():
    """With the plan that would settle them."""
    steps = [*STEPS[:3], (300, "on"), (420, "off"), (440, "on"), *STEPS[4:]]
    rows = [row(-60, "boot"), row(302, "ignition_on"), row(845, "ignition_off"), *BEATS]
    assert "and 1 more cannot be told" in proven(rows, steps).next
