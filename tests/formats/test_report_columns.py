"""The columns of a table of reports."""

import pytest

from backprobe.errors import OptionError, Place, UnreadableError
from backprobe.evidence.report import Event, ReportNames
from backprobe.formats.report_columns import names_from_option, names_from_toml, report_columns_of

PLACE = Place("reports.csv", 1)


def columns(header, names=None):
    """The columns of a header."""
    return report_columns_of(header, names or ReportNames(), place=PLACE)


def test_columns_are_found_by_name():
    """In any order, capitals and unknown ones do not matter; an absent one stands behind the row's end."""
    found = columns("Event;T;speed;UNIT_ID")
    assert (found.delimiter, found.width) == (";", 4)
    assert (found.place("t"), found.place("unit_id"), found.place("lat")) == (1, 3, -1)


def test_a_map_gives_other_names():
    """As typed, or as a file."""
    typed = names_from_option("unit_id=Device ID, t=Sent at,supply_V=Volts")
    assert columns("Device ID,Sent at,Volts,event", typed).place("supply_V") == 2
    filed = names_from_toml('[columns]\nt = "Sent at"\n[events]\nboot = ["Power Up", "start-up"]', "names.toml")
    assert columns("Sent at,event", filed).place("t") == 0
    assert filed.events == {"power_up": Event.BOOT, "start_up": Event.BOOT}


@pytest.mark.parametrize("text", ["", "t", "t=", "when=Sent at", "t=a,t=b", "t=a,,"])
def test_a_map_that_says_nothing_is_refused(text):
    """With the names that there are."""
    with pytest.raises(OptionError) as caught:
        names_from_option(text)
    assert "received_at" in caught.value.message


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[columns]\nwhen = 'x'", "there are: unit_id"),
        ("[events]\nbooted = 'x'", "did you mean boot"),
        ("[columns", "line 1"),
    ],
)
def test_a_map_file_that_makes_no_sense_is_refused(text, words):
    """With the line and the nearest name."""
    with pytest.raises(UnreadableError) as caught:
        names_from_toml(text, "names.toml")
    assert words in str(caught.value)


@pytest.mark.parametrize(
    ("header", "names", "words"),
    [
        ("unit_id,event", None, "a header line with t"),
        ("t,t", None, "t stands there 2 times"),
        ("t,event", ReportNames({"unit_id": "Device"}), "a column 'Device' for unit_id"),
    ],
)
def test_a_header_that_cannot_be_used_is_refused(header, names, words):
    """In plain words."""
    with pytest.raises(UnreadableError) as caught:
        columns(header, names)
    assert words in caught.value.expected


def test_the_servers_stamps_alone_will_do():
    """A table with received_at but no t is taken; what that means is said elsewhere."""
    assert columns("unit_id,received_at").place("t") == -1
