"""The delays under which a wiring explains the reports best."""

import pytest
from tests.samples.prove_cases import STEPS, healthy, observed, row, script

from backprobe.stages.prove.fitting import fit
from backprobe.stages.prove.matching import span_of
from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.wirings import IGNITION, wirings_for


def fitted(rows, name="ignition", steps=STEPS, known=True, timing=None):
    """The fit of one wiring."""
    lines = script(steps)
    wiring = next(each for each in wirings_for(lines) if each.name == name)
    span = span_of(observed(rows), start_s=lines.start_s, last_s=lines.last_s)
    return fit(wiring, lines, span=span, timing=timing or Timing(), clock_u_s=2.0 if known else None)


@pytest.mark.parametrize(("on_s", "off_s"), [(0.5, 3), (2, 20), (5, 60)])
def test_the_delays_are_found(on_s, off_s):
    """To the second, from one on and one off."""
    found = fitted(healthy(on_s, off_s))
    assert (found.delays.on_s, found.delays.off_s) == pytest.approx((on_s, off_s))
    assert found.patterns == frozenset()


def test_a_late_off_is_retained_power():
    """Later than the limit: 60 s as usual, the debounce and 10 s where the sheet states it."""
    assert fitted(healthy(2, 90)).patterns == {PatternId.FOLLOWS_DOOR_OR_TIMER}
    stated = Timing(usual_off_s=20, off_limit_s=30, from_sheet=True)
    assert fitted(healthy(2, 40), timing=stated).patterns == {PatternId.FOLLOWS_DOOR_OR_TIMER}
    assert fitted(healthy(2, 40)).patterns == frozenset()


def test_a_clock_that_is_ahead_excuses_both_delays():
    """On 45 s late and off 100 s late, nothing known of the clock: 43 s may be the clock's, so off is 57 s late."""
    late = healthy(45, 100)
    assert fitted(late, known=False).patterns == frozenset()
    assert fitted(late, known=False).delays.clock_s == 43
    assert fitted(late, known=True).patterns == {PatternId.FOLLOWS_DOOR_OR_TIMER}


def test_events_before_their_cause_are_paid_for():
    """An on 20 s before the key was turned is no on of that key."""
    assert fitted(healthy(-20, 0)).cost > fitted(healthy(2, 20)).cost + 5


def test_a_wake_that_nobody_saw_is_paid_for():
    """A wiring that is woken by the body needs an on when the vehicle was unlocked."""
    steps = [(0, "off"), (250, "unlock"), *STEPS[3:]]
    name = "ignition, woken by unlock (held)"
    seen = [row(-60, "boot"), row(252, "ignition_on"), row(820, "ignition_off")]
    assert fitted(seen, name, steps).cost < fitted(seen, "ignition", steps).cost
    assert fitted(healthy(), name, steps).cost > fitted(healthy(), "ignition", steps).cost + 5


def test_a_key_that_had_just_been_turned_off():
    """The unit was still on when the script began: the off that follows is no fault."""
    rows = [row(-300, "ignition_on"), row(15, "ignition_off"), row(302, "ignition_on"), row(820, "ignition_off")]
    found = fitted(rows)
    assert found.match.unexplained == ()
    assert fitted(healthy()).wiring == IGNITION
