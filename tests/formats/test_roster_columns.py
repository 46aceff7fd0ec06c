"""The heading of a roster."""

from __future__ import annotations

import pytest

from backprobe.errors import OptionError, Place, UnreadableError
from backprobe.evidence.roster import RosterKind
from backprobe.formats.roster_columns import KNOWN, USUAL, find_heading, roster_columns, roster_names

HERE = Place("trucks.csv", 1)


def columns(*cells, **names):
    """The columns of a heading."""
    return roster_columns(cells, names, place=HERE)


def test_our_names_in_any_order():
    """Capitals, spaces and underscores do not matter; what is not known is passed over and named."""
    found = columns("Day", "colour", "VIN", "Fleet Number", "")
    assert found.places == {"vin": 2, "fleet_number": 3, "day": 0}
    assert found.headings["fleet_number"] == "Fleet Number"
    assert found.passed_over == ("colour",)
    assert found.width == 5


def test_headings_are_fit_to_be_shown():
    """Whatever a file calls its columns, nothing of it clears a terminal."""
    found = columns("Fleet\nNo", "\x1b[2Jcolour", "x" * 200)
    assert found.headings == {"fleet_number": "Fleet No"}
    assert found.passed_over[0] == "[2Jcolour"
    assert len(found.passed_over[1]) == 80


@pytest.mark.parametrize(("name", "heading"), [(name, usual) for name, all_ in USUAL.items() for usual in all_])
def test_usual_names(name, heading):
    """What offices write is taken too."""
    other = {"lat": ["lon"], "lon": ["lat"]}.get(name, [])
    key = [] if name in ("vin", "plate", "fleet_number") else ["vin"]
    assert columns(heading.title(), *other, *key).places[name] == 0


def test_ours_goes_before_a_usual_one():
    """Beside a column of our name the other is passed over."""
    found = columns("registration", "plate")
    assert found.places == {"plate": 1}
    assert found.passed_over == ("registration",)


def test_the_map_goes_before_all():
    """A column that it gives to one name is no other's any more."""
    found = columns("Serial", "Plate", "Kennz.", plate="Kennz.", unit_id="serial")
    assert found.places == {"plate": 2, "unit_id": 0}


def test_what_the_list_is_about():
    """Vehicles where a vehicle has a name; else units."""
    assert columns("plate", "unit_serial").kind is RosterKind.VEHICLES
    assert columns("serial", "unit type").kind is RosterKind.UNITS


@pytest.mark.parametrize(
    ("cells", "names", "said"),
    [
        (("colour", "day"), {}, "a heading with one of vin, plate, fleet_number or unit_serial"),
        (("plate", "Plate"), {}, "each column once"),
        (("plate", "lat"), {}, "both degrees"),
        (("plate",), {"vin": "FIN"}, "a column 'FIN' for vin, as the column map says"),
        ((), {}, "a heading"),
    ],
)
def test_headings_that_are_refused(cells, names, said):
    """Nothing to know a row by, a column twice, half a place, a map that does not fit."""
    with pytest.raises(UnreadableError) as refused:
        roster_columns(cells, names, place=HERE)
    assert said in refused.value.message


def test_the_heading_is_looked_for():
    """The first row that can be one; where none can, the one that names most is said to be wrong."""
    rows = [(1, ["Trucks"]), (3, ["Reg", "colour"]), (4, ["plate"])]
    at, found = find_heading(rows, {}, file="t.csv")
    assert (at, found.places) == (1, {"plate": 0})
    with pytest.raises(UnreadableError) as refused:
        find_heading([(1, ["Trucks"]), (2, ["day", "yard"])], {}, file="t.csv")
    assert refused.value.place.line == 2
    with pytest.raises(UnreadableError):
        find_heading([], {}, file="t.csv")


def test_a_map_as_typed():
    """Each of our names once, with theirs behind it."""
    assert roster_names("plate=Kennz., vin = FIN") == {"plate": "Kennz.", "vin": "FIN"}
    for text in ("", "plate", "plate=", "colour=x", "plate=a,plate=b"):
        with pytest.raises(OptionError):
            roster_names(text)


def test_no_usual_name_stands_for_two():
    """Each heading means one thing."""
    headings = [usual for all_ in USUAL.values() for usual in all_] + list(KNOWN)
    assert len({heading.replace(" ", "").replace("_", "") for heading in headings}) == len(headings)
