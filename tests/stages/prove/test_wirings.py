"""What a script makes on each wire."""

import pytest
from tests.samples.prove_cases import START_S, script

from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.wirings import IGNITION, changes_of, wirings_for

STEPS = [
    (0, "off"),
    (10, "unlock"),
    (20, "accessory"),
    (50, "off"),
    (100, "on"),
    (130, "crank"),
    (131, "running"),
    (200, "off"),
    (220, "doors_open"),
    (230, "doors_shut"),
]
# by name: the level before, and the changes as seconds from the start, negative where the wire goes dead
LEVELS = {
    "ignition": (False, [100, -200]),
    "ignition_not_in_crank": (False, [100, -130, 131, -200]),
    "accessory": (False, [20, -50, 100, -130, 131, -200]),
    "accessory_in_crank": (False, [20, -50, 100, -200]),
    "running_only": (False, [131, -200]),
    "after_start": (False, [130, -200]),
    "start": (False, [130, -131]),
    "constant": (True, []),
    "nothing": (False, []),
    "inverted": (True, [-100, 200]),
    "inverted_accessory": (True, [-20, 50, -100, 200]),
    "latched": (False, [100]),
    "ignition, until doors_open": (False, [100, -220]),
    "ignition, until doors_shut": (False, [100, -230]),
    "ignition, woken by unlock (held)": (False, [10, -200]),
    "ignition, woken by unlock (through)": (False, [10, -200]),
    "accessory, until doors_shut": (False, [20, -130, 131, -230]),
}


def wiring(name, steps=STEPS):
    """The wiring of that name for a script."""
    return next(each for each in wirings_for(script(steps)) if each.name == name)


@pytest.mark.parametrize("name", LEVELS)
def test_the_level_of_each_wiring(name):
    """As the key and the doors make it."""
    first, changes = changes_of(wiring(name), script(STEPS))
    signed = [(1 if change.on else -1) * (change.lo_s - START_S) for change in changes]
    assert (first, signed) == LEVELS[name]


def test_a_pulse_ends_when_the_reports_say():
    """Between the waking and the next turn that makes the wire live."""
    _, changes = changes_of(wiring("ignition, woken by unlock (pulse)"), script(STEPS))
    assert [(c.on, c.lo_s - START_S, c.hi_s - START_S) for c in changes[:3]] == [
        (True, 10, 10),
        (False, 10, 100),
        (True, 100, 100),
    ]


def test_a_body_held_awake_bridges_a_turn_off():
    """Held only until the key has been on and off, through until its last off."""
    steps = [(0, "off"), (10, "unlock"), (20, "on"), (50, "off"), (80, "on"), (120, "off")]
    held, through = ("ignition, woken by unlock (held)", "ignition, woken by unlock (through)")
    assert len(changes_of(wiring(held, steps), script(steps))[1]) == 4
    assert len(changes_of(wiring(through, steps), script(steps))[1]) == 2


def test_retained_power_is_laid_to_the_key_that_let_go():
    """The door ends it, but the off of the key is what must be reported."""
    _, changes = changes_of(wiring("ignition, until doors_shut"), script(STEPS))
    assert changes[-1].row == 7


def test_doors_and_unlocking_only_where_the_script_has_them():
    """A script without them cannot tell."""
    few = wirings_for(script([(0, "off"), (10, "on"), (20, "off")]))
    assert not any("accessory" in each.name for each in few)
    assert not any(each.patterns & {PatternId.BODY_WAKE} or each.release for each in few)
    assert IGNITION in few
    assert len(wirings_for(script(STEPS))) > 2 * len(few)


def test_the_true_ignition_is_the_most_usual():
    """Everything else costs."""
    others = [each for each in wirings_for(script(STEPS)) if each != IGNITION]
    assert IGNITION.cost == 0
    assert all(each.cost > 0 for each in others)
