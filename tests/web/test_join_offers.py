"""What one touch would say of the joints: another truck's choices at this truck's wires, never its measurements."""

from __future__ import annotations

from typing import Any

import pytest
from tests.samples.demo_jobs import DEMO
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

OFFERS = "../page/forms/join-offers.ts"
BEFORE = (DEMO / "truck-07" / "job.toml").read_text(encoding="utf-8")
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
USUAL = {"type": "5ZLDR7HV-K-R", "from": "LY 03", "job": BEFORE, "walkround": ""}
TAPS = {
    "supply": {"wire": "X12/4 RD", "connector": "X12", "cavity": "4"},
    "ignition": {"wire": "X12/9 VT", "connector": "X12", "cavity": "9"},
}
MEASURED = {"tugged", "strain_relief", "damp", "pull_N", "drop_mV", "load_A", "tap_drop_mV", "capped", "tied_back"}


def asked(phone: Call, name: str, *, sheet: str = "", **more: object) -> Any:
    """What a function of join-offers.ts gives of a job with the demo's unit."""
    leads = phone([call(OFFERS, "leadsIn", UNIT)])[0]["value"]
    joining = {
        "sheet": sheet,
        "leads": leads,
        "taps": TAPS,
        "usual": USUAL,
        "last": None,
        "lamp": None,
        "atBody": [],
        "leadsStand": {},
        **more,
    }
    return phone([call(OFFERS, name, joining)])[0]["value"]


def given(offer: dict[str, Any]) -> dict[tuple[str, str], object]:
    """The answers by lead and key."""
    return {(one.get("which", {}).get("value", ""), one["ask"]["key"]): one["value"] for one in offer["given"]}


def test_choices_are_taken_over_and_no_measurement(phone: Call) -> None:
    """Of power method, fuse, length and place; nothing that was read, pulled or looked at on the other truck."""
    offer = asked(phone, "asBefore")
    answers = given(offer)
    assert (offer["word"], offer["from"]) == ("joined_as", "LY 03")
    wanted = {"wire": "X12/4 RD", "method": "soldered_sleeve", "fuse_A": 3, "length_m": 1.8}
    assert {key: answers["power", key] for key in wanted} == wanted
    assert answers["", "vehicle_fuse_A"] == 15
    assert not MEASURED & {key for _, key in answers}
    assert "door" not in {lead for lead, _ in answers}  # it is not used: what became of its end is seen, not chosen


def test_the_wire_is_this_trucks_own(phone: Call) -> None:
    """Tapped elsewhere: its own wire, in the words on undoing it, too; no place and no circuit of the other truck."""
    taps = {"supply": {"wire": "C3/1 OG", "connector": "C3", "cavity": "1"}}
    answers = given(asked(phone, "asBefore", taps=taps))
    assert answers["power", "wire"] == "C3/1 OG"
    assert str(answers["power", "undo"]).startswith("cut the sleeve out, close C3/1 OG")
    assert not {("power", "place"), ("", "vehicle_fuse_A"), ("", "vehicle_load_A"), ("ignition", "wire")} & set(answers)


def test_the_units_sheet_goes_before_the_other_trucks_fuse(phone: Call) -> None:
    """The other truck had 5 A; the sheet of this unit asks for 3 A."""
    usual = {**USUAL, "job": BEFORE.replace("fuse_A = 3\n", "fuse_A = 5\n")}
    assert given(asked(phone, "asBefore", usual=usual))["power", "fuse_A"] == 3


def test_without_one_of_its_type_habits_are_offered(phone: Call) -> None:
    """The hand's last method and strip, of whatever type; no length, no place. With nothing before: wires and fuses."""
    offer = asked(phone, "asFirst", usual=None, last=USUAL)
    assert {key for lead, key in given(offer) if lead == "power"} == {
        "wire",
        "fuse_A",
        "method",
        "strip_mm",
        "overlap_mm",
    }
    alone = asked(phone, "asFirst", usual=None)
    assert given(alone) == {
        ("power", "wire"): "X12/4 RD",
        ("power", "fuse_A"): 3,
        ("ignition", "wire"): "X12/9 VT",
        ("ignition", "fuse_A"): 1,
        ("ground", "method"): "ring_terminal",
    }
    assert asked(phone, "asFirst") is None


def test_only_joints_that_are_made_are_said_to_be_seen(phone: Call) -> None:
    """The ground alone has a method: tugged, relieved, dry, and of the sample's crimp; of nothing made, nothing."""
    assert asked(phone, "seenOnAll") is None
    offer = asked(phone, "seenOnAll", sheet='[[joint]]\nlead = "ground"\nmethod = "ring_terminal"\n')
    wanted = {"tugged": True, "strain_relief": True, "damp": False, "pull_N": 165}
    assert given(offer) == {("ground", key): value for key, value in wanted.items()}
    assert offer["word"] == "joints_seen"


def test_where_it_got_damp_before_that_is_asked(phone: Call) -> None:
    """Then the button does not say dry."""
    usual = {**USUAL, "job": BEFORE.replace("damp = false", "damp = true")}
    offer = asked(phone, "seenOnAll", sheet='[[joint]]\nlead = "ground"\nmethod = "ring_terminal"\n', usual=usual)
    assert offer["word"] == "joints_tugged"
    assert ("ground", "damp") not in given(offer)


def test_unused_leads_get_lengths_that_cannot_meet(phone: Call) -> None:
    """Two leads over: 60 and 80 mm, 20 mm apart; one alone needs none but takes that of the last truck."""
    door = [{"name": name, "purpose": "input", "colour": "", "fuse_A": None} for name in ("door", "pto")]
    two = given(asked(phone, "leftOver", leads=door, usual=None))
    assert (two["door", "cut_mm"], two["pto", "cut_mm"]) == (60, 80)
    assert two["pto", "capped"] is True
    assert given(asked(phone, "leftOver"))["door", "cut_mm"] == 60
    assert asked(phone, "leftOver", sheet='[[joint]]\nlead = "door"\nwire = "X9/3 WH"\n') is None


@pytest.mark.parametrize(
    ("at_body", "spliced"), [(["X12/4 RD"], False), (["X12/9 VT"], True), ([], True), (None, False)]
)
def test_a_splice_is_asked_why_and_where(phone: Call, at_body: list[str] | None, spliced: bool) -> None:
    """Not at a body-builder connector, and not before the engine has said which wires are there; a fuse tap is none."""
    lead = {"name": "power", "purpose": "supply", "colour": "RD", "fuse_A": 3}
    for method, expected in (("soldered_sleeve", spliced), ("fuse_tap", False)):
        sheet = f'[[joint]]\nlead = "power"\nmethod = "{method}"\n'
        joining = {"sheet": sheet, "leads": [lead], "taps": TAPS, "usual": None, "last": None, "atBody": at_body}
        assert phone([call(OFFERS, "isSpliced", joining, lead)])[0]["value"] is expected


def test_the_load_of_a_drop_is_that_of_the_persons_lamp(phone: Call) -> None:
    """The job's own first, then the lamp in hand; another truck's 1.5 A only of whoever has named no lamp."""
    assert asked(phone, "usualLoad", lamp="2") == 2
    assert asked(phone, "usualLoad", lamp="2", sheet="[ground]\nload_A = 1\n") == 1
    assert asked(phone, "usualLoad") == 1.5
    assert asked(phone, "usualLoad", usual=None) is None
    assert asked(phone, "usualLoad", lamp="none") is None
