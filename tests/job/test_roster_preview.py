"""What a roster would change, held against what is known."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.roster import Roster, RosterKind, RosterRow
from backprobe.formats.roster_csv import read_roster
from backprobe.job.roster_preview import preview_roster

VIN, OTHER_VIN = "1M8GDM9AXKP042788", "1G4AH59H45G118341"


def preview(*lines, known=()):
    """The preview of a heading and rows."""
    return preview_roster(read_roster(lines, file="t.csv"), known)


def known(**values):
    """A row that is kept."""
    return RosterRow(line=0, **values)


def test_new_rows():
    """Nothing is known yet: every row is new, with all its values."""
    found = preview("plate,yard", "LY 07,Linden", "LY 08,")
    assert [change.after.name for change in found.new] == ["LY 07", "LY 08"]
    assert found.new[0].changes == (("plate", None, "LY 07"), ("yard", None, "Linden"))
    assert (found.changed, found.unchanged, found.bad) == ((), (), ())


def test_a_row_that_changes_something():
    """Before and after of what differs; an empty cell takes nothing away, nor does a missing column."""
    there = known(plate="LY 07", yard="Linden", installer="Ada Quill", day="2026-03-31")
    found = preview("plate,yard,day", "LY 07,,2026-04-02", known=[there])
    (change,) = found.changed
    assert change.changes == (("day", "2026-03-31", "2026-04-02"),)
    assert (change.after.yard, change.after.installer) == ("Linden", "Ada Quill")


def test_a_row_that_changes_nothing():
    """However the plate is written."""
    found = preview("plate,yard", "ly-07,Linden", known=[known(plate="LY 07", yard="Linden")])
    assert len(found.unchanged) == 1
    assert found.writes == ()


def test_a_vehicle_keeps_its_identity_by_its_vin():
    """A new plate on the same VIN is a change of that vehicle."""
    found = preview("plate,vin", f"LY 99,{VIN}", known=[known(plate="LY 07", vin=VIN)])
    assert found.changed[0].changes == (("plate", "LY 07", "LY 99"),)


def test_a_plate_of_another_vehicle_is_bad():
    """The VIN says one vehicle, the plate another one that is known."""
    found = preview("plate,vin", f"LY 08,{VIN}", known=[known(plate="LY 07", vin=VIN), known(plate="LY 08")])
    (fault,) = found.bad
    assert (fault.line, fault.column) == (2, "plate")
    assert fault.expected == "a plate of its own; it is that of LY 08"
    assert found.writes == ()


def test_plates_that_change_places():
    """Two vehicles in one list, each with the other's plate of before: a change of both."""
    there = [known(plate="LY 07", vin=VIN), known(plate="LY 08", vin=OTHER_VIN)]
    found = preview("plate,vin", f"LY 08,{VIN}", f"LY 07,{OTHER_VIN}", known=there)
    assert found.bad == ()
    assert [change.after.plate for change in found.changed] == ["LY 08", "LY 07"]


def test_two_rows_for_one_known_vehicle_are_bad():
    """By its VIN in one row, by its plate of before in the next."""
    there = [known(plate="LY 07", vin=VIN)]
    found = preview("plate,vin", f"LY 99,{VIN}", "LY 07,", known=there)
    (fault,) = found.bad
    assert (fault.line, fault.text) == (3, "LY 07")
    assert fault.expected == "another one; this is LY 07, as in row 2"


def test_a_new_vehicle_with_a_known_unit_id_is_bad():
    """What reports call a unit is one unit's alone."""
    found = preview("plate,unit_id", "LY 08,417", known=[known(plate="LY 07", unit_id="417")])
    assert found.bad[0].expected == "a unit id of its own; it is planned for LY 07"


def test_two_units_under_one_id_are_bad():
    """In a list of units."""
    found = preview("serial,unit_id", "0418,a417", known=[known(unit_serial="0417", unit_id="A417")])
    assert found.bad[0].expected == "a unit id of its own; it is that of 0417"


def test_another_vin_under_a_known_plate_is_bad():
    """A VIN is not changed by a list."""
    found = preview("plate,vin", f"LY 07,{OTHER_VIN}", known=[known(plate="LY 07", vin=VIN)])
    assert found.bad[0].expected.startswith(f"the VIN {VIN}")


@pytest.mark.parametrize("first", ["LY 07,", "LY 07,0999"])
def test_a_unit_that_is_planned_for_another_vehicle_is_bad(first):
    """LY 07 keeps its unit where its cell is empty; where it gets another one, LY 08 may have the first."""
    there = [known(plate="LY 07", unit_serial="0417"), known(plate="LY 08")]
    found = preview("plate,serial", first, "LY 08,04-17", known=there)
    if first.endswith(","):
        assert found.bad[0].expected == "a unit of its own; it is planned for LY 07"
        assert [change.after.name for change in found.writes] == []
    else:
        assert found.bad == ()
        assert {change.after.name: change.after.unit_serial for change in found.writes} == {
            "LY 07": "0999",
            "LY 08": "04-17",
        }


def test_a_unit_of_a_vehicle_that_is_not_in_the_list():
    """It stays planned there."""
    found = preview("plate,serial", "LY 08,0417", known=[known(plate="LY 07", unit_serial="0417")])
    assert found.bad[0].expected == "a unit of its own; it is planned for LY 07"


def test_a_wrong_check_digit_is_asked_about():
    """Of a North American VIN, with the digit that would fit; others have none that counts."""
    wrong = VIN[:8] + "7" + VIN[9:]
    found = preview("vin", VIN, wrong, "W" + wrong[1:])
    assert [(doubt.line, doubt.text) for doubt in found.doubts] == [(3, wrong)]
    assert "would be X" in found.doubts[0].expected


def test_units():
    """By their serials; a vehicle that is known does not get in their way."""
    there = [known(unit_serial="0417", unit_type="LN2"), known(plate="LY 07", unit_serial="0418")]
    found = preview("serial,unit_type", "0417,LN3", "0419,LN2", known=there[:1])
    assert found.changed[0].changes == (("unit_type", "LN2", "LN3"),)
    assert [change.after.name for change in found.new] == ["0419"]


def test_the_answer():
    """Counts, changes, bad cells by row and column."""
    answer = preview("plate,day,colour", "LY 07,2026-03-31,red", "LY 08,soon,red").as_json()
    assert (answer["ok"], answer["kind"], answer["passed_over"], answer["bad_rows"]) == (
        True,
        "vehicles",
        ["colour"],
        1,
    )
    assert answer["new"] == [
        {
            "row": 2,
            "name": "LY 07",
            "changes": [
                {"what": "plate", "before": None, "after": "LY 07"},
                {"what": "day", "before": None, "after": "2026-03-31"},
            ],
        }
    ]
    assert [(each["row"], each["column"], each["text"]) for each in answer["bad"]] == [(3, "day", "soon")]


rows = st.builds(
    lambda plate, yard, serial: RosterRow(line=0, plate=plate, yard=yard, unit_serial=serial),
    st.sampled_from(["A1", "A2", "A3"]),
    st.sampled_from([None, "North", "South"]),
    st.sampled_from([None, "S1", "S2", "S3"]),
)


@given(
    st.lists(rows, max_size=3, unique_by=(lambda r: r.plate, lambda r: r.unit_serial or r.plate)),
    st.lists(rows, max_size=3, unique_by=(lambda r: r.plate, lambda r: r.unit_serial or r.plate)),
)
def test_taken_once_it_changes_nothing_more_and_no_unit_is_in_two(there, listed):
    """After a roster was taken the same one changes nothing, and each unit is planned for one vehicle at most."""
    numbered = tuple(RosterRow.of(at, row.values()) for at, row in enumerate(listed, 2))
    roster = Roster(file="t.csv", kind=RosterKind.VEHICLES, rows=numbered, columns={})
    first = preview_roster(roster, there)
    if first.bad:
        return
    kept = {row.plate: row for row in there} | {change.after.plate: change.after for change in first.writes}
    serials = [row.unit_serial for row in kept.values() if row.unit_serial]
    assert len(serials) == len(set(serials))
    assert preview_roster(roster, kept.values()).writes == ()
