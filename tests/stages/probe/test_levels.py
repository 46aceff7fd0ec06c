"""How likely a value is at a level."""

from __future__ import annotations

import pytest

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.levels import battery, beside, flat, zero_density

STEP_V = 0.01


def area(density, from_V: float, to_V: float) -> float:
    """The integral of a density by steps of 10 mV."""
    steps = round((to_V - from_V) / STEP_V)
    return sum(density(from_V + (i + 0.5) * STEP_V) for i in range(steps)) * STEP_V


@pytest.mark.parametrize("capture", list(Capture))
@pytest.mark.parametrize("key", [Key.OFF, Key.ON, Key.CRANK, Key.RUNNING, Key.AFTER])
def test_the_batterys_densities_are_whole(key, capture):
    """Something between 0 and 20 V is certain."""
    bell = battery(key, capture)
    assert area(lambda volts: bell.density(volts, 0.05), 0.0, 20.0) == pytest.approx(1.0, abs=0.01)


def test_a_dead_wire_is_near_zero_but_for_ghosts():
    """Nine in ten within 0.2 V; a ghost voltage of 1 V is possible, 5 V is not."""
    assert area(lambda volts: zero_density(volts, 0.02), -0.5, 0.2) > 0.85
    assert zero_density(1.0, 0.02) > 0.0
    assert zero_density(5.0, 0.02) < 1e-6


def test_a_charging_battery_stands_higher_than_a_resting_one():
    """14.1 V is likelier while running, 12.5 V at rest."""
    rest, running = battery(Key.OFF, Capture.DISPLAY), battery(Key.RUNNING, Capture.DISPLAY)
    assert running.density(14.1, 0.05) > rest.density(14.1, 0.05)
    assert rest.density(12.5, 0.05) > running.density(12.5, 0.05)


def test_beside_another_live_wire_the_battery_is_better_known():
    """12.2 V on a neighbour makes 12.2 V likelier and 13.0 V less likely."""
    bell = battery(Key.ON, Capture.DISPLAY)
    near = beside(bell, 12.2)
    assert near.density(12.2, 0.05) > bell.density(12.2, 0.05)
    assert near.density(13.0, 0.05) < bell.density(13.0, 0.05)
    assert beside(bell, None) is bell


def test_flat_is_one_over_the_range():
    """Inside 1/(4 V), outside nothing."""
    assert (flat(3.0, 2.0, to_V=6.0), flat(6.1, 2.0, to_V=6.0)) == (0.25, 0.0)
