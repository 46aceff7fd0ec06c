"""The places of a mount sheet on the phone: what is written there is what Python reads."""

from __future__ import annotations

from tests.samples.demo_jobs import DEMO
from tests.web.test_core import Call, call, phone

from backprobe.evidence.mount_sheet import MountSheet
from backprobe.formats.mount_toml import read_mount

__all__ = ["phone"]

TRUCK = (DEMO / "truck-07" / "mount.toml").read_text(encoding="utf-8")
SHELF = {"name": "Overhead shelf", "sits": "shelf"}
DASH = {"name": "Top of the dash", "sits": "dash"}


def places(phone: Call, function: str, *args: object) -> object:
    """What a function of the module says."""
    return phone([call("places.ts", function, *args)])[0]["value"]


def read(sheet: object) -> MountSheet:
    """The sheet as Python reads it."""
    return read_mount(str(sheet), "mount.toml")


def test_the_first_place_is_taken_and_a_second_is_not(phone: Call) -> None:
    """One described place is the unit's until another is taken; both are read by Python."""
    one = places(phone, "withPlace", "", SHELF)
    two = places(phone, "withPlace", one, DASH)
    assert [place.name for place in read(two).places] == ["Overhead shelf", "Top of the dash"]
    assert read(two).chosen == "Overhead shelf"
    assert read(places(phone, "withTaken", two, "Top of the dash")).chosen == "Top of the dash"
    assert places(phone, "placesIn", two) == [SHELF, DASH]
    assert places(phone, "takenIn", two) == SHELF


def test_names_stay_apart(phone: Call) -> None:
    """Two places on the same shelf are told by a number; a new name is the taken place's, too."""
    one = places(phone, "withPlace", "", SHELF)
    assert places(phone, "freeName", one, "overhead SHELF") == "overhead SHELF 2"
    assert places(phone, "freeName", one, "Dash") == "Dash"
    renamed = read(places(phone, "renamedPlace", one, "Overhead shelf", "Left shelf"))
    assert (renamed.places[0].name, renamed.chosen) == ("Left shelf", "Left shelf")


def test_a_place_is_taken_out_with_its_parts(phone: Call) -> None:
    """The demo's shelf, which was taken, goes with its two parts; the dash keeps its three; the last place stays."""
    left = read(places(phone, "withoutPlace", TRUCK, "on the overhead shelf"))
    before = read(TRUCK)
    assert left.places == before.places[1:]
    assert (before.chosen, left.chosen) == ("on the overhead shelf", None)
    alone = places(phone, "withPlace", "", SHELF)
    assert places(phone, "withoutPlace", alone, "Overhead shelf") == alone


def test_a_place_may_be_added_to_a_measured_sheet(phone: Call) -> None:
    """What was measured stays as it was written; it has no choices."""
    added = str(places(phone, "withPlace", TRUCK, DASH))
    assert added.startswith(TRUCK.rstrip("\n"))
    assert read(added).places[:3] == read(TRUCK).places
    assert read(added).chosen == "on the overhead shelf"
    assert places(phone, "placesIn", TRUCK)[0] == {"name": "on the overhead shelf", "sits": None}  # type: ignore[index]
