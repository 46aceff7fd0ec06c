"""What one touch answers: it fills what nobody has said, never more, and can be taken back."""

from __future__ import annotations

from typing import Any

from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

OFFER = "../page/forms/offer.ts"
TRAILER = {"kind": "flag", "table": "hazards", "key": "trailer", "word": "trailer"}
SWITCH = {"kind": "flag", "table": "hazards", "key": "battery_switch", "word": "battery_switch"}
SIDE = {
    "kind": "choice",
    "table": "hazards",
    "key": "battery_switch_side",
    "word": "battery_switch_side",
    "values": ["positive", "negative"],
    "when": {"key": "battery_switch", "is": True},
}
LAMPS = {"kind": "list", "table": "before", "key": "lamps", "word": "lamps"}
FUSE = {"kind": "figure", "table": "joint", "key": "fuse_A", "word": "fuse", "unit": "A"}
POWER = {"key": "lead", "value": "power"}
NONE_OF_THESE = {
    "word": "none_of_these",
    "from": None,
    "given": [{"ask": TRAILER, "value": False}, {"ask": SWITCH, "value": False}],
}


def asked(phone: Call, name: str, *args: object) -> Any:
    """What a function of offer.ts gives."""
    return phone([call(OFFER, name, *args)])[0]["value"]


def test_an_offer_shrinks_to_what_nobody_said(phone: Call) -> None:
    """A trailer that was answered by hand is no longer offered; with all answered nothing is."""
    left = asked(phone, "stillOpen", NONE_OF_THESE, "[hazards]\ntrailer = true\n")
    assert [given["ask"]["key"] for given in left["given"]] == ["battery_switch"]
    assert asked(phone, "stillOpen", NONE_OF_THESE, "[hazards]\ntrailer = true\nbattery_switch = false\n") is None


def test_its_changes_leave_standing_what_was_said_meanwhile(phone: Call) -> None:
    """Each change is for what is unsaid when it is written, so that a hand that was faster wins."""
    changes = asked(phone, "changesOf", NONE_OF_THESE)
    assert [(change["key"], change["value"], change["only"]) for change in changes] == [
        ("trailer", False, "unsaid"),
        ("battery_switch", False, "unsaid"),
    ]


def test_of_several_tables_the_one_that_is_meant_is_changed(phone: Call) -> None:
    """The fuse of one lead goes into the joint of that lead."""
    offer = {"word": "as_usual", "from": "LY 12", "given": [{"ask": FUSE, "value": 3, "which": POWER}]}
    assert asked(phone, "changesOf", offer)[0]["table"] == {"name": "joint", "where": POWER}
    assert asked(phone, "stillOpen", offer, '[[joint]]\nlead = "ground"\nfuse_A = 3\n') is not None
    assert asked(phone, "stillOpen", offer, '[[joint]]\nlead = "power"\nfuse_A = 5\n') is None


def test_a_touch_is_taken_back_but_for_what_was_changed_since(phone: Call) -> None:
    """Of two answers one was put right by hand: that one stays."""
    back = asked(phone, "takenBack", NONE_OF_THESE, "[hazards]\ntrailer = false\nbattery_switch = true\n")
    assert [(change["key"], change["value"]) for change in back] == [("trailer", None)]


def test_a_question_that_is_not_due_needs_no_answer(phone: Call) -> None:
    """The side of a battery switch is asked only where there is one."""
    asks = [SWITCH, SIDE, LAMPS]
    without = '[hazards]\nbattery_switch = false\n[before]\nlamps = "none"\n'
    assert asked(phone, "isAnswered", asks, without)
    assert not asked(phone, "isAnswered", asks, without.replace("false", "true"))
    assert [ask["key"] for ask in asked(phone, "dueOf", asks, "")] == ["battery_switch", "lamps"]
