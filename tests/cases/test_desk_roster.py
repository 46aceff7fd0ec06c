"""A roster is taken whole or not at all, also by two who do it at once."""

from __future__ import annotations

import threading

import pytest
from tests.samples.stores import ORGANISATION

from backprobe.cases.desk_roster import RosterFile, import_roster_file, kept_roster, preview_roster_file
from backprobe.cases.may import Caller, Role
from backprobe.cases.yard import Yard
from backprobe.errors import InputError, RefusedError, UnreadableError
from backprobe.evidence.roster import RosterKind

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
GOOD = RosterFile(b"plate,fleet_number,unit_serial\nLY 07,7,LN2-1\nLY 08,8,LN2-2\n", "trucks.csv")
CHANGED = RosterFile(b"plate,yard\nly07,bay 3\nLY 09,bay 4\n", "more.csv")
BAD = RosterFile(b"plate,vin\nLY 10,1M8GDM9AXKP042788\nLY 11,1.2E+16\n", "bad.csv")


def plates(yard: Yard) -> list[str]:
    """The vehicles that were taken in."""
    return [str(row["plate"]) for row in kept_roster(yard, LEAD, kind=RosterKind.VEHICLES)]


def test_a_preview_writes_nothing(yard: Yard) -> None:
    """It says what is new; taken, the rows are there; seen again, nothing would change."""
    assert len(preview_roster_file(yard, LEAD, file=GOOD)["new"]) == 2
    assert plates(yard) == []
    import_roster_file(yard, LEAD, file=GOOD)
    assert plates(yard) == ["LY 07", "LY 08"]
    again = preview_roster_file(yard, LEAD, file=GOOD)
    assert (again["new"], again["changed"], again["unchanged"]) == ([], [], 2)


def test_a_later_list_adds_and_changes(yard: Yard) -> None:
    """A row is the same vehicle by its plate; what the list does not say stays."""
    import_roster_file(yard, LEAD, file=GOOD)
    preview = import_roster_file(yard, LEAD, file=CHANGED)
    assert (len(preview["new"]), len(preview["changed"])) == (1, 1)
    rows = kept_roster(yard, LEAD, kind=RosterKind.VEHICLES)
    assert rows[0] == {"plate": "LY 07", "fleet_number": "7", "unit_serial": "LN2-1", "yard": "bay 3"}
    assert plates(yard) == ["LY 07", "LY 08", "LY 09"]


def test_with_one_bad_cell_nothing_is_taken(yard: Yard) -> None:
    """The good row is not there either."""
    assert preview_roster_file(yard, LEAD, file=BAD)["bad_rows"] == 1
    with pytest.raises(InputError, match="nothing was"):
        import_roster_file(yard, LEAD, file=BAD)
    assert plates(yard) == []


def test_two_who_take_at_once_do_not_mix(yard: Yard) -> None:
    """Eight threads with the same new vehicle: it is there once; whoever was late is told so or changes nothing."""
    start = threading.Barrier(8)
    told: list[str] = []

    def take() -> None:
        start.wait()
        try:
            import_roster_file(yard, LEAD, file=GOOD)
            told.append("taken")
        except InputError as refusal:
            told.append(refusal.message)

    threads = [threading.Thread(target=take) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(told) == 8
    assert plates(yard) == ["LY 07", "LY 08"]


@pytest.mark.parametrize("name", ["../../etc/passwd", "", "a/b\\c.csv", "\0", "x" * 300, ".", "Ω" * 200])
def test_a_name_leads_nowhere(sqlite_yard: Yard, name: str) -> None:
    """It is shown, and no more."""
    assert preview_roster_file(sqlite_yard, LEAD, file=RosterFile(GOOD.content, name))["bad"] == []


def test_what_is_no_roster_is_refused(sqlite_yard: Yard, ines: Caller) -> None:
    """Nothing, something torn, and phones."""
    for content in (b"", b"PK\x03\x04torn"):
        with pytest.raises(UnreadableError):
            preview_roster_file(sqlite_yard, LEAD, file=RosterFile(content, "a.xlsx"))
    with pytest.raises(RefusedError):
        preview_roster_file(sqlite_yard, ines, file=GOOD)
