"""Readings that truly follow a role's table are never taken for another wire that could be tapped."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.samples.wire_readings import SETUP, reading, table

from backprobe.evidence.keys import Capture, Key
from backprobe.stages.probe.roles import Level, Role, ways
from backprobe.stages.probe.wires import judge_wires

KEYS = ("off", "accessory", "on", "crank", "running", "after")
# What each role shows: battery level, or zero; a signal shows its own few volts.
LIVE = {
    Role.CONSTANT: "off accessory on crank running after",
    Role.IGNITION: "on crank running",
    Role.IGNITION_NOT_IN_CRANK: "on running",
    Role.ACCESSORY: "accessory on running",
    Role.START: "",
    Role.RETAINED: "off accessory on crank running",
    Role.RUNNING_ONLY: "running",
    Role.NO_SUPPLY: "",
    Role.SIGNAL: "",
}
TAPPABLE = {Role.CONSTANT, Role.IGNITION}


@settings(max_examples=300, deadline=None)
@given(
    role=st.sampled_from(list(LIVE)),
    rest_V=st.floats(12.0, 12.9),
    charging_V=st.floats(13.5, 14.6),
    dip_V=st.floats(0.5, 3.0),
    signal_V=st.floats(0.5, 5.2),
    errors=st.lists(st.floats(-1.0, 1.0), min_size=6, max_size=6),
    keys=st.permutations(KEYS),
    count=st.integers(1, 6),
    scale=st.sampled_from([1, 2]),
)
def test_a_role_gives_itself_or_unknown(role, rest_V, charging_V, dip_V, signal_V, errors, keys, count, scale):
    """Any subset of positions, any order, 12 and 24 V, every figure off by up to the meter's whole error."""
    level = {"running": charging_V, "crank": rest_V - dip_V}
    shown = []
    for key, error in zip(keys[:count], errors, strict=False):
        volts = level.get(key, rest_V) * scale if key in LIVE[role].split() else 0.0
        volts = signal_V if role is Role.SIGNAL else volts
        volts = max(0.0, volts + error * (volts * 0.005 + 0.02))
        shown.append(reading("Red", key, round(volts, 2), "min" if key == "crank" else "display"))
    setup = replace(SETUP, system_V=12 * scale)
    found = judge_wires(table(*shown), setup)
    named = found.wire("Red").role
    assert named is role or named not in TAPPABLE
    assert found.supply is None or role is Role.CONSTANT
    assert found.ignition is None or role is Role.IGNITION


@settings(max_examples=150, deadline=None)
@given(
    rest_V=st.floats(10.6, 15.4), key=st.sampled_from([key for key in KEYS if key != "crank"]), count=st.integers(1, 6)
)
def test_half_the_battery_is_never_tapped_in_a_24_V_vehicle(rest_V, key, count):
    """A wire near 12 V at every position measured, beginning with any: a converter or a centre tap."""
    order = [key, *(each for each in KEYS if each not in (key, "crank"))]
    shown = [reading("Blue", each, round(rest_V, 2)) for each in order[:count]]
    wire = judge_wires(table(*shown, reading("Red", Key.ON, 25.0)), replace(SETUP, system_V=24)).wire("Blue")
    assert wire.tap not in ("supply", "ignition")


# The levels of the table as volts in a 12 V vehicle: battery, zero, a signal, a dimmed feed, a line under the battery.
# A feed dimmed to no more than the 1 V that a dead wire may show cannot be told from a dead one by its volts.
SHOWS = {
    Level.BATTERY: st.floats(-0.15, 0.0),
    Level.ZERO: st.floats(0.0, 0.05),
    Level.SIGNAL: st.floats(0.3, 5.5),
    Level.PULSED: st.floats(1.2, 10.0),
    Level.RESTING: st.floats(-2.5, -0.8),
}
WAYS = [way for way, _ in ways(12) if way.role is not Role.UNKNOWN]
PROVEN_BY = {
    Role.CONSTANT: dict.fromkeys(KEYS, Level.BATTERY),
    Role.IGNITION: {
        "off": Level.ZERO,
        "accessory": Level.ZERO,
        **dict.fromkeys(("on", "crank", "running"), Level.BATTERY),
    },
}


def volts_at(key: str, level: Level, *, shift_V: float, battery_V: float) -> float:
    """The true volts of a wire at a level; `shift_V` is drawn from SHOWS."""
    below = level in (Level.BATTERY, Level.RESTING)
    drop_V = 1.5 if key == "crank" else -1.6 if key == "running" else 0.0
    return battery_V - drop_V + shift_V if below else shift_V


@settings(max_examples=400, deadline=None)
@given(way=st.sampled_from(WAYS), battery_V=st.floats(12.1, 12.8), keys=st.permutations(KEYS), data=st.data())
def test_no_way_of_a_role_is_taken_for_another_that_can_be_tapped(way, battery_V, keys, data):
    """Every row of the table, a level drawn for each position; one that is level by level a good wire is left out.

    The other wire in the table shows where the battery stands, as a second wire always does before a pair is chosen.
    """
    levels = {
        key: data.draw(st.sampled_from([level for level, _ in way.mix(Key(key), Capture.LOGGED)])) for key in KEYS
    }
    assume(way.role in TAPPABLE or not any(proof.items() <= levels.items() for proof in PROVEN_BY.values()))
    beside, shown = [], []
    for key in keys[: data.draw(st.integers(1, len(KEYS)))]:
        volts = volts_at(key, levels[key], shift_V=data.draw(SHOWS[levels[key]]), battery_V=battery_V)
        capture = "logged" if key == "crank" else "display"
        shown.append(reading("Red", key, round(max(0.0, volts), 2), capture))
        beside.append(
            reading("Post", key, round(volts_at(key, Level.BATTERY, shift_V=0.0, battery_V=battery_V), 2), capture)
        )
    found = judge_wires(table(*beside, *shown), SETUP)
    assert found.wire("Red").role is way.role or found.wire("Red").role not in TAPPABLE
    assert way.role is Role.CONSTANT or found.supply in (None, "Post")
    assert way.role is Role.IGNITION or found.ignition is None
