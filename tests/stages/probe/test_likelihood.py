"""How likely readings are under each way in which a wire may behave."""

from __future__ import annotations

import math

import pytest
from tests.samples.wire_readings import SETUP, reading

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.likelihood import Evidence, expected, is_loaded, position
from backprobe.stages.probe.roles import Level, Role, ways


@pytest.mark.parametrize(
    ("key", "minutes", "stands_for"),
    [
        ("off", None, Key.OFF),
        ("off", 0.5, Key.OFF),
        ("off", 5.0, None),
        ("off", 12.0, Key.AFTER),
        ("after", 10.0, Key.AFTER),
        ("after", 5.0, None),
        ("on", 3.0, Key.ON),
    ],
)
def test_minutes_after_key_off_decide_what_a_reading_stands_for(key, minutes, stands_for):
    """Within a minute off, from ten minutes after, between them neither."""
    assert position(reading("Red", key, 12.4, after_min=minutes)) is stands_for


def test_a_load_counts_from_a_fifth_of_an_ampere():
    """A test lamp does, the meter's own microamperes do not."""
    assert is_loaded(reading("Red", "on", 12.3, load_A=1.5))
    assert not is_loaded(reading("Red", "on", 12.3, load_A=0.01))
    assert not is_loaded(reading("Red", "on", 12.3))


def test_readings_at_one_position_share_a_group_loaded_ones_apart():
    """Two displays at key on share the level; the loaded one stands by itself, the MIN too."""
    shown = (
        reading("Red", "on", 12.4),
        reading("Red", "on", 12.3),
        reading("Red", "on", 12.2, load_A=1.5),
        reading("Red", "on", 12.1, "min"),
    )
    groups = Evidence(shown, (), SETUP).groups()
    assert sorted(len(group.readings) for group in groups) == [1, 1, 2]


def test_battery_level_speaks_for_a_feed_and_against_a_dead_wire():
    """12.4 V at key on under 'constant' against 'no supply'."""
    (group,) = Evidence((reading("Red", "on", 12.4),), (), SETUP).groups()
    logs = dict(zip((way.role for way, _ in ways(12)), group.log_likelihoods(), strict=True))
    assert logs[Role.CONSTANT] - logs[Role.NO_SUPPLY] > math.log(50)


def test_leaving_the_only_reading_out_says_nothing():
    """Log likelihood 0 under every way."""
    (group,) = Evidence((reading("Red", "on", 12.4),), (), SETUP).groups()
    assert set(group.log_likelihoods(without=0)) == {0.0}


def test_a_load_is_expected_to_pull_down_what_is_no_feed():
    """No way expects a signal or a resting line under load."""
    for mix in expected(12, Key.ON, capture=Capture.DISPLAY, loaded=True):
        assert not {level for level, _ in mix} & {Level.SIGNAL, Level.RESTING}


def test_between_one_and_ten_minutes_half_off_and_half_after_is_expected():
    """A retained wire is then live or dead, one as likely as the other."""
    mixes = expected(12, None, capture=Capture.DISPLAY, loaded=False)
    retained = next(mix for (way, _), mix in zip(ways(12), mixes, strict=True) if way.role is Role.RETAINED)
    shares = {level: math.fsum(s for found, s in retained if found is level) for level, _ in retained}
    assert shares == {Level.BATTERY: pytest.approx(0.5), Level.ZERO: pytest.approx(0.5)}
