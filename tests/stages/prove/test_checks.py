"""Each pattern in its plainest form."""

import pytest
from tests.samples.prove_cases import STEPS, healthy, named, proven, row

BOOT = row(-60, "boot")
AFTER = [row(t, "heartbeat") for t in range(900, 1500, 60)]
DOORS = [*STEPS[:3], (250, "unlock"), *STEPS[3:], (900, "doors_open"), (910, "doors_shut")]


def told(*events):
    """Boot, these events (seconds, positive for on), and heartbeats behind the script."""
    return [BOOT, *(row(abs(t), "ignition_on" if t > 0 else "ignition_off") for t in events), *AFTER]


@pytest.mark.parametrize(
    ("events", "steps", "pattern"),
    [
        ((302, -500.5, 503, -801), STEPS, "not_live_in_crank"),
        ((102, -220, 302, -820), STEPS, "on_in_accessory"),
        ((302, -890), STEPS, "follows_door_or_timer"),
        ((506, -820), STEPS, "sensed_not_wired"),
        ((252, -820), DOORS, "body_wake"),
        ((-302, 820), STEPS, "inverted"),
        ((302, -350, 353, -420, 421, -600, 605, -820), STEPS, "floating"),
    ],
)
def test_what_the_lead_sits_on(events, steps, pattern):
    """The strongest named; a healthy unit names none."""
    assert named(proven(told(*events), steps))[0] == pattern
    assert named(proven(told(302, -820), steps)) == []


def test_a_door_at_differing_lags():
    """Off 33 s and 73 s late: no debounce does that, the door was shut 30 s and 70 s after the key."""
    steps = [(0, "off"), (100, "on"), (300, "off"), (330, "doors_shut"), (500, "on"), (700, "off"), (770, "doors_shut")]
    assert named(proven(told(102, -333, 502, -773), steps)) == ["follows_door_or_timer"]
    even = [*steps[:3], (330, "doors_shut"), *steps[4:6], (730, "doors_shut")]
    assert named(proven(told(102, -333, 502, -733), even)) == []  # 33 s is a debounce like any other


def test_never_off():
    """On since power-up, and the unit says so throughout."""
    rows = [BOOT, row(-57, "ignition_on", 1), *(row(t, "heartbeat", 1) for t in range(-30, 1500, 60))]
    assert named(proven(rows)) == ["never_off"]


def test_a_restart_at_the_crank():
    """A boot there is no loss of the ignition; a boot elsewhere is no fault of the supply."""
    rows = [*healthy(), row(503, "boot"), row(506, "ignition_on", 1)]
    assert named(proven(rows)) == ["resets_in_crank"]
    assert named(proven([*healthy(), row(650, "boot"), row(653, "ignition_on", 1)])) == []


def test_an_accessory_wire_explains_the_loss_in_crank():
    """Accessory wires are dead while the starter turns: not_live_in_crank is not named beside it."""
    assert named(proven(told(102, -201, 302, -500.5, 503, -801))) == ["on_in_accessory"]


def test_a_position_that_is_kept():
    """The right turns, five kilometres away; without turns it is no pattern, but the position fails."""
    away = healthy(place="-33.145,151.2,4")
    assert named(proven(away)) == ["stale_position"]
    silent = proven([row(t, place="-33.145,151.2,4") for t in range(-60, 1500, 60)])
    assert "stale_position" not in named(silent)
    assert str(silent.proof.position.verdict) == "fails"


@pytest.mark.parametrize(
    ("shift", "pattern"),
    [(3600, "time_zone"), (-18_000, "time_zone"), (18, "gps_time"), (-1024 * 7 * 86_400, "date_rollover"), (60, None)],
)
def test_clocks(shift, pattern):
    """Zones, GPS time and dates are named; a minute is an offset like any other."""
    told = [(-60, "boot"), (302, "ignition_on"), (820, "ignition_off"), *((t, "") for t in range(900, 1500, 60))]
    answer = proven([row(t + shift, event, shift=shift) for t, event in told])
    assert named(answer) == ([pattern] if pattern else [])
    assert answer.proof.clock_offset.value_s == pytest.approx(59.6 if shift == 60 else -0.4, abs=0.01)


def test_eighteen_seconds_without_arrivals_are_only_mentioned():
    """The sum of delay and clock may be anything."""
    answer = proven(healthy(20.0, 38.0, late=None))
    assert "gps_time" not in named(answer)
    assert any("gps_time" in note for note in answer.notes)
