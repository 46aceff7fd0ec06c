"""What a unit said of its ignition."""

import math

import pytest
from tests.samples.prove_cases import START_S, observed, row


def edges(rows):
    """The edges as (on, from, to, restated), seconds from the start."""
    return [(e.on, e.lo_s - START_S, e.hi_s - START_S, e.restated) for e in observed(rows).edges]


def test_events_are_edges():
    """In the order of their stamps, whatever the order of the rows."""
    assert edges([row(90, "ignition_off"), row(12, "ignition_on")]) == [(True, 12, 12, False), (False, 90, 90, False)]


def test_the_column_alone_leaves_a_change_between_two_reports():
    """It came after the last that shows the other state."""
    assert edges([row(0, ignition=0), row(30, ignition=0), row(60, ignition=1)]) == [(True, 30, 60, False)]


def test_an_event_confirms_what_the_column_shows():
    """A bare input in the column runs ahead of the debounced event: one change, not two."""
    rows = [
        row(0, "ignition_on", 1),
        row(60, ignition=1),
        row(100, ignition=0),
        row(110, "ignition_off", 0),
        row(160, ignition=0),
    ]
    assert edges(rows) == [(True, 0, 0, False), (False, 110, 110, False)]


def test_a_report_beside_an_event_that_contradicts_it_is_older():
    """Within 2 s nobody can say which was first."""
    assert edges([row(0, "ignition_on", 1), row(1, ignition=0), row(60, ignition=1)]) == [(True, 0, 0, False)]


def test_the_same_again_is_restated():
    """An on while it is on tells nothing new."""
    assert edges([row(0, "ignition_on"), row(60, "ignition_on")])[1] == (True, 60, 60, True)


def test_a_restart_takes_the_state_away_and_back():
    """Off beside it, on behind it: no key was turned. Without a restart both would be."""
    plain = [row(0, "ignition_on"), row(100, "ignition_off"), row(110, "ignition_on")]
    assert [edge[3] for edge in edges(plain)] == [False, False, False]
    assert [edge[3] for edge in edges([*plain, row(101, "boot")])] == [False, True, True]


def test_what_a_unit_says_on_starting_up_is_no_turn():
    """Ten seconds later it is one."""
    assert edges([row(0, "boot"), row(3, "ignition_on")])[0][3]
    assert not edges([row(0, "boot"), row(30, "ignition_on")])[0][3]


def test_states_and_restarts_at_a_moment():
    """What had last been said, what was said next, and how often within a while."""
    seen = observed([row(10, "ignition_on", 1), row(40, ignition=1), row(70, "ignition_off", 0), row(90, "power_lost")])
    assert [seen.state_at(START_S + t) for t in (5, 10, 69, 70)] == [None, True, True, False]
    assert [seen.found_at(START_S + t) for t in (11, 41, 71, 91)] == [True, None, False, None]
    assert seen.seen(on=True, start_s=START_S, end_s=START_S + 60) == 2
    assert seen.restarted(START_S + 80, math.inf)
    assert not seen.restarted(START_S, START_S + 80)
    assert seen.alive(START_S + 35, START_S + 45)
    assert not seen.alive(START_S + 45, START_S + 65)


@pytest.mark.parametrize(("rows", "has"), [([row(0, ignition=1)], False), ([row(0, "ignition_on")], True)])
def test_whether_it_sends_events_at_all(rows, has):
    """A unit that only shows a column is another case."""
    assert observed(rows).has_events is has
