"""What one touch may answer on the walkround, and from where it is taken."""

from __future__ import annotations

from typing import Any

from tests.samples.demo_jobs import DEMO
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

OFFERS = "../page/forms/walkround-offers.ts"
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
WALKED = (DEMO / "truck-07" / "walkround.toml").read_text(encoding="utf-8")
SHEET = '[vehicle]\nplate = "LY 12"\nbattery_switch = false\n\n[unit]\nsheet = "unit.toml"\n'
USUAL = {"type": "Drover 7", "from": "LY 07", "job": '[unit]\nsheet = "../unit.toml"\n', "walkround": WALKED}
SEVEN = {
    *("high_voltage", "dual_batteries", "battery_switch", "system_48V"),
    *("restraint_near_work", "dangerous_goods", "trailer"),
}


def around(**other: object) -> dict[str, Any]:
    """What a section knows; nothing of other vehicles unless said."""
    known = {"job": None, "sheet": "", "jobSheet": SHEET, "unitSheet": UNIT, "usual": None, "person": "Ines Okafor"}
    return {**known, "earlier": {"yard": None, "unit": None}, **other}


def offered(phone: Call, name: str, known: dict[str, Any]) -> list[dict[str, Any]]:
    """The offers of one section."""
    return list(phone([call(OFFERS, name, known)])[0]["value"])


def given(offer: dict[str, Any]) -> dict[str, Any]:
    """Its answers by key."""
    return {each["ask"]["key"]: each["value"] for each in offer["given"]}


def test_nobody_is_said_to_have_allowed_what_nobody_allowed_today(phone: Call) -> None:
    """No walkround of the same yard today: nothing is offered. With one: its two names, and whose they are."""
    assert offered(phone, "yardAllowed", around()) == []
    yard = {"from": "LY 07", "walkround": WALKED}
    (offer,) = offered(phone, "yardAllowed", around(earlier={"yard": yard, "unit": None}))
    assert (offer["from"], given(offer)) == ("LY 07", {"work_by": "Maud Linden", "crank_by": "Maud Linden"})


def test_what_the_day_s_sheet_does_not_say_is_not_offered_as_read(phone: Call) -> None:
    """It has a plate and no fleet number; neither VIN nor serial is ever given by such a touch."""
    (offer,) = offered(phone, "atVehicle", around())
    assert given(offer) == {"plate": "LY 12", "key_with": "Ines Okafor"}


def test_a_unit_of_a_new_kind_has_its_lights_alone(phone: Call) -> None:
    """By its sheet; its firmware is asked, and whether it has a battery of its own."""
    (offer,) = offered(phone, "atUnit", around())
    lights = ["network: one flash a second", "sky: steady"]
    assert (offer["from"], given(offer)) == (None, {"activated": True, "lights": lights})


def test_a_unit_of_a_known_kind_has_the_firmware_of_the_last(phone: Call) -> None:
    """The last of the type had the same unit: firmware wanted, and the least of its battery; never its volts."""
    (offer,) = offered(phone, "atUnit", around(usual=USUAL))
    said = given(offer)
    assert (offer["from"], said["firmware"], said["firmware_wanted"]) == ("LY 07", "4.2.1", "4.2.1")
    assert (said["backup"], said["backup_least_V"]) == (True, 3.6)
    assert "backup_V" not in said
    other = USUAL | {"job": '[unit]\nsheet = "another.toml"\n'}
    assert "firmware" not in given(offered(phone, "atUnit", around(usual=other))[0])


def test_all_seven_hazards_are_named(phone: Call) -> None:
    """None of them is there, and each is said."""
    (offer,) = offered(phone, "noHazards", around())
    assert (offer["word"], given(offer)) == ("none_of_these", dict.fromkeys(SEVEN, False))


def test_what_is_built_into_the_type_stands_as_in_its_last_vehicle(phone: Call) -> None:
    """Two batteries there, two here, and from which vehicle; a trailer that hung on that one hangs on no other."""
    walked = WALKED.replace("dual_batteries = false", "dual_batteries = true").replace(
        "trailer = false", "trailer = true"
    )
    (offer,) = offered(phone, "noHazards", around(usual=USUAL | {"walkround": walked}))
    assert (offer["word"], offer["from"]) == ("hazards_as_in", "LY 07")
    assert given(offer) == dict.fromkeys(SEVEN, False) | {"dual_batteries": True}


def test_a_battery_switch_of_the_sheet_comes_with_its_side_where_that_is_known(phone: Call) -> None:
    """The day's sheet says there is one; the last of the type had it in the negative side, five minutes after-run."""
    walked = WALKED + 'battery_switch = true\nbattery_switch_side = "negative"\nafter_run_min = 5\n'
    sheet = SHEET.replace("battery_switch = false", "battery_switch = true")
    said = given(offered(phone, "noHazards", around(jobSheet=sheet, usual=USUAL | {"walkround": walked}))[0])
    assert (said["battery_switch"], said["battery_switch_side"], said["after_run_min"]) == (True, "negative", 5)
    alone = offered(phone, "noHazards", around(jobSheet=sheet))[0]
    assert (alone["word"], "battery_switch_side" in given(alone)) == ("hazards_so", False)


def test_where_a_device_was_found_none_is_not_offered(phone: Call) -> None:
    """One that is named in the walkround."""
    (offer,) = offered(phone, "noDevices", around())
    assert given(offer) == {"looked_for": True}
    assert offered(phone, "noDevices", around(sheet='[[devices.found]]\nwhat = "a tracker"\n')) == []
