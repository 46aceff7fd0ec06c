"""Limits and meters by name."""

import pytest

from backprobe.errors import OptionError
from backprobe.evidence.keys import Capture
from backprobe.findings import Side, Standing
from backprobe.limits.lookup import SYSTEMS_V, limit, meter
from backprobe.limits.meters import METERS
from backprobe.limits.practice import PRACTICE

AS_THE_TRADE_SAYS = {
    "supply_in_crank": (9.0, 18.0),
    "ignition_in_crank": (10.0, 20.0),
    "dead": (1.0, 2.0),
    "live": (10.5, 21.0),
    "supply_loaded_drop": (0.3, 0.3),
    "after_minutes": (10.0, 10.0),
    "reading_most": (18.0, 36.0),
    "reading_least": (-0.5, -0.5),
}


@pytest.mark.parametrize("name", AS_THE_TRADE_SAYS)
def test_each_limit_has_its_value_for_both_systems(name):
    """The values are those the trade works by (common practice, no source), 12 V and 24 V."""
    assert tuple(limit(name, system_V=system).value for system in SYSTEMS_V) == AS_THE_TRADE_SAYS[name]


def test_no_limit_is_left_unchecked():
    """Every limit of the table is in the list above, so that a new one cannot slip in unseen."""
    assert set(PRACTICE) == set(AS_THE_TRADE_SAYS)


def test_every_limit_carries_its_own_name():
    """A finding names the limit by its id, so the id inside must be the key outside."""
    assert all(found.id == name for name, by_system in PRACTICE.items() for found in by_system.values())


@pytest.mark.parametrize("name", ["supply_in_crank", "ignition_in_crank", "live", "after_minutes", "reading_least"])
def test_floors_are_floors(name):
    """A value above these limits is allowed, one below is not."""
    found = limit(name, system_V=12)
    assert found.side is Side.AT_LEAST
    assert found.allows(found.value + 0.1)
    assert not found.allows(found.value - 0.1)


@pytest.mark.parametrize("name", ["dead", "supply_loaded_drop", "reading_most"])
def test_ceilings_are_ceilings(name):
    """A value below these limits is allowed, one above is not."""
    found = limit(name, system_V=24)
    assert found.side is Side.AT_MOST
    assert not found.allows(found.value + 0.1)


def test_what_is_from_memory_says_so():
    """The 24 V overvoltage figure was not read anywhere; its warrant admits it."""
    assert limit("reading_most", system_V=24).standing is Standing.FROM_MEMORY
    assert "from memory" in limit("reading_most", system_V=24).warrant


def test_a_42_volt_system_is_refused():
    """Only 12 and 24 V systems have limits."""
    with pytest.raises(OptionError, match="12 or 24"):
        limit("dead", system_V=42)


def test_an_unknown_limit_is_a_mistake_of_the_program():
    """Names of limits come from the code, not from the technician: a wrong one must not pass."""
    with pytest.raises(KeyError):
        limit("supply_while_cranking", system_V=12)


def test_the_service_class_sees_a_dip_of_one_millisecond():
    """The one published figure of the classes: 1 ms MIN and MAX."""
    assert meter("service").min_capture_ms == 1.0
    assert meter("basic").min_capture_ms == meter("precise").min_capture_ms == 100.0


def test_no_class_of_hand_meter_claims_to_log():
    """A hand meter's MIN is not a fast recorder."""
    assert all(Capture.LOGGED not in found.captures for found in METERS.values())


def test_every_class_says_what_its_figures_rest_on():
    """All accuracies are from memory at the time of writing, and every class says so."""
    assert all("from memory, unverified" in found.basis for found in METERS.values())


def test_an_unknown_class_is_refused_with_the_known_ones():
    """The technician reads which classes there are."""
    with pytest.raises(OptionError, match="basic, service, precise"):
        meter("golden")
