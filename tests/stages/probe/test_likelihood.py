"""How likely readings are under each way in which a wire may behave."""

import math
from dataclasses import replace

import pytest
from tests.samples.probe_tables import AT_24_V, SETUP, reading, readings_of, rows, table_of

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.likelihood import ODD, Evidence, Group, expected, is_loaded, position, reference_V
from backprobe.stages.probe.roles import Level, Role, ways

LIVE_OR_DEAD = (Level.BATTERY, Level.ZERO)


def group_of(shown: str, *, others: str = "", system_V: int = 12) -> Group:
    """The only group of readings that a wire's showing makes."""
    setup = SETUP if system_V == 12 else AT_24_V
    beside = table_of(rows("other", others), system_V=system_V).readings if others else ()
    (group,) = Evidence(readings_of(shown, system_V=system_V), beside, setup).groups()
    return group


@pytest.mark.parametrize(
    ("shown", "key"),
    [
        ("after 12.4", Key.AFTER),  # 10 minutes where nothing is written
        ("after@10 12.4", Key.AFTER),
        ("after@60 12.4", Key.AFTER),
        ("after@5 12.4", None),
        ("after@1 12.4", Key.OFF),
        ("off@0.5 12.4", Key.OFF),
        ("on 12.4", Key.ON),
    ],
)
def test_minutes_say_what_a_reading_after_key_off_stands_for(shown: str, key: Key | None):
    """Up to a minute it is off, from ten on after; between them it proves neither."""
    assert position(readings_of(shown)[0]) is key


def test_a_reading_in_between_may_show_either():
    """At 5 minutes a retained wire may still be live or already dead: half of each."""
    mixes = expected(12, None, capture=Capture.DISPLAY, loaded=False)
    retained = next(mix for (way, _), mix in zip(ways(12), mixes, strict=True) if way.role is Role.RETAINED)
    assert sorted((level.value, share) for level, share in retained) == [("B", 0.5), ("Z", 0.5)]


@pytest.mark.parametrize(("load_A", "loaded"), [(None, False), (0.0, False), (0.1, False), (0.2, True), (1.5, True)])
def test_a_load_is_one_that_pulls_down_what_is_no_feed(load_A: float | None, loaded: bool):
    """From 0.2 A on."""
    assert is_loaded(reading("on", "12.3", load_A=load_A)) is loaded


def test_under_a_load_a_signal_is_expected_at_zero():
    """A sensor, a bus or a pull-up cannot hold its level; a feed can."""
    mixes = expected(12, Key.ON, capture=Capture.DISPLAY, loaded=True)
    assert not any(level in (Level.SIGNAL, Level.RESTING) for mix in mixes for level, _ in mix)
    assert mixes[0] == ((Level.BATTERY, 1.0),)


def test_readings_of_one_position_and_capture_share_their_level():
    """Two looks at key on are one group, a MIN there, a loaded look and another key are groups of their own."""
    shown = "on 12.3 on 12.4 on/min 12.2 on%1.5 12.0 off 12.5"
    groups = Evidence(readings_of(shown), (), SETUP).groups()
    assert [len(group.readings) for group in groups] == [2, 1, 1, 1]


def test_no_figure_is_impossible():
    """17.9 V at key on is odd for every level, and possible for each: 1 % spread over 18.5 V."""
    (weighed,) = group_of("on 17.9").readings
    assert min(weighed.odds.values()) >= ODD == pytest.approx(0.01 / 18.5)


def test_a_comma_in_the_wrong_place_speaks_for_the_battery():
    """1.23 V is a slipped 12.3 V: some 0.001 × 10 × 0.9 per volt, a dozen times what any odd figure has."""
    (weighed,) = group_of("on 1.23").readings
    assert weighed.odds[Level.BATTERY] > 10 * ODD
    assert weighed.slips[Level.BATTERY] == pytest.approx(weighed.odds[Level.BATTERY], rel=0.01)
    assert weighed.slips[Level.ZERO] == ODD


def test_a_figure_read_twice_is_no_slip():
    """1.23 V and then 1.25 V: nobody slips twice alike."""
    for weighed in group_of("on 1.23 on 1.25").readings:
        assert weighed.slips[Level.BATTERY] == ODD


def test_a_feed_is_held_against_other_wires():
    """11.6 V beside a wire at 12.5 V is a pulled-up line rather than a feed; beside 11.7 V it is a feed."""
    low, level = group_of("on 11.6", others="on 12.5"), group_of("on 12.2", others="on 12.3")
    assert (group_of("on 11.6").compared, low.compared, level.compared) == (False, False, True)
    assert low.readings[0].odds[Level.RESTING] > 10 * low.readings[0].odds[Level.BATTERY]
    assert level.readings[0].odds[Level.BATTERY] > 2 * level.readings[0].odds[Level.RESTING]


@pytest.mark.parametrize(
    "others",
    ["on 3.2", "off 12.5", "on 11.2", "on%1.5 12.5"],
    ids=["not live", "another position", "far below", "loaded"],
)
def test_not_every_reading_is_compared_with(others: str):
    """Only another wire's live, unloaded reading at the same position and at about the same level is."""
    assert not group_of("on 12.3", others=others).compared


@pytest.mark.parametrize(
    ("levels", "expected"),
    [
        ([], None),
        ([12.4], 12.4),
        ([11.7], None),  # alone and 0.8 V under the usual 12.5 V: perhaps no supply itself
        ([12.5, 11.9], 12.5),
        ([14.2, 12.4], None),  # 12.4 V mistyped?
        ([11.7, 11.6, 10.9], 11.7),  # two agree: a low battery
    ],
)
def test_the_battery_by_other_wires(levels: list[float], expected: float | None):
    """The highest counts where it is not alone with its level."""
    assert reference_V(levels, usual_V=12.5) == expected


def test_the_crank_is_compared_with_rest_and_not_with_other_wires():
    """A MIN of 12.2 V from 12.4 V at rest is no crank: as a battery it is only a slip."""
    groups = Evidence(
        readings_of("on 12.4 crank/min 12.2"), table_of(rows("b", "crank/min 12.1")).readings, SETUP
    ).groups()
    crank = groups[1]
    assert not crank.compared
    assert crank.readings[0].odds[Level.BATTERY] == crank.readings[0].slips[Level.BATTERY]


def test_a_group_s_likelihood_is_that_of_its_mix():
    """Constant expects battery level for certain: its likelihood is the battery's odds."""
    group = group_of("on 12.3")
    at = [way.role for way, _ in ways(12)].index(Role.CONSTANT)
    weighed = group.readings[0]
    assert group.log_likelihoods()[at] == pytest.approx(math.log(weighed.odds[Level.BATTERY]))
    assert group.beside_the_rest(0)[at] == pytest.approx((weighed.odds[Level.BATTERY], weighed.slips[Level.BATTERY]))
    assert group.log_likelihoods(without=0) == pytest.approx([0.0] * len(ways(12)))


def test_one_reading_of_a_level_tells_what_the_next_will_be():
    """A lamp is lit or not: once 12.41 V was read, 0.02 V at the same position is far less likely on a lamp too."""
    first, second = group_of("on 0.02"), group_of("on 0.02 on 12.41")
    ground = [way.role for way, _ in ways(12)].index(Role.NO_SUPPLY)
    lamp = next(
        i for i, mix in enumerate(first.mixes) if len(mix) > 1 and {level for level, _ in mix} >= {*LIVE_OR_DEAD}
    )
    assert second.beside_the_rest(0)[lamp][0] < first.beside_the_rest(0)[lamp][0] / 50
    assert second.beside_the_rest(0)[ground][0] == pytest.approx(first.beside_the_rest(0)[ground][0])


def test_volts_of_a_24_v_vehicle_are_halved():
    """24.6 V there weighs as 12.3 V does here."""
    here, there = group_of("on 12.30"), group_of("on 24.60", system_V=24)
    assert there.readings[0].odds[Level.BATTERY] == pytest.approx(here.readings[0].odds[Level.BATTERY], rel=0.05)


def test_minutes_at_off_count_as_well():
    """'off' with 5 minutes stands for neither, with 12 minutes for after."""
    early, late = (reading("off", "12.4"), reading("off", "12.4"))
    assert position(replace(early, after_min=5.0)) is None
    assert position(replace(late, after_min=12.0)) is Key.AFTER
