"""How a lead stands on the phone: what is still asked of it follows what the engine misses."""

from __future__ import annotations

from tests.web.test_core import Call, call, phone

__all__ = ["phone"]

STATE = "../page/forms/join-state.ts"
POWER = {"name": "power", "purpose": "supply", "colour": "RD", "fuse_A": 3}
TAP_DROP = ["tap_drop_mV"]


def asked(phone: Call, *found: str, sheet: str = "") -> list[str]:
    """The keys that are still asked of the supply's lead, beside such findings."""
    findings = [{"id": each, "verdict": "open"} for each in found]
    lacking = phone([call(STATE, "unanswered", {"needed": [], "more": []}, sheet, POWER, findings)])[0]["value"]
    return [each["key"] for each in lacking]


def test_the_drop_at_the_tap_is_missed_while_the_engine_misses_it(phone: Call) -> None:
    """Asked before anything was found and while the loop is unknown; not where the probe's readings stand for it."""
    assert asked(phone) == TAP_DROP
    assert asked(phone, "join_supply_fuse", "join_fuse_told") == TAP_DROP
    assert asked(phone, "join_supply_fuse") == []
    assert asked(phone, "join_fuse_told", sheet="[join]\ntap_drop_mV = 70\n") == []


def test_a_lead_stands_as_the_engine_says_while_nothing_is_missed(phone: Call) -> None:
    """What fails fails, whatever is still to be said; else open until it is, and before the engine spoke."""
    method = {"kind": "choice", "table": "joint", "key": "method", "word": "method", "values": []}
    cases = [("holds", []), ("holds", [method]), ("fails", [method]), (None, [])]
    said = phone([call(STATE, "standingOf", found, lacking) for found, lacking in cases])
    assert [each["value"] for each in said] == ["holds", "open", "fails", "open"]
