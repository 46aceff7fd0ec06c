"""The supply as the unit reports it at the key's positions."""

import pytest
from tests.samples.prove_cases import STEPS, healthy, proven, row

from backprobe.evidence.keys import Key
from backprobe.stages.prove.supply_levels import SupplyLevel, supply_levels


def levels(*more: str, steps=STEPS, volts: dict[float, str] | None = None) -> dict[Key, SupplyLevel]:
    """What was reported at each position; every report says 12.4 V but those at the seconds in `volts`."""
    rows = [*healthy(), *more]
    rows += [row(t, "heartbeat", 0).replace(",12.4,", f",{shown},") for t, shown in (volts or {}).items()]
    return {level.key: level for level in supply_levels(proven(rows, steps=steps).proof, from_min=10.0)}


def test_nothing_is_said_of_rest_before_ten_minutes():
    """The off was reported at 820 s, the last heartbeat came at 1170 s: 6 minutes."""
    assert set(levels()) == {Key.ACCESSORY, Key.ON}


def test_at_rest_from_ten_minutes_on():
    """The lowest of 12.3 and 12.1 V, an hour and two after the off; ± (0.5 V + 3 %)."""
    found = levels(volts={820 + 3600: "12.3", 820 + 7200: "12.1"})[Key.AFTER]
    assert (found.lowest_V, found.minutes) == (12.1, pytest.approx(120.0))
    assert found.spread_V == pytest.approx(0.5 + 0.03 * 12.1)


def test_the_position_s_own_reports_count():
    """11.9 V at 150 s, in accessory; 12.0 V at 400 s, at on; 9.0 V at 501 s, in the crank, belongs to neither."""
    found = levels(volts={150: "11.9", 501: "9.0"}, steps=STEPS)
    assert (found[Key.ACCESSORY].lowest_V, found[Key.ON].lowest_V) == (11.9, 12.4)


@pytest.mark.parametrize("event", ["boot", "power_lost", "ignition_on"])
def test_a_restart_or_a_turn_ends_it(event: str):
    """What came after it says nothing of the rest after the script."""
    late = row(820 + 7200, "heartbeat", 0)
    assert Key.AFTER in levels(late)
    assert Key.AFTER not in levels(late, row(820 + 300, event, 1 if event == "ignition_on" else 0))


def test_a_script_that_ends_with_an_open_door_is_waited_for():
    """Doors shut at 1000 s: ten minutes from there, not from the off at 800 s."""
    steps = (*STEPS, (1000, "doors_shut"))
    assert Key.AFTER not in levels(row(1590, "heartbeat", 0), steps=steps)
    assert Key.AFTER in levels(row(1601, "heartbeat", 0), steps=steps)


def test_a_unit_that_reports_no_volts_shows_none():
    """The column is empty."""
    rows = [each.replace(",12.4,", ",,") for each in [*healthy(), row(820 + 7200, "heartbeat", 0)]]
    assert supply_levels(proven(rows).proof, from_min=10.0) == ()
