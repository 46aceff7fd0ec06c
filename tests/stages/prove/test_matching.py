"""How well what is due and what was reported agree."""

import pytest
from tests.samples.prove_cases import START_S, observed, row

from backprobe.stages.prove.debounce import Due
from backprobe.stages.prove.matching import (
    HIT,
    MISSED_HEARD,
    MISSED_QUIET,
    MISSED_UNHEARD,
    UNEXPLAINED,
    UNEXPLAINED_NOISE,
    WRONG_LEVEL,
    match,
    span_of,
)


def due(*seconds, optional=False):
    """What is due at these seconds, negative for off; the bare input showed it 10 s before."""
    return [
        Due(
            on=t > 0,
            lo_s=START_S + abs(t),
            hi_s=START_S + abs(t),
            bare_s=START_S + abs(t) - 10,
            row=i,
            optional=optional,
        )
        for i, t in enumerate(seconds)
    ]


def span(rows, last=500):
    """What was observed from 0 to `last` seconds."""
    return span_of(observed(rows), start_s=START_S, last_s=START_S + last)


ON_OFF = [row(-60, "boot"), row(100, "ignition_on"), row(300, "ignition_off")]


def test_events_in_their_place():
    """Two hits without misfit: 2 × -2."""
    found = match(due(100, -300), span(ON_OFF), level=False)
    assert found.cost == 2 * HIT
    assert [(d.row, e.on) for d, e in found.pairs] == [(0, True), (1, False)]
    assert (found.missing, found.unexplained) == ((), ())


def test_misfit_costs_its_square():
    """3.8 s late where 1.5 s + 4 % of 10 s is the spread: half of (3.8 / 1.9)² = 2."""
    assert match(due(103.8, -300), span(ON_OFF), level=False).cost == pytest.approx(2 * HIT + 2.0, abs=0.01)


def test_the_nearest_event_is_taken_and_each_only_once():
    """Of two that could answer, the nearer; the other is left over."""
    found = match(due(100), span([row(99, "ignition_on"), row(104, "ignition_on")]), level=False)
    assert [edge.hi_s - START_S for _, edge in found.pairs] == [99]
    assert len(found.unexplained) == 1
    assert len(match(due(100, 101), span([row(100, "ignition_on")]), level=False).pairs) == 1


def test_an_event_that_nothing_explains():
    """Costs 5, and 4 for the state that it leaves; where the lead is taken to make no contact, 1."""
    lone = span([row(100, "ignition_on")])
    assert match([], lone, level=False).cost == UNEXPLAINED + WRONG_LEVEL
    assert match([], lone, level=False, noise=True).cost == UNEXPLAINED_NOISE


def test_what_is_missing_costs_by_what_was_heard():
    """Heard meanwhile; heard before and after, and events are kept; not heard at all. Optional: nothing."""
    heard = [*ON_OFF[:2], row(330, "heartbeat")]
    assert match(due(100, -300), span(heard), level=False).cost == HIT + MISSED_HEARD
    quiet = [row(-60, "boot"), row(100, "ignition_on"), row(5000, "heartbeat")]
    assert match(due(100, -300), span(quiet), level=False).cost == HIT + MISSED_QUIET
    assert match(due(100, -300), span(ON_OFF[:2]), level=False).cost == HIT + MISSED_UNHEARD
    assert match([*due(100), *due(-300, optional=True)], span(heard), level=False).missing == ()


def test_the_column_may_show_the_bare_input():
    """A change between two reports answers from the bare change on, 10 s before the debounce is over."""
    rows = [row(0, ignition=0), row(85, ignition=0), row(92, ignition=1), row(200, ignition=1)]
    assert len(match(due(100), span(rows), level=False).pairs) == 1
    assert match(due(130), span(rows), level=False).pairs == ()


def test_reports_of_the_other_state_count_against():
    """On throughout where off is due: 4 for each stretch and for the state before."""
    rows = [row(t, ignition=1) for t in range(-60, 480, 60)]
    constant = match([], span(rows), level=True).cost
    dead = match([], span(rows), level=False).cost
    assert constant == 0
    assert dead >= 8


def test_turns_behind_the_script_are_no_business_of_it():
    """The late off still answers; what the driver does afterwards is not looked at."""
    rows = [*ON_OFF[:2], row(560, "ignition_off"), row(900, "ignition_on"), row(950, "ignition_off")]
    found = match(due(100, -560), span(rows), level=False)
    assert len(found.pairs) == 2
    assert found.unexplained == ()
    assert [len(span(rows).by_direction[on][0]) for on in (True, False)] == [2, 1]


def test_an_endless_flicker_is_cut():
    """300 edges tell enough; the others are counted."""
    rows = [row(t / 2, "ignition_on" if t % 2 else "ignition_off") for t in range(900)]
    assert len(span(rows).inside) == 300
    assert span(rows).cut == 600
