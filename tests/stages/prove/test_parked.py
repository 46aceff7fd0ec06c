"""For how long a supply and an off are proven."""

import pytest
from tests.samples.prove_cases import healthy, proven, row


def parked(*more):
    """Hours of constant supply and of off, and whether a night is covered."""
    found = proven([*healthy(), *more]).proof.parked
    return round(found.constant_h, 2), round(found.ignition_off_h, 2), found.night


def test_until_the_last_report():
    """From power-up at -60 s, from the off at 820 s, to the last heartbeat at 1170 s."""
    assert parked() == (round(1230 / 3600, 2), round(350 / 3600, 2), False)


def test_a_parked_night():
    """Nine hours later it is still off; the driver's first on ends it, and what follows does not count."""
    night = row(820 + 9 * 3600, "heartbeat", 0)
    assert parked(night)[1:] == (9.0, True)
    driver = [row(820 + 2 * 3600, "ignition_on", 1), row(820 + 3 * 3600, "ignition_off", 0)]
    assert parked(*driver, night)[1:] == (2.0, False)


@pytest.mark.parametrize("event", ["boot", "power_lost"])
def test_a_restart_ends_it(event):
    """A supply that was lost is not constant."""
    assert parked(row(820 + 3600, event), row(820 + 9 * 3600, "heartbeat", 0))[1:] == (1.0, False)


def test_an_off_that_was_not_reported_proves_nothing():
    """Zero hours; the supply is another matter."""
    found = proven([row(-60, "boot"), row(302, "ignition_on"), row(3540)]).proof.parked
    assert found.as_json() == {"constant_h": 1.0, "ignition_off_h": 0.0, "night": False}
