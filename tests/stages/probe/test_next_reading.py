"""What to measure next."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.probe_tables import LOGGING, SHOWN, result_of, wire_of
from tests.samples.probe_tables import rows as probe_rows
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows, table

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import ReadingsTable, WireFacts
from backprobe.stages.probe.next_reading import Search
from backprobe.stages.probe.promise import Candidate
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


def next_of(*shown: str, setup=SETUP):
    """The next reading for wires w0, w1, … that showed this."""
    return result_of(*(probe_rows(f"w{i}", each) for i, each in enumerate(shown)), setup=setup).next


def test_a_recorder_is_asked_for_at_once_where_there_is_one():
    """It settles what a MIN would leave thin."""
    upcoming = next_of("off 12.5 accessory 12.4 on 12.3 running 14.1 after 12.5", SHOWN["ignition"], setup=LOGGING)
    assert (upcoming.key, upcoming.capture) == (Key.CRANK, Capture.LOGGED)


def test_a_start_wire_is_looked_for_with_max():
    """Dead everywhere and dead to a MIN: only MAX shows whether it is live in the crank alone."""
    upcoming = next_of("off 0.01 accessory 0.01 on 0.02 running 0.01 crank/min 8.2", SHOWN["ignition"])
    assert upcoming is not None
    suspect = Search(
        candidates=(), fresh=candidate("off 0.01 accessory 0.01 on 0.02 running 0.02"), open_slots=(), setup=SETUP,
        last_key=None,
    )  # fmt: skip
    assert suspect._capture(suspect.fresh, Key.CRANK) is Capture.MAX


def candidate(shown: str) -> Candidate:
    """A wire under consideration that showed this."""
    wire = wire_of(shown)
    return Candidate(wire.belief, wire.fits)


@pytest.mark.parametrize("slipped", ["1.23", "2.31", "1.31", "123.0"])
def test_a_slip_is_asked_for_again(slipped: str):
    """Comma moved, first digit lost, second digit lost; a figure beyond reason is not even taken."""
    upcoming = next_of(SHOWN["constant"].replace("on 12.31", f"on {slipped}"))
    assert (upcoming.wire, upcoming.key, upcoming.capture) == ("w0", Key.ON, Capture.DISPLAY)


def test_the_same_is_not_asked_a_third_time_but_a_touch_is_tried_with_max():
    """0.02 V and 12.41 V at one position: the display was asked twice, MAX holds the best touch."""
    shown = SHOWN["constant"].replace("on 12.31", "on 0.02 on 12.41")
    upcoming = next_of(shown)
    assert (upcoming.wire, upcoming.key, upcoming.capture) == ("w0", Key.ON, Capture.MAX)
    settled = next_of(shown.replace("on 12.41", "on 12.41 on/max 12.43"), SHOWN["ignition"])
    assert settled is None


def test_a_crank_that_stands_out_is_measured_again():
    """11.9 V beside 10.3 V: '10.9' or a crank that never came."""
    upcoming = next_of(SHOWN["ignition"].replace("11.63", "11.90"), SHOWN["constant"].replace("10.93", "10.30"))
    assert (upcoming.wire, upcoming.key, upcoming.capture) == ("w0", Key.CRANK, Capture.MIN)


def test_wires_in_the_table_come_before_wires_that_may_not_be_there():
    """A wire dead at off may be the ignition: it is asked about before any other, though the supply is still open."""
    assert next_of("off 0.02", "off 12.5 after 0.03").wire is not None


def test_the_search_ends_where_the_meter_has_no_more_to_give():
    """Everything but the crank is met, and twice a display came back for the MIN that was asked."""
    supply = SHOWN["constant"].replace("crank/min 10.93", "crank 11.2 crank 11.3")
    ignition = SHOWN["ignition"].replace("crank/min 11.63", "crank 11.7 crank 11.8")
    assert next_of(supply, ignition) is None


def test_the_search_ends_where_the_battery_is_to_blame():
    """Three wires at 8 V in the crank: a fourth will not hold 9 V."""
    weak = [f"off 12.5 on 12.3 crank/min {volts}" for volts in (8.2, 8.0, 7.9)]
    assert next_of(*weak) is None
    assert next_of(*weak[:2]) is not None


def test_a_min_for_logged_is_remembered_for_all_wires():
    """Two MIN on one wire where a recorder was asked for: no other wire is asked for one."""
    tried = SHOWN["constant"].replace("crank/min 10.93", "crank/min 10.4 crank/min 10.5")
    upcoming = next_of(tried, SHOWN["ignition"].replace(" crank/min 11.63", ""), setup=LOGGING)
    assert (upcoming.key, upcoming.capture) == (Key.CRANK, Capture.MIN)


@pytest.mark.parametrize(
    "captures", [{c} for c in Capture] + [{Capture.MIN, Capture.MAX}, {Capture.MAX, Capture.LOGGED}]
)
def test_no_capture_is_asked_for_that_the_meter_lacks(captures):
    """Not even a display, on the way to the end of any search."""
    setup = replace(SETUP, captures=frozenset(captures))
    readings = [reading("Red", "off", 12.6, next(iter(captures)))]
    for _ in range(30):
        upcoming = asked(table(*readings), setup)
        if upcoming is None or upcoming.wire is None:
            break
        assert upcoming.capture in captures
        volts = {Key.CRANK: 10.9, Key.RUNNING: 14.1}.get(upcoming.key, 12.5)
        readings.append(reading(upcoming.wire, upcoming.key, volts, upcoming.capture))
    assert len(readings) < 20


def meant(setup=SETUP, *, loads=("Red", "Violet"), to_come=()):
    """The setup of a job whose wires are meant: Red for the supply, Violet for the ignition."""
    chosen = (("supply", "Red"), ("ignition", "Violet"))
    return replace(setup, meant=chosen, loads=frozenset(loads), to_come=frozenset(to_come))


def asked_in_turn(setup):
    """Every reading that is asked for, one after the other, of a good pair: wire, key, whether under a lamp."""
    shown = {w: {key: v for key, v, _ in each} for w, each in (("Red", SUPPLY), ("Violet", IGNITION))}
    taken, told = [], []
    while (upcoming := asked(ReadingsTable(readings=tuple(taken), wires=("Red", "Violet")), setup)) is not None:
        volts = shown[upcoming.wire][str(upcoming.key)]
        load_A = 1.5 if upcoming.loaded else None
        taken.append(replace(reading(upcoming.wire, upcoming.key, volts, capture=upcoming.capture), load_A=load_A))
        told.append((upcoming.wire, str(upcoming.key), upcoming.loaded))
        assert len(told) < 20
    return told


def test_wires_that_are_meant_are_read_in_the_order_of_the_key():
    """Nine readings where the unit reports what lies between; both wires at a position before the key is turned."""
    told = asked_in_turn(meant(to_come=(Key.ACCESSORY, Key.ON, Key.AFTER)))
    assert told == [
        ("Red", "off", False),
        ("Red", "off", True),
        ("Violet", "off", False),
        ("Violet", "accessory", False),
        ("Violet", "on", False),
        ("Red", "crank", False),
        ("Violet", "crank", False),
        ("Red", "running", False),
        ("Violet", "running", False),
    ]


def test_without_reports_to_come_each_position_of_the_supply_is_read():
    """Three more: accessory, on, after."""
    told = asked_in_turn(meant())
    assert len(told) == 12
    assert [key for wire, key, _ in told if wire == "Red"] == [
        "off",
        "off",
        "accessory",
        "on",
        "crank",
        "running",
        "after",
    ]


def test_a_wire_that_nobody_named_is_never_loaded():
    """A lamp can set off a restraint circuit."""
    assert not any(loaded for _, _, loaded in asked_in_turn(meant(loads=())))


def test_who_reads_without_the_lamp_is_asked_once_more_and_then_no_more():
    """Two bare readings at off stand in for one bare and one loaded: no lamp is to be had."""
    bare = [reading("Red", "off", 12.62), reading("Red", "off", 12.61)]
    setup = meant()
    first = asked(ReadingsTable(readings=tuple(bare[:1]), wires=("Red", "Violet")), setup)
    second = asked(ReadingsTable(readings=tuple(bare), wires=("Red", "Violet")), setup)
    assert first is not None
    assert second is not None
    assert (first.loaded, second.loaded) == (True, False)


def test_a_meant_wire_that_is_refuted_leaves_the_choice_to_what_tells_most():
    """Red is dead at off: it is no supply, and another wire may be asked for with its `after`."""
    setup = meant(to_come=(Key.ACCESSORY, Key.ON, Key.AFTER))
    dead = [reading("Red", key, 0.01) for key in ("off", "on", "running")]
    violet = rows("Violet", IGNITION)
    good = rows("Blue", SUPPLY, without="after")
    upcoming = asked(table(*dead, *violet, *good), setup)
    assert (upcoming.wire, upcoming.key) == ("Blue", "after")
