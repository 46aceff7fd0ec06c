"""What to measure next."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows, table

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import ReadingsTable, WireFacts
from backprobe.stages.probe.wires import judge_wires


def asked(found: ReadingsTable, setup=SETUP):
    """The next reading for a table."""
    return judge_wires(found, setup).next


def test_an_empty_table_asks_for_any_wire_where_it_costs_least():
    """Never a crank or ten minutes of waiting to begin with."""
    upcoming = asked(ReadingsTable())
    assert upcoming.wire is None
    assert upcoming.key in (Key.OFF, Key.ACCESSORY, Key.ON)


def test_declared_wires_come_before_others():
    """What was bared already is measured first."""
    assert asked(ReadingsTable(wires=("Red", "Blue"))).wire in ("Red", "Blue")


@pytest.mark.parametrize("missing", ["accessory", "on", "crank", "running", "after"])
def test_the_last_open_requirement_is_what_is_asked(missing):
    """One reading short of a pair: that reading."""
    upcoming = asked(table(*rows("Violet", IGNITION), *rows("Red", SUPPLY, without=missing)))
    assert (upcoming.wire, upcoming.key) == ("Red", missing)


def test_the_crank_is_asked_by_min_and_never_by_more_than_the_meter_has():
    """A meter with a display only is not asked for a hold."""
    found = table(*rows("Violet", IGNITION), *rows("Red", SUPPLY, without="crank"))
    assert asked(found).capture is Capture.MIN
    blunt = asked(found, replace(SETUP, captures=frozenset({Capture.DISPLAY})))
    assert blunt is None or blunt.capture is Capture.DISPLAY


def test_a_banned_wire_is_left_alone():
    """Nothing more is asked of it, a repeat neither."""
    found = table(*rows("Red", SUPPLY, without="after"), facts={"Red": WireFacts(circuits=("ABS",))})
    upcoming = asked(found)
    assert upcoming is None or upcoming.wire != "Red"


def test_a_place_that_could_not_be_read_is_asked_for_again():
    """126 V was refused: measure that place once more."""
    found = replace(table(reading("Red", "on", 12.4)), unread=(("Red", Key.OFF),))
    upcoming = asked(found)
    assert (upcoming.wire, upcoming.key) == ("Red", Key.OFF)


def test_positions_the_vehicle_lacks_are_not_asked():
    """No crank and no accessory: neither is asked on any way to the end."""
    setup = replace(SETUP, has_crank=False, has_accessory=False)
    readings = [reading("Red", "off", 12.6)]
    for _ in range(12):
        upcoming = asked(table(*readings), setup)
        if upcoming is None or upcoming.wire is None:
            break
        assert upcoming.key not in (Key.CRANK, Key.ACCESSORY)
        readings.append(reading(upcoming.wire, upcoming.key, 12.5, upcoming.capture))


def test_every_question_says_why():
    """A sentence, not a bare command."""
    assert len(asked(table(reading("Red", "off", 12.6))).why) > 20
