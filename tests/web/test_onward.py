"""Where a stage leads on to: forward to what is to be done, never back, and what is left open behind is named."""

from __future__ import annotations

from typing import Any

from tests.web.test_core import Call, call, phone

__all__ = ["phone"]


def found(*said: tuple[str, str, str]) -> list[dict[str, str]]:
    """Findings by stage, matter and verdict."""
    return [{"stage": stage, "what": what, "verdict": verdict} for stage, what, verdict in said]


def onward(phone: Call, name: str, *args: object) -> Any:
    """What a function of onward.ts gives."""
    return phone([call("onward.ts", name, *args)])[0]["value"]


def test_the_way_goes_on_to_the_next_stage_with_something_to_do(phone: Call) -> None:
    """Wires and joints hold, of the mount nothing was said: from the walkround on to the mount."""
    said = found(("walkround", "Hazards", "open"), ("probe", "Supply", "holds"), ("join", "Ground", "thin"))
    assert onward(phone, "onwardFrom", "walkround", said) == "mount"
    assert onward(phone, "onwardFrom", "mount", said) == "prove"


def test_it_never_leads_back(phone: Call) -> None:
    """All but the walkround holds: from the proof on to the hand-over, and from there nowhere."""
    said = found(("walkround", "Hazards", "fails"), ("hand over", "Sign-off", "holds"))
    assert onward(phone, "onwardFrom", "prove", said) == "hand_over"
    assert onward(phone, "onwardFrom", "hand_over", said) is None


def test_before_the_engine_has_spoken_the_order_of_the_work_leads(phone: Call) -> None:
    """From the walkround to the wires."""
    assert onward(phone, "onwardFrom", "walkround", None) == "probe"


def test_what_is_open_behind_is_named_once(phone: Call) -> None:
    """Two findings on one matter are one thing; what holds is none."""
    said = found(
        ("hand over", "Journal", "open"), ("hand over", "Journal", "open"), ("hand over", "End", "holds")
    )  # fmt: skip
    assert onward(phone, "undoneOn", "hand_over", said) == ["Journal"]
    assert onward(phone, "stageNamed", "hand over") == "hand_over"
    assert onward(phone, "stageNamed", "revisit") is None
