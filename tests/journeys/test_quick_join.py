"""The joints by few touches: as on the last truck of the type, seen on all of them at once, one figure typed."""

from __future__ import annotations

import tomllib
from typing import Any

from playwright.sync_api import Locator, Page, expect
from tests.journeys.conftest import Phone
from tests.journeys.counted import Counted
from tests.journeys.test_reach import must_be_reachable
from tests.journeys.test_stages import answer, corrected, judged, touch
from tests.samples.demo_jobs import DEMO

JOB = "LY-2026-05"
WHOLE = (DEMO / "truck-07" / "job.toml").read_text(encoding="utf-8")
# what a truck of the same type was written down with: its wires, then its joints, circuit and ground
WIRES = WHOLE[WHOLE.index("[[wire]]") : WHOLE.index("[[joint]]")]
JOINTS = WHOLE[WHOLE.index("[[joint]]") : WHOLE.index("[mount]")]
STANDING = WHOLE[WHOLE.index("[battery]") : WHOLE.index("[[photo]]")]
MOST_TOUCHES, MOST_CHARACTERS = 4, 3
FIRST_TOUCHES, FIRST_CHARACTERS = 22, 49
GROUND = "Drop between the ground and the battery's negative [mV]"


def at_joints(phone: Phone, *, before: str | None = WIRES + JOINTS + STANDING, more: str = WIRES) -> Counted:
    """LY 05 with its wires chosen, at its joints; LY 03 of the same type stands on the phone with `before`."""
    if before is not None:
        phone.yard.desk.give("LY-2026-03", "LY 03", "LN2-00431", more=before)
    phone.yard.desk.give(JOB, "LY 05", "LN2-00432", more=more)
    counted = Counted(phone.context)
    phone.page.reload()
    expect(phone.page.locator(".jobs li")).to_have_count(len(phone.yard.desk.given))
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/join")
    expect(phone.page.locator(".leads > li")).to_have_count(4)
    return counted


def lead(page: Page, name: str) -> Locator:
    """The card of a lead with its questions open."""
    card = page.locator(".lead").filter(has=page.locator(".what b", has_text=name))
    card.locator("summary").first.click()
    return card


def kept(phone: Phone) -> tuple[dict[str, Any], dict[str, Any]]:
    """The job sheet as the server has it, and what the engine in this Python finds of the joints."""
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    texts = phone.yard.desk.entries(JOB)
    client = phone.yard.desk.client
    said = [part for text in texts for part in text.split('"') if len(part) == 64]
    blobs = {each: client.get(f"/api/blobs/{each}") for each in set(said)}
    held = {each: answered.content for each, answered in blobs.items() if answered.status_code == 200}
    found = judged(texts, held)
    assert found["ok"], found
    return tomllib.loads(corrected(texts, held)), {each["id"]: each for each in found["findings"]}


def still_open(found: dict[str, Any]) -> dict[str, str]:
    """What is open of the joints, and why; where the unit sits and how leads run is asked at the next stage."""
    later = ("join_mount_told", "join_route_told")
    mine = {name: each for name, each in found.items() if each["stage"] == "join" and name not in later}
    return {name: each["because"] for name, each in mine.items() if each["verdict"] == "open"}


def test_the_joints_as_on_the_last_truck(phone: Phone) -> None:
    """Four touches and two figures; open stays what nobody measured: the drop at the tap, the wires in a crank."""
    counted = at_joints(phone)
    page = phone.page
    counted.begin()
    page.get_by_role("button", name="Joined as on LY 03").click()
    page.get_by_role("button", name="Each joint tugged at, strain-relieved, dry").click()
    page.get_by_role("button", name="The unused lead: capped, tied back").click()
    page.get_by_label(GROUND).click()
    page.keyboard.type("18")
    expect(page.locator(".lead .verdict").filter(has_text="holds")).to_have_count(2)
    assert len(counted.touches) <= MOST_TOUCHES, counted.touches
    assert len(counted.characters) <= MOST_CHARACTERS
    must_be_reachable(phone)
    sheet, found = kept(phone)
    joints = {joint["lead"]: joint for joint in sheet["joint"]}
    for before in tomllib.loads(JOINTS)["joint"]:
        asked = {key: value for key, value in before.items() if key != "end"}
        assert {key: joints[before["lead"]].get(key) for key in asked} == asked
    assert sheet["ground"] == {"drop_mV": 18, "load_A": 1.5}
    assert "tap_drop_mV" not in sheet["join"]  # it was measured on LY 03, not here
    assert "battery" not in sheet
    wires = {"join_supply_wire", "join_ignition_wire"}  # nothing was measured on them in this test
    assert set(still_open(found)) == {*wires, "join_wire_told", "join_fuse_told"}, still_open(found)
    assert still_open(found)["join_fuse_told"].startswith("not told: how much the tapped wire drops under a load")


def test_a_drop_is_read_under_the_lamp_of_whoever_holds_the_phone(phone: Phone) -> None:
    """The first truck of all: two characters; the load of the lamp is written with them and can be changed."""
    phone.page.goto(f"{phone.yard.url}#/settings")
    phone.choose("1.5 A", exact=True)
    phone.page.goto(f"{phone.yard.url}#/")  # on the page that is open: a new one could begin before the choice is kept
    counted = at_joints(phone, before=None)
    counted.begin()
    phone.page.get_by_label(GROUND).click()
    phone.page.keyboard.type("18")
    drop = phone.page.locator(".drop").filter(has=phone.page.get_by_label(GROUND))
    expect(drop.locator(".answered")).to_have_text("18 mV under 1.5 A")
    assert (len(counted.touches), len(counted.characters)) == (1, 2)
    sheet, _ = kept(phone)
    assert sheet["ground"] == {"drop_mV": 18, "load_A": 1.5}
    answer(drop, "while this load flows [A]", "2")
    expect(drop.locator(".answered")).to_have_text("18 mV under 2 A")
    must_be_reachable(phone)
    sheet, _ = kept(phone)
    assert sheet["ground"] == {"drop_mV": 18, "load_A": 2}


def test_a_touch_on_the_joints_is_taken_back(phone: Phone) -> None:
    """What was seen goes again, what was chosen stays; a hand's own answer is not overwritten by a touch."""
    at_joints(phone)
    page = phone.page
    power = lead(page, "power")
    answer(power, "Can it get damp?", "yes")
    page.get_by_role("button", name="Joined as on LY 03").click()
    page.get_by_role("button", name="Each joint tugged at, strain-relieved, dry").click()
    page.locator("summary", has_text="Take back").click()
    page.get_by_role("button", name="Take back: Each joint tugged at").click()
    expect(page.get_by_role("button", name="Each joint tugged at, strain-relieved, dry")).to_be_visible()
    sheet, _ = kept(phone)
    joints = {joint["lead"]: joint for joint in sheet["joint"]}
    assert (joints["power"]["method"], joints["power"]["damp"]) == ("soldered_sleeve", True)
    assert not any("tugged" in joint for joint in joints.values())


def test_another_tap_takes_no_place_and_no_fuse_of_the_other_truck(phone: Phone) -> None:
    """Tapped at another connector: method and length are taken over, the place, the circuit's fuse and load are not."""
    at_joints(phone, more=WIRES.replace("X12", "X40"))
    page = phone.page
    page.get_by_role("button", name="Joined as on LY 03").click()
    expect(page.get_by_role("button", name="Each joint tugged at")).to_be_visible()
    sheet, _ = kept(phone)
    power = next(joint for joint in sheet["joint"] if joint["lead"] == "power")
    assert (power["wire"], power["method"], power["length_m"]) == ("X40/4 RD", "soldered_sleeve", 1.8)
    assert "place" not in power
    assert power["undo"].startswith("cut the sleeve out, close X40/4 RD")
    assert "vehicle_fuse_A" not in sheet.get("join", {})


BY_HAND = [("Length from there to the unit [m]", "1.8"), ("Stripped [mm]", "7"), ("A sample crimp stood [N]", "165")]
CIRCUIT = [
    (GROUND, "18"),
    ("while this load flows [A]", "1.5"),
    ("Fuse of the vehicle's circuit [A]", "15"),
    ("What that circuit carries already [A]", "4"),
]


def test_the_first_truck_of_a_type_costs_more(phone: Phone) -> None:
    """Nothing of its type to go by: wires and fuses by the sheets at once, the rest by hand, and counted."""
    counted = at_joints(phone, before=None)
    page = phone.page
    counted.begin()
    page.get_by_role("button", name="Wires and fuses are so").click()
    for name, asked in (("power", True), ("ignition", True), ("ground", False)):
        card = lead(page, name)
        if asked:
            touch(card.get_by_label("crimped butt connector"))
        else:
            card.get_by_label("Where it is", exact=True).click()
            page.keyboard.type("M8 stud of the frame")
        for question, figure in BY_HAND:
            card.get_by_label(question).click()
            page.keyboard.type(figure)
    page.get_by_role("button", name="Each joint tugged at, strain-relieved, dry").click()
    page.get_by_role("button", name="The unused lead: capped, tied back").click()
    for question, figure in CIRCUIT:
        page.get_by_label(question).first.click()
        page.keyboard.type(figure)
    page.get_by_role("heading", level=1).click()
    expect(page.locator(".lead .verdict").filter(has_text="holds")).to_have_count(2)
    assert len(counted.touches) <= FIRST_TOUCHES, counted.touches
    assert len(counted.characters) <= FIRST_CHARACTERS
    _, found = kept(phone)
    wires = {"join_supply_wire", "join_ignition_wire"}
    assert set(still_open(found)) == {*wires, "join_wire_told", "join_fuse_told"}, still_open(found)


DAYS = [
    ("Age in years", "2"),
    ("Hours since it was charged or the engine ran [h]", "24"),
    ("Its temperature [°C]", "-4"),
    ("Milliamperes that it draws without the unit, as shown", "25"),
    ("Read so long after locking [min]", "60"),
]


def test_how_long_it_can_stand_is_asked_of_whoever_wants_to_know(phone: Phone) -> None:
    """The battery as on the truck before, its volts from the key-off reading; the engine then says the days."""
    at_joints(phone)
    page = phone.page
    page.goto(f"{phone.yard.url}#/job/{JOB}/probe")
    phone.choose_meter()
    phone.measure("X12/4 RD", "off", "12.60")
    page.goto(f"{phone.yard.url}#/job/{JOB}/join")
    page.locator("summary", has_text="How long it can stand").click()
    page.get_by_role("button", name="Battery and days as on LY 03").click()
    page.get_by_role("button", name="Volts as read already on X12/4 RD, key off").click()
    page.locator(".apart summary", has_text="Change").click()
    for question, given in DAYS:
        answer(page, question, given)
    must_be_reachable(phone)
    sheet, found = kept(phone)
    assert (sheet["battery"]["rest_V"], sheet["battery"]["temperature_C"]) == ("12.60", -4)
    assert (sheet["parked"]["coldest_C"], sheet["parked"]["starts_to_C"]) == (-5, -20)
    days = found["parked_days"]
    assert days["value"] > days["low"] >= 0


def test_an_input_is_asked_for_its_levels_once_it_has_a_wire(phone: Phone) -> None:
    """First what became of its end; with a wire its levels, what drives it, and the report that proves it."""
    at_joints(phone, before=None)
    page = phone.page
    door = lead(page, "door")
    expect(door.get_by_text("Capped?")).to_be_visible()
    expect(door.get_by_label("Volts of the wire while it is on [V]")).to_have_count(0)
    door.locator("summary", has_text="More").click()
    answer(door, "Vehicle's wire", "X9/3 WH")
    expect(door.get_by_text("Capped?")).to_have_count(0)
    answer(door, "Volts of the wire while it is on [V]", "12.2")
    answer(door, "Is the wire open while it is off?", "yes")
    answer(door, "A report showed it on at (date and time)", "2026-03-31T08:12:00Z")
    must_be_reachable(phone)
    sheet, found = kept(phone)
    assert sheet["input"] == [{"lead": "door", "on_V": 12.2, "floats_off": True, "reported_on": "2026-03-31T08:12:00Z"}]
    assert (found["join_door_high"]["value"], found["join_door_high"]["verdict"]) == (12.2, "holds")
    assert found["join_door_proof"]["verdict"] == "open"  # seen one way only
