"""The wiring drawing of a job."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree

import pytest
from tests.samples.as_built import JOINTS, UNIT
from tests.samples.jobs import NAMED, evidence

from backprobe.drawings.wiring import DrawnLead, Wiring, described
from backprobe.findings import Verdict
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.job.wiring import as_drawn, caption_of, colour_letters, wiring_picture
from backprobe.limits.colours import COLOURS


def judged(joints: str = JOINTS, *, named: str = NAMED) -> JobJudgement:
    """The good job with joints."""
    return judge_job(evidence(named=named + joints, unit=UNIT))


def drawn(joints: str = JOINTS, *, named: str = NAMED) -> Wiring:
    """What is drawn of it."""
    content = as_drawn(judged(joints, named=named))
    assert content is not None
    return content


def test_without_joints_there_is_no_drawing():
    """A job at the probe stage has nothing to draw yet."""
    assert wiring_picture(judged("")) is None


def test_every_lead_of_the_unit_is_drawn_as_it_was_built():
    """Lead, wire, joint, fuse and ground, in the order of the unit's sheet."""
    content = drawn()
    assert (content.vehicle, content.unit) == ("5ZLDR7HV5KR200417", "Lantern 2 LN2-00417")
    assert content.leads == (
        DrawnLead(
            lead="power, RD 0.75 mm², 1.8 m",
            wire="Red",
            feeds="body-builder connector, permanent supply, fuse F12",
            joint="soldered sleeve, behind connector X12",
            fuse="3 A",
        ),
        DrawnLead(lead="ground, BK 18 AWG", wire=None, joint="ring terminal, bolt of the pedal bracket", ground=True),
        DrawnLead(
            lead="ignition",
            wire="Violet",
            feeds="body-builder connector, ignition feed, fuse F31",
            joint="fuse tap",
            fuse="1 A",
        ),
        DrawnLead(lead="door", wire=None, joint="capped 60 mm from the unit"),
    )


def test_a_lead_that_nobody_told_of_is_drawn_so():
    """It is neither capped nor left out."""
    content = drawn(JOINTS[: JOINTS.index('[[joint]]\nlead = "door"')])
    assert content.leads[-1] == DrawnLead(lead="door", wire=None)


def test_a_lead_that_the_unit_does_not_have_is_drawn_last():
    """What was written down is on the drawing, with a word on the unit's sheet."""
    content = drawn(JOINTS + '[[joint]]\nlead = "lamp"\nwire = "Blue"\n')
    assert content.leads[-1] == DrawnLead(lead="lamp (not on the unit's sheet)", wire="Blue")


def test_a_ground_on_a_ground_wire_is_a_joint():
    """Then there is a wire to name, and no frame."""
    content = drawn(JOINTS.replace('method = "ring_terminal"', 'wire = "BN at X4/1"'))
    assert content.leads[1].wire == "BN at X4/1"
    assert not content.leads[1].ground


@pytest.mark.parametrize(
    ("colour", "size", "shown"),
    [
        ("RD", "2.5 mm2", "Red, RD 2.5 mm²"),
        ("red with a blue stripe", "18 AWG", "Red, red with a blue stripe 18 AWG"),
        ("red/blue", "", "Red, RDBU"),
        ("", "", "Red"),
    ],
)
def test_a_wire_has_its_colour_and_size(colour: str, size: str, shown: str):
    """Colours become letters where each word of them is a colour; others stay as they were written."""
    extra = f'lead = "supply"\ncolour = "{colour}"\nsize = "{size}"'
    assert drawn(named=NAMED.replace('lead = "supply"', extra)).leads[0].wire == shown


def test_a_name_that_ends_in_the_letters_does_not_say_them_twice():
    """X12/4 RD is red by its name."""
    named = NAMED.replace('"Red"', '"X12/4 RD"\ncolour = "RD"\nsize = "1 mm2"')
    assert drawn(JOINTS.replace('"Red"', '"X12/4 RD"'), named=named).leads[0].wire == "X12/4 RD, 1 mm²"


def test_every_colour_of_the_table_is_known_by_its_name():
    """The fourteen letters of IEC 60757, one by one and joined by two."""
    assert {colour_letters(name): name for name in COLOURS.values()} == COLOURS
    assert colour_letters("Yellow-Green") == "YEGN"
    assert (colour_letters("gray"), colour_letters("purple")) == ("GY", "VT")
    assert (colour_letters(""), colour_letters("sky blue"), colour_letters("RDBU")) == ("", "sky blue", "RDBU")


def test_the_caption_explains_the_letters_that_are_used():
    """Not those that are not: red and black stand on the leads."""
    assert caption_of(drawn()).endswith("IEC 60757: BK black, RD red.")
    assert caption_of(Wiring(vehicle="v", unit="u", leads=())) == "The wiring as it was built."


def test_the_picture_is_drawn_and_described():
    """A well-formed picture, its caption, and a sentence a lead."""
    found = wiring_picture(judged())
    assert found is not None
    svg, caption, words = found
    assert ElementTree.fromstring(svg).tag.endswith("svg")
    assert caption == caption_of(drawn())
    assert words == described(drawn())
    assert words.count(". ") == 3


def test_a_lead_that_fails_is_marked():
    """15 A where the unit's sheet asks for 3: the drawing says so at that lead, and at no other."""
    marks = {lead.lead.split(",")[0]: lead.verdict for lead in drawn(JOINTS.replace("fuse_A = 3", "fuse_A = 15")).leads}
    assert marks["power"] is Verdict.FAILS
    assert marks["door"] is not Verdict.FAILS
