"""The key cycle of a real truck as the script, against the reports that a unit in it would have sent.

The moments are those of a recording of a 12 V diesel truck's data bus (see ../shared/data/README.md: key on from the
beginning, crank at 17.8 s, engine running 0.6 s later, off at 58.4 s). The recording itself is read to make sure that
they are what it shows; the unit's reports are invented.
"""

import re

import pytest
from tests.samples.prove_cases import at, named, proven, row, states

CRANK_S, RUNNING_S, OFF_S = 17.8, 18.4, 58.4
STEPS = [(-120, "off"), (0, "on"), (CRANK_S, "crank"), (RUNNING_S, "running"), (OFF_S, "off")]
ENGINE_SPEED = re.compile(r"\((\d+\.\d+)\)\s+\S+\s+\w{2}F004\w{2}\s+\[8\]\s((?: [0-9A-F]{2}){8})")


def unit(off_s=5.0, **more):
    """What a healthy unit with a debounce of 2 s and `off_s` would have reported."""
    events = [
        row(-300, "boot", **more),
        row(2.0, "ignition_on", 1, **more),
        row(OFF_S + off_s, "ignition_off", 0, **more),
    ]
    return events + [row(t, "heartbeat", int(2 <= t < OFF_S + off_s), **more) for t in range(-285, 400, 30)]


def engine_speed_rpm(path):
    """Seconds from the first message with revolutions a minute (0.125 a bit in bytes 4 and 5, SAE J1939-71)."""
    found = [match for line in path.read_text(encoding="ascii").splitlines() if (match := ENGINE_SPEED.search(line))]
    data = [(float(match[1]), [int(byte, 16) for byte in match[2].split()]) for match in found]
    return [(time_s, (low + 256 * high) / 8) for time_s, (_, _, _, low, high, *_) in data]


def test_the_moments_are_those_of_the_recording(shared_data):
    """The engine stands until the crank, turns at once, idles 0.6 s later within the messages' pace, then stands."""
    speed = engine_speed_rpm(shared_data / "can" / "truck-key-cycle.candump.txt")
    assert max(rpm for time_s, rpm in speed if time_s < CRANK_S - 0.2) == 0
    assert next(time_s for time_s, rpm in speed if rpm > 0) == pytest.approx(CRANK_S, abs=0.3)
    assert next(time_s for time_s, rpm in speed if rpm > 500) == pytest.approx(RUNNING_S, abs=0.4)
    assert next(time_s for time_s, rpm in speed if time_s > 30 and rpm < 400) == pytest.approx(OFF_S, abs=1.5)


@pytest.mark.parametrize("late", [1.0, None])
def test_a_healthy_unit_in_that_truck(late):
    """Every row matched and no pattern; the delays as they were made, by the arrivals or as a sum."""
    answer = proven(unit(late=late), STEPS)
    assert states(answer) == ["matched"] * 5
    assert named(answer) == []
    assert answer.proof.off_delay.value_s == pytest.approx(5.0, abs=0.5)
    assert answer.as_json()["turns"][4]["reported_t"] == at(63.4)


def test_a_short_crank_hides_a_dead_wire():
    """The starter turned for 0.6 s: an off-delay of 5 s proves nothing, and that is said; one of 0.2 s shows it."""
    assert any("proves nothing" in note and "0.6 s" in note for note in proven(unit(), STEPS).notes)
    quick = [row(-300, "boot", late=None), row(0.5, "ignition_on", late=None), row(58.6, "ignition_off", late=None)]
    dead = [row(18.0, "ignition_off", late=None), row(18.9, "ignition_on", late=None)]
    assert named(proven([*quick, *dead, row(120, late=None)], STEPS)) == ["not_live_in_crank"]


def test_a_lead_on_a_charging_signal():
    """On only once the engine runs."""
    rows = [
        row(-300, "boot"),
        *(row(t, ignition=0) for t in range(-285, 15, 30)),
        row(22.4, "ignition_on"),
        row(63.4, "ignition_off"),
    ]
    assert named(proven([*rows, row(200)], STEPS))[:1] == ["sensed_not_wired"]
