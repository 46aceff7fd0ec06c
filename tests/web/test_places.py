"""The places of a mount sheet on the phone: what is written there is what Python reads."""

from __future__ import annotations

from tests.samples.demo_jobs import DEMO
from tests.web.test_core import Call, call, phone

from backprobe.evidence.mount_sheet import MountSheet
from backprobe.formats.mount_toml import read_mount
from backprobe.limits.cab import NEAR_MM

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


def span_of(phone: Call, choice: str, units: str) -> str:
    """The distance that a choice stands for."""
    return str(phone([call("../page/forms/places.ts", "spanOf", choice, units)])[0]["value"])


def test_a_hand_a_forearm_an_arm_are_in_the_persons_units(phone: Call) -> None:
    """80 / 25.4 = 3.15 in and 220 / 25.4 = 8.66 in, so 3 to 9; 500 / 25.4 = 19.7, 900 / 25.4 = 35.4."""
    assert [span_of(phone, one, "us") for one in ("hand", "forearm", "arm")] == [
        "3–9 in",
        "9–20 in",
        "20–35 in",
    ]
    assert span_of(phone, "metal", "us") == ""


def test_the_choices_stand_for_what_the_engine_takes(phone: Call) -> None:
    """The least and the most of each in cm, as the engine has them in mm."""
    for name, span in NEAR_MM.items():
        assert span_of(phone, name, "metric") == f"{span.least / 10:g}–{span.most / 10:g} cm"
