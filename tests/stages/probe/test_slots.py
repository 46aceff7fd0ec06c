"""Is a wire fit for its slot?"""

from dataclasses import replace

import pytest
from tests.samples.probe_tables import AT_24_V, ELECTRIC, LOGGING, SETUP, SHOWN, doubled, readings_of

from backprobe.evidence.keys import Capture, Key
from backprobe.findings import Verdict
from backprobe.stages.probe.belief import Belief, believe
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import (
    Check,
    Fitness,
    SlotName,
    better_capture_to_be_had,
    choosable,
    fitness,
    required,
    worst_of,
)

HOLDS, THIN, FAILS, OPEN = Verdict.HOLDS, Verdict.THIN, Verdict.FAILS, Verdict.OPEN


def belief_of(shown: str, setup: Setup = SETUP) -> Belief:
    """The belief about a wire that showed this."""
    return believe("w", readings_of(shown, system_V=setup.system_V), others=(), setup=setup)


def fit_of(shown: str, slot: SlotName, setup: Setup = SETUP) -> Fitness:
    """How a wire that showed this stands to a slot; the battery rests at 12.5 V (24 V: 25 V)."""
    return fitness(belief_of(shown, setup), slot, setup=setup, rest_V=12.5 * setup.system_V / 12)


def check_of(shown: str, slot: SlotName, key: Key, setup: Setup = SETUP) -> Check:
    """One of its checks."""
    return next(check for check in fit_of(shown, slot, setup).checks if check.key is key)


def test_a_supply_is_live_everywhere_and_an_ignition_only_in_on_and_running():
    """The crank is required besides, where there is one."""
    states = {slot: dict(required(slot, SETUP)) for slot in SlotName}
    assert set(states[SlotName.SUPPLY]) == {Key.OFF, Key.ACCESSORY, Key.ON, Key.RUNNING, Key.AFTER}
    assert set(states[SlotName.SUPPLY].values()) == {"live"}
    assert states[SlotName.IGNITION] == {Key.OFF: "dead", Key.ACCESSORY: "dead", Key.ON: "live", Key.RUNNING: "live"}
    assert [check.key for check in fit_of("", SlotName.SUPPLY).checks][-1] is Key.CRANK


def test_an_electric_ignition_is_also_dead_after_and_on_the_charger():
    """On alone proves nothing there; no crank is asked for."""
    wanted = dict(required(SlotName.IGNITION, ELECTRIC))
    assert (wanted[Key.AFTER], wanted[Key.CHARGING], wanted[Key.RUNNING]) == ("dead", "dead", "live")
    assert fit_of("", SlotName.IGNITION, ELECTRIC).crank is None


def test_only_accessory_and_charger_can_be_missing_from_a_vehicle():
    """'na' at any other position leaves the requirement open: no supply without an after."""
    absent = replace(ELECTRIC, absent_keys=frozenset(Key), has_accessory=False)
    assert Key.CHARGING not in dict(required(SlotName.IGNITION, absent))
    assert {Key.OFF, Key.ON, Key.RUNNING, Key.AFTER} <= set(dict(required(SlotName.SUPPLY, absent)))
    shown = SHOWN["constant"].replace(" after 12.55", "")
    assert fit_of(shown, SlotName.SUPPLY, replace(SETUP, absent_keys=frozenset({Key.AFTER}))).verdict is OPEN


def test_good_wires_hold():
    """10.93 V by MIN hides 1.25 V, more than 0.23 + 0.68 × (12.31 - 10.93) = 1.17 V: 9.6 V; the ignition 10.3 V."""
    assert fit_of(SHOWN["constant"], SlotName.SUPPLY).verdict is HOLDS
    assert fit_of(SHOWN["ignition"], SlotName.IGNITION).verdict is HOLDS
    assert fit_of(doubled(SHOWN["constant"]), SlotName.SUPPLY, AT_24_V).verdict is HOLDS


@pytest.mark.parametrize(
    ("shown", "verdict"),
    [
        ("on 12.40 crank/logged 9.10", HOLDS),  # 9.10 - (0.0455 + 0.02) = 9.03 V
        ("on 12.40 crank/logged 9.05", THIN),  # 8.98 V
        ("on 12.40 crank/logged 8.99", FAILS),
        ("on 12.40 crank/min 10.60", HOLDS),  # 10.60 - 0.073 - (0.23 + 0.68 × 1.8) = 9.07 V
        ("on 12.40 crank/min 10.50", THIN),  # 10.50 - 0.073 - (0.23 + 0.68 × 1.9) = 8.91 V
        ("on 12.40 crank/min 8.90", FAILS),
        ("on 12.40 crank 11.60", OPEN),  # a display proves nothing
        ("on 12.40 crank 8.90", FAILS),  # but it disproves
        ("on 12.40 crank/max 12.10", OPEN),
        ("on 12.40", OPEN),
    ],
)
def test_the_crank_of_a_supply(shown: str, verdict: Verdict):
    """At least 9 V while the starter turns, common practice, no source."""
    assert check_of(shown, SlotName.SUPPLY, Key.CRANK).verdict is verdict


def test_the_crank_of_an_ignition_has_its_own_limit():
    """9.5 V holds for a supply by a fast recorder and fails for an ignition (10 V)."""
    assert check_of("on 12.4 crank/logged 9.50", SlotName.SUPPLY, Key.CRANK).verdict is HOLDS
    assert check_of("on 12.4 crank/logged 9.50", SlotName.IGNITION, Key.CRANK).verdict is FAILS


def test_the_level_before_the_crank_is_the_wire_s_own():
    """Key on shows 12.0 V: the drop to 10.4 V is 1.6 V, not 2.1 V from the battery's 12.5 V."""
    low_V = check_of("on 12.00 crank/min 10.40", SlotName.SUPPLY, Key.CRANK).low_V
    assert low_V == pytest.approx(10.40 - 0.072 - (0.23 + 0.68 * 1.6), abs=0.001)
    without = check_of("crank/min 10.40", SlotName.SUPPLY, Key.CRANK).low_V
    assert without == pytest.approx(10.40 - 0.072 - (0.23 + 0.68 * 2.1), abs=0.001)


def test_a_recorder_counts_before_a_hold_and_a_failure_before_all():
    """MIN thin and recorder good: holds; one value below the limit disproves whatever the others say."""
    assert check_of("on 12.4 crank/min 10.5 crank/logged 9.9", SlotName.SUPPLY, Key.CRANK).verdict is HOLDS
    assert check_of("on 12.4 crank/logged 9.9 crank/min 8.8", SlotName.SUPPLY, Key.CRANK).verdict is FAILS


@pytest.mark.parametrize(
    ("shown", "verdict"),
    [("off 0.02", HOLDS), ("off 0.99", THIN), ("off 1.10", FAILS), ("off 12.4", FAILS), ("on 0.1", OPEN)],
)
def test_an_ignition_is_dead_at_off(shown: str, verdict: Verdict):
    """At most 1 V; ±(0.5 % + 2 counts) of 0.99 V reach 1.01 V."""
    assert check_of(shown, SlotName.IGNITION, Key.OFF).verdict is verdict


def test_stray_volts_are_settled_under_a_load():
    """1.60 V bare and 0.02 V under 1 A is dead; live under a load stays live, and a supply's worst reading counts."""
    assert check_of("off 1.60 off%1.0 0.02 on 12.3 running 14.1", SlotName.IGNITION, Key.OFF).verdict is HOLDS
    assert check_of("off 12.40 off%1.0 12.10", SlotName.IGNITION, Key.OFF).verdict is FAILS
    assert check_of("on 12.40 on%1.0 10.10 off 12.5", SlotName.SUPPLY, Key.ON).verdict is FAILS


def test_an_after_too_early_is_no_after():
    """Five minutes after key-off prove nothing; twelve do."""
    assert check_of("after@5 12.5", SlotName.SUPPLY, Key.AFTER).verdict is OPEN
    after = check_of("after@12 12.5", SlotName.SUPPLY, Key.AFTER)
    assert (after.verdict, after.minutes) == (HOLDS, 12.0)


def test_what_is_missing_is_named():
    """A constant read at off and on owes the rest."""
    owed = fit_of("off 12.5 on 12.4", SlotName.SUPPLY).missing()
    assert owed == (Key.ACCESSORY, Key.RUNNING, Key.AFTER, Key.CRANK)


def test_the_worst_check_has_the_least_room():
    """Of two that hold, the one nearer to its limit."""
    checks = fit_of(SHOWN["constant"], SlotName.SUPPLY).checks
    assert worst_of(checks).key is Key.CRANK


@pytest.mark.parametrize(
    ("crank", "chosen"),
    [
        ("crank/min 10.60", True),  # holds
        ("crank/min 10.10", True),  # ends at 10.10 - 0.071 - 1.794 = 8.24 V: thin, within 1 V of 9 V
        ("crank/min 9.90", False),  # ends at 9.90 - 0.070 - 1.930 = 7.90 V
        ("crank 11.60", False),
        ("crank/min 8.90", False),
    ],
)
def test_thin_is_choosable_within_1_v(crank: str, chosen: bool):
    """Where no better capture can be had and the range ends within 1 V below the limit."""
    shown = SHOWN["constant"].replace("crank/min 10.93", crank).replace("on 12.31", "on 12.40")
    assert choosable(fit_of(shown, SlotName.SUPPLY), belief_of(shown), setup=SETUP) is chosen


def test_thin_is_not_choosable_while_a_recorder_is_at_hand():
    """It was asked for and came back as a MIN: after two cranks it is taken as not to be had."""
    once = SHOWN["constant"].replace("crank/min 10.93", "crank/min 10.10")
    twice = once.replace("crank/min 10.10", "crank/min 10.10 crank/min 10.15")
    for shown, chosen in ((once, False), (twice, True)):
        assert better_capture_to_be_had(belief_of(shown, LOGGING), LOGGING) is not chosen
        assert choosable(fit_of(shown, SlotName.SUPPLY, LOGGING), belief_of(shown, LOGGING), setup=LOGGING) is chosen


def test_a_thin_standing_position_is_never_choosable():
    """0.99 V at off may be over 1 V: not to be tapped, however good the crank."""
    shown = SHOWN["ignition"].replace("off 0.02", "off 0.99")
    assert fit_of(shown, SlotName.IGNITION).verdict is THIN
    assert not choosable(fit_of(shown, SlotName.IGNITION), belief_of(shown), setup=SETUP)


def test_captures_are_asked_of_the_meter():
    """A meter without a recorder has no better capture than MIN."""
    assert not better_capture_to_be_had(belief_of("crank/min 10.1"), SETUP)
    assert better_capture_to_be_had(belief_of("crank/min 10.1"), LOGGING)
    assert Capture.LOGGED in LOGGING.captures


def test_a_vehicle_without_an_accessory_position_is_not_asked_for_it():
    """Push-button vehicles have none."""
    button = replace(SETUP, has_accessory=False)
    assert all(key is not Key.ACCESSORY for slot in SlotName for key, _ in required(slot, button))


@pytest.mark.parametrize(
    ("reported_V", "value_V", "verdict"), [(12.1, 12.58, HOLDS), (9.9, 12.58, HOLDS), (9.0, 9.0, FAILS)]
)
def test_what_the_unit_reports_counts_against_a_meter_only_where_it_is_surely_too_low(
    reported_V: float, value_V: float, verdict: Verdict
):
    """A meter's 12.58 V ten minutes after key-off; a night's lowest of 9.9 V ± 0.8 V may be 10.5 V, 9.0 V may not."""
    metered = readings_of("after 12.58")
    told = replace(metered[0], volts=reported_V, source="the unit's reports", spread_V=0.8, after_min=600.0)
    belief = believe("w", (*metered, told), others=(), setup=SETUP)
    found = replace(belief, doubtful=())
    check = next(c for c in fitness(found, SlotName.SUPPLY, setup=SETUP, rest_V=12.5).checks if c.key is Key.AFTER)
    assert (check.value_V, check.verdict) == (value_V, verdict)
