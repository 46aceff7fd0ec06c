"""The battery switch, its side, and a ground that would bypass it."""

from __future__ import annotations

import pytest

from backprobe.evidence.joint import Joint
from backprobe.evidence.walkround import Hazards, SwitchSide
from backprobe.findings import Verdict
from backprobe.stages.walkround.battery_switch import LOOK_UP, MOVE_IT, battery_switch, has_switch
from backprobe.stages.walkround.cautions import NEGATIVE_SWITCH

POSITIVE = Hazards(battery_switch=True, battery_switch_side=SwitchSide.POSITIVE, after_run_min=5.0)
NEGATIVE = Hazards(battery_switch=True, battery_switch_side=SwitchSide.NEGATIVE, after_run_min=5.0)


def ground(place: str | None) -> Joint:
    """A ground lead, joined at that place."""
    return Joint(lead="ground", place=place)


def test_what_was_seen_goes_before_what_the_sheet_says():
    """None where neither says anything."""
    assert has_switch(Hazards(), sheet_says=None) is None
    assert has_switch(Hazards(), sheet_says=True) is True
    assert has_switch(Hazards(battery_switch=True), None) is True


def test_no_switch_no_finding():
    """Also where nobody has said: the screen of hazards asks for that."""
    assert battery_switch(Hazards(), None) == ()
    assert battery_switch(Hazards(battery_switch=False), None) == ()


def test_a_known_switch_holds_with_its_side_and_the_maker_s_time():
    """One finding where it sits in the positive side."""
    (found,) = battery_switch(POSITIVE, sheet_says=True)
    assert found.verdict is Verdict.HOLDS
    assert found.because == (
        "in the positive side; open the battery switch only 5 min after key-off, the maker's after-run time"
    )


def test_sheet_and_vehicle_that_disagree_fail():
    """Both are named."""
    (found,) = battery_switch(POSITIVE, sheet_says=False)
    assert (found.verdict, found.because) == (
        Verdict.FAILS,
        "no battery switch on the sheet, a battery switch on the vehicle",
    )


def test_side_and_time_are_asked_for():
    """Until the maker's time is known the switch is left alone."""
    (found,) = battery_switch(Hazards(battery_switch=True), None)
    assert found.verdict is Verdict.OPEN
    assert "in which side" in found.because
    (timeless,) = battery_switch(Hazards(battery_switch=True, battery_switch_side=SwitchSide.POSITIVE), None)
    assert timeless.next == LOOK_UP


@pytest.mark.parametrize(
    ("place", "bypasses"),
    [
        ("the battery's negative post", True),
        ("battery minus", True),
        ("clamp at battery, negative", False),
        ("Battery terminal, left", True),
        ("frame, a hand below the battery box", False),
        ("frame rail behind the cab", False),
        ("battery tray bolt", False),
        (None, False),
    ],
)
def test_with_the_switch_in_the_negative_side_a_ground_on_the_post_fails(place: str | None, bypasses: bool):
    """It carries on when the switch is open. A place that is not plainly the post is left to the caution."""
    _, found = battery_switch(NEGATIVE, None, grounds=[ground(place)])
    assert found.id == "hazard_negative_switch"
    assert found.verdict is (Verdict.FAILS if bypasses else Verdict.HOLDS)
    assert found.next == (MOVE_IT if bypasses else None)
    assert bypasses or found.because == NEGATIVE_SWITCH


def test_in_the_positive_side_a_ground_on_the_post_is_no_matter():
    """The switch cuts the other pole."""
    assert len(battery_switch(POSITIVE, None, grounds=[ground("battery negative post")])) == 1
