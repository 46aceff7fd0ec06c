"""Script and reports, laid over one another."""

import pytest
from tests.samples.prove_cases import STEPS, aligned, healthy, row

from backprobe.stages.prove.patterns import PatternId


def test_a_healthy_unit_is_a_true_ignition():
    """Nearly all belief falls on it; the delays come out."""
    found = aligned(healthy())
    assert found.fit.wiring.name == "ignition"
    assert found.fit.delays.off_s == pytest.approx(20.4)  # the clock is taken to be 0.4 s behind
    assert max(found.strength(pattern) for pattern in PatternId) < 0.2


def test_what_was_reported_before_the_power_up_is_left_out():
    """An old job's turns do not meet this script."""
    old = [row(-5000, "boot"), row(-4000, "ignition_on"), row(-3000, "ignition_off")]
    found = aligned([*old, *healthy()]).best
    assert found.power_up.first == 3
    assert len(found.kept) == len(healthy())


def test_the_shift_is_undone_before_anything_is_left_out():
    """A boot stamped in another zone, an hour after the turn, is before it."""
    told = [(-60, "boot"), (302, "ignition_on"), (820, "ignition_off"), (900, "heartbeat")]
    rows = [row(t + 3600, event, shift=3600) for t, event in told]
    best = aligned(rows).best
    assert best.shift.quarters == 4
    assert best.power_up.by_event
    assert len(best.fits[0].match.pairs) == 2


def test_the_order_of_arrival_and_repeats_do_not_matter():
    """Only the unit's own stamps are compared."""
    rows = healthy()
    assert aligned(rows[::-1]).fit.cost == aligned(rows).fit.cost


def test_no_zone_is_found_in_an_hour_of_silence():
    """Turns of another day, by chance an hour away and unlike the script's, do not move it."""
    rows = [row(-60, "boot", late=None), row(3700, "ignition_on", late=None), row(9000, "ignition_off", late=None)]
    found = aligned(rows)
    assert found.best.shift.quarters == 0
    assert found.best.silent


def test_shares_add_up():
    """Over all beliefs about the clock."""
    found = aligned(healthy(late=None))
    assert sum(found.share(each) for each in found.all) == pytest.approx(1.0)
    assert found.share(found.best) == max(found.share(each) for each in found.all)


def test_a_wiring_is_told_from_its_look_alikes():
    """On at accessory, off behind it: no other wire does that."""
    extra = [row(102, "ignition_on", 1), row(220, "ignition_off", 0)]
    rows = [each for each in healthy() if "heartbeat" not in each] + extra
    assert aligned(rows).strength(PatternId.ON_IN_ACCESSORY) > 0.9
    assert aligned(rows, STEPS).fit.wiring.name.startswith("accessory")
