"""Joints as they are written down."""

from __future__ import annotations

from backprobe.evidence.joint import Joint, Method


def test_methods_are_the_words_of_job_sheets():
    """Job sheets, records and scripts rely on these."""
    assert [str(method) for method in Method] == [
        *("wrapped_splice", "crimped_butt", "soldered_sleeve", "tap_connector"),
        *("fuse_tap", "ring_terminal", "twisted_leads"),
    ]


def test_each_method_is_said_in_words_of_its_own():
    """No two methods read alike, and none shows its id."""
    said = {method.words for method in Method}
    assert len(said) == len(Method)
    assert not any("_" in words for words in said)


def test_only_the_lead_must_be_said():
    """All else is None until somebody writes it down."""
    joint = Joint(lead="door")
    rest = (joint.wire, joint.method, joint.fuse_A, joint.place, joint.length_m, joint.end, joint.undo)
    assert set(rest) == {None}


def test_how_an_unused_lead_was_left():
    """As it was written, else by what was ticked; nothing where the lead is used, or nothing was said."""
    assert Joint(lead="door", end="in the loom", capped=True).left == "in the loom"
    assert Joint(lead="door", cut_mm=60.0, capped=True, tied_back=False).left == "cut to 60 mm, capped, not tied back"
    assert Joint(lead="door", wire="White", capped=True).left is None
    assert Joint(lead="door").left is None
