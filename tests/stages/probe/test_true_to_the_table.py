"""Readings that truly follow a role's table are never taken for another wire that could be tapped."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.wire_readings import SETUP, reading, table

from backprobe.evidence.keys import Key
from backprobe.stages.probe.roles import Role
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
