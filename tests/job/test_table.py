"""The readings table back from what stands."""

from __future__ import annotations

import pytest
from tests.samples.journals import Phone, reading

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.job.entry import Entry
from backprobe.job.fold import fold
from backprobe.job.table import place_in, unreadable


def table(*entries: Entry) -> ReadingsTable:
    return fold(entries).table


def test_a_reading_comes_back_with_its_last_digit():
    """'12,30' is 12.3 V with a count of 0.01 V; '350 mV' is 0.35 V with a count of 0.001 V."""
    one = Phone()
    one.reads("Red", "on", "12,30")
    one.say("reading", reading("Red", "after", "350 mV") | {"after_min": "30", "load_A": "1.5", "line": 7})
    assert table(*one.entries).readings == (
        Reading(wire="Red", key=Key.ON, volts=12.3, typed="12,30", count_V=0.01),
        Reading(
            wire="Red",
            key=Key.AFTER,
            volts=0.35,
            typed="350 mV",
            count_V=0.001,
            capture=Capture.DISPLAY,
            after_min=30.0,
            load_A=1.5,
            line=7,
        ),
    )


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"key": "halfway"}, "key: 'halfway'"),
        ({"capture": "guess"}, "capture: 'guess'"),
        ({"volts": "twelve"}, "figures such as 12.30"),
        ({"volts": "12 A"}, "figures such as 12.30"),
        ({"load_A": "some"}, "figures such as 12.30"),
    ],
)
def test_a_reading_that_cannot_be_understood(fields, said):
    """It is named as not understood and believed by nobody."""
    body = reading("Red", "on", "12.30") | fields
    assert said in (unreadable("reading", body) or "")
    entry = Phone().say("reading", body)
    assert fold([entry]).table == ReadingsTable()
    assert [one.id for one in fold([entry]).unknown] == [entry.id]


def test_wires_keep_the_order_in_which_they_were_declared():
    """Declared first, then those that are only named by a reading."""
    one = Phone()
    one.reads("Blue", "on", "12.30")
    one.say("wire_declared", {"wire": "Red", "order": 1})
    one.say("wire_declared", {"wire": "Grey", "order": 0})
    assert table(*one.entries).wires == ("Grey", "Red", "Blue")


def test_circuits_of_two_phones_are_put_together():
    """Each saw something of the wire; both count, neither twice."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    one.say("circuit", {"wire": "Red", "circuit": "F14", "marks": ["twisted"]})
    other.say("circuit", {"wire": "Red", "circuit": "airbag", "marks": ["twisted", "yellow"]})
    facts = WireFacts(circuits=("F14", "airbag"), marks=("twisted", "yellow"))
    assert table(*one.entries, *other.entries).facts == {"Red": facts}


def test_a_disputed_circuit_still_counts():
    """One of two disputed circuits may be the one that must not be tapped."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    first = one.say("circuit", {"wire": "Red", "circuit": "F14"})
    for phone, name in ((one, "airbag"), (other, "radio")):
        body = {"wire": "Red", "circuit": name}
        phone.say("correction", {"replaces": first.id, "kind": "circuit", "body": body})
    assert table(*one.entries, *other.entries).facts == {"Red": WireFacts(circuits=("airbag", "radio"))}


def test_a_disputed_reading_is_to_be_measured_again():
    """Neither figure is believed."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    first = one.reads("Red", "on", "12.30")
    found = table(first, one.corrects("12.60", first), other.corrects("0.02", first))
    assert found == ReadingsTable(wires=("Red",), facts={"Red": WireFacts()}, unread=(("Red", Key.ON),))


def test_an_absent_position_that_was_read_is_there():
    """One phone says the vehicle has no accessory position, the other read a wire there."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    absent = one.say("absent_key", {"key": "accessory"})
    assert table(absent).absent_keys == {Key.ACCESSORY}
    assert table(absent, other.reads("Red", "accessory", "12.30")).absent_keys == frozenset()


def test_a_disputed_absent_position_is_asked_for():
    """Withdrawn by one and kept by another: it may exist, so it is asked for."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    absent = one.say("absent_key", {"key": "accessory"})
    again = one.say("correction", {"replaces": absent.id, "kind": "absent_key", "body": {"key": "crank"}})
    assert table(absent, again).absent_keys == {Key.CRANK}
    assert table(absent, again, other.withdraws(absent)).absent_keys == frozenset()


def test_an_unread_place_is_settled_by_a_reading_from_elsewhere():
    """A phone's reading at the same wire and key settles it; another row of the same file does not."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    unread = one.say("unread", {"file": "readings.csv", "wire": "Red", "key": "on", "order": 0})
    same_file = one.say("reading", reading("Red", "on", "12.30") | {"file": "readings.csv", "line": 2})
    assert table(unread, same_file).unread == (("Red", Key.ON),)
    assert table(unread, other.reads("Red", "off", "12.30")).unread == (("Red", Key.ON),)
    assert table(unread, same_file, other.reads("Red", "on", "12.30")).unread == ()


def test_rows_stand_where_they_were_last_said_to_stand():
    """A note that rows moved changes their lines and their order, and nothing else."""
    one = Phone()
    for line, volts in ((2, "12.30"), (3, "12.40")):
        one.say("reading", reading("Red", "on", volts) | {"file": "readings.csv", "line": line})
    one.say("rows_moved", {"file": "readings.csv", "moved": [[one.entries[0].id, 9]]})
    assert [(found.typed, found.line) for found in table(*one.entries).readings] == [("12.40", 3), ("12.30", 9)]


def test_the_place_of_a_row():
    """A line, an order in a list, or none."""
    assert [place_in(body) for body in ({"line": 4}, {"order": 2}, {"line": None}, {})] == [4, 2, None, None]
