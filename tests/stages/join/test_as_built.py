"""Joints held against the unit's sheet and the wires that the probe chose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose, Supply, UnitSheet
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.join.as_built import as_built, untold_of

POWER = Lead(name="power", purpose=Purpose.SUPPLY, fuse_A=3.0)
GROUND = Lead(name="ground", purpose=Purpose.GROUND)
IGNITION = Lead(name="ignition", purpose=Purpose.IGNITION, fuse_A=1.0)
DOOR = Lead(name="door", purpose=Purpose.INPUT)
UNIT = UnitSheet(
    name="Lantern 2", maker=None, supply=Supply(least_V=8, most_V=32), leads=(POWER, GROUND, IGNITION, DOOR)
)
CHOSEN = {Purpose.SUPPLY: "Red", Purpose.IGNITION: "Violet"}
ON_RED = Joint(lead="power", wire="Red", method=Method.SOLDERED_SLEEVE, fuse_A=3.0)
ON_VIOLET = Joint(lead="ignition", wire="Violet", fuse_A=1.0)
GROUNDED = Joint(lead="ground", place="bolt of the pedal bracket", method=Method.RING_TERMINAL)
UNUSED = Joint(lead="door", end="capped")
GOOD = (ON_RED, ON_VIOLET, GROUNDED, UNUSED)


def found(*joints: Joint, chosen: dict[Purpose, str | None] | None = None) -> dict[str, Finding]:
    """The findings by id, each once."""
    findings = as_built(joints, UNIT, chosen=CHOSEN if chosen is None else chosen)
    assert len({each.id for each in findings}) == len(findings)
    return {each.id: each for each in findings}


def instead(joint: Joint) -> tuple[Joint, ...]:
    """The good joints with another one for its lead."""
    return tuple(joint if each.lead == joint.lead else each for each in GOOD)


def test_a_job_without_joints_is_not_asked_for_them():
    """A job that is still at the probe has no finding here."""
    assert as_built((), UNIT, chosen=CHOSEN) == ()


def test_a_good_job_holds():
    """Every finding holds and belongs to the stage join; 2 joined, 1 grounded and 1 unused make the sheet's 4."""
    findings = found(*GOOD)
    assert set(findings) == {
        *("join_leads", "join_supply_wire", "join_supply_fuse", "join_ignition_wire", "join_ignition_fuse"),
    }
    assert {each.verdict for each in findings.values()} == {Verdict.HOLDS}
    assert {each.stage for each in findings.values()} == {Stage.JOIN}
    assert findings["join_leads"].because == "of 4 leads 2 are joined, 1 grounded at the frame, 1 not used"
    assert all(each.next is None for each in findings.values())


def test_a_lead_that_the_unit_does_not_have_is_open():
    """It is named, with the leads that there are."""
    strange = found(*GOOD, Joint(lead="lamp", wire="Red"))["join_unknown_lead"]
    assert strange.verdict is Verdict.OPEN
    assert strange.because == "lamp: no lead of Lantern 2, which has: power, ground, ignition, door"


def test_all_leads_that_are_not_told_of_stand_in_one_finding():
    """Each with what is missing of it."""
    told = found(ON_RED, Joint(lead="ground", method=Method.RING_TERMINAL), Joint(lead="door", place="behind the dash"))
    assert told["join_leads"].verdict is Verdict.OPEN
    assert told["join_leads"].because == (
        "not told of ground (where it is grounded), ignition (nothing is said), "
        "door (neither a wire nor what was done with its end)"
    )
    assert "join_ignition_wire" not in told


def test_a_lead_with_two_joints_is_open():
    """Written in other capitals it may stand twice in a job sheet: which of the two holds, nobody can tell."""
    told = found(*GOOD, Joint(lead="power", wire="Red", fuse_A=3.0))["join_leads"]
    assert (told.verdict, told.because) == (Verdict.OPEN, "not told of power (which of the two joints it has)")


def test_a_ground_may_be_joined_to_a_ground_wire():
    """Then the wire is enough; capping the only ground is not."""
    assert untold_of(GROUND, Joint(lead="ground", wire="BN at X4/1")) is None
    assert untold_of(GROUND, Joint(lead="ground", end="capped")) == "where it is grounded"


def test_another_wire_than_the_chosen_one_fails_and_both_are_named():
    """The supply on Green, where Red was proven."""
    wrong = found(*instead(Joint(lead="power", wire="Green", fuse_A=3.0)))["join_supply_wire"]
    assert wrong.verdict is Verdict.FAILS
    assert wrong.because == "joined to Green; the wire that was proven for the supply is Red"
    assert wrong.next == "move the joint from Green to Red, or prove Green first"


def test_crossed_leads_fail_twice():
    """The supply on the ignition's wire and the other way round."""
    crossed = (Joint(lead="power", wire="Violet", fuse_A=3.0), Joint(lead="ignition", wire="Red", fuse_A=1.0))
    findings = found(*crossed, GROUNDED, UNUSED)
    assert [findings[f"join_{name}_wire"].verdict for name in ("supply", "ignition")] == [Verdict.FAILS] * 2


def test_a_joint_before_the_proof_is_open():
    """While no wire is chosen the joint may be right; nobody has shown it."""
    early = found(*GOOD, chosen={Purpose.SUPPLY: None, Purpose.IGNITION: "Violet"})["join_supply_wire"]
    assert early.verdict is Verdict.OPEN
    assert early.because == "joined to Red, but no wire stands proven for the supply"


def test_an_ignition_lead_that_is_not_used_is_open():
    """A capped ignition is accounted for, and yet to be joined to the wire that was proven for it; it needs no fuse."""
    capped = found(*instead(Joint(lead="ignition", end="capped")))
    assert capped["join_leads"].verdict is Verdict.HOLDS
    assert capped["join_ignition_wire"].verdict is Verdict.OPEN
    assert (capped["join_ignition_wire"].next or "").startswith("join it to Violet")
    assert "join_ignition_fuse" not in capped


def test_a_tap_without_a_fuse_fails():
    """It says which fuse the unit's sheet asks for."""
    bare = found(*instead(Joint(lead="power", wire="Red")))["join_supply_fuse"]
    assert bare.verdict is Verdict.FAILS
    assert (bare.next or "").startswith("put a fuse of 3 A into 'power'")


def test_a_fuse_in_the_ground_fails():
    """Wherever else fuses are."""
    fused = found(*instead(Joint(lead="ground", place="bolt", fuse_A=5.0)))["join_ground_fuse"]
    assert fused.verdict is Verdict.FAILS
    assert "a fuse of 5 A in 'ground'" in fused.because


NAMES = st.sampled_from(["power", "ground", "ignition", "door", "lamp"])
WORDS = st.sampled_from([None, "Red", "Violet", "Green"])
JOINTS = st.lists(
    st.builds(
        Joint,
        lead=NAMES,
        wire=WORDS,
        place=WORDS,
        end=WORDS,
        fuse_A=st.sampled_from([None, 1.0, 3.0, 10.0]),
    ),
    unique_by=lambda joint: joint.lead,
)


@given(JOINTS)
def test_no_set_of_joints_holds_but_a_good_one(joints: list[Joint]):
    """Whatever is written down: all holds only where every lead is accounted for, on its wire and rightly fused."""
    findings = as_built(joints, UNIT, chosen=CHOSEN)
    said = {joint.lead: joint for joint in joints}
    good = (
        set(said) == {"power", "ground", "ignition", "door"}
        and (said["power"].wire, said["ignition"].wire) == ("Red", "Violet")
        and said["power"].fuse_A in (1.0, 3.0)
        and said["ignition"].fuse_A == 1.0
        and said["ground"].fuse_A is None
        and (said["ground"].wire or said["ground"].place) is not None
        and (said["door"].wire or said["door"].end) is not None
    )
    assert (bool(findings) and {each.verdict for each in findings} == {Verdict.HOLDS}) == good


@pytest.mark.parametrize("verdict", [Verdict.OPEN, Verdict.FAILS])
def test_what_does_not_hold_says_what_to_do(verdict: Verdict):
    """Each open or failing finding has a next step."""
    bad = (Joint(lead="power", wire="Green"), Joint(lead="ground", fuse_A=2.0), Joint(lead="lamp"))
    findings = [each for each in as_built(bad, UNIT, chosen=CHOSEN) if each.verdict is verdict]
    assert findings
    assert all(each.next for each in findings)
