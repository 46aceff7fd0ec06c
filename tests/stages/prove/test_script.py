"""What a healthy unit must report of a script."""

import math

import pytest
from tests.samples.prove_cases import START_S, script


def expected(*keys):
    """What is expected of a script with these keys, a minute each."""
    return [str(row.expected) for row in script([(60 * i, key) for i, key in enumerate(keys)]).rows]


@pytest.mark.parametrize(
    ("keys", "rows"),
    [
        (("off", "on", "off"), ["none", "on", "off"]),
        (("off", "accessory", "off", "on"), ["none", "none", "none", "on"]),
        (("off", "on", "crank", "running", "off"), ["none", "on", "none", "none", "off"]),
        (("off", "on", "crank", "on", "crank", "running"), ["none", "on", "none", "none", "none", "none"]),
        (("on", "accessory", "on", "off"), ["on", "off", "on", "off"]),
        (("off", "crank", "running"), ["none", "on", "none"]),
        (("unlock", "doors_open", "on", "doors_shut", "off"), ["none", "none", "on", "none", "off"]),
    ],
)
def test_turns_into_and_out_of_the_ignition_positions(keys, rows):
    """A failed start stays on; accessory is off; doors turn nothing; a first row that says off begins nothing."""
    assert expected(*keys) == rows


def test_moments_of_a_script():
    """Start, first turn of the key, last row, turns and cranks."""
    found = script(
        [
            (0, "off"),
            (20, "unlock"),
            (60, "accessory"),
            (90, "on"),
            (120, "crank"),
            (121, "doors_shut"),
            (122.5, "running"),
            (200, "off"),
        ]
    )
    assert (found.start_s, found.first_key_s, found.last_s) == (START_S, START_S + 60, START_S + 200)
    assert [round(end - begin, 1) for begin, end in found.cranks()] == [2.5]
    assert found.turns == (3, 7)
    assert found.next_turn_s(3) == START_S + 200
    assert found.next_turn_s(7) == math.inf
