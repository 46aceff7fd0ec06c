"""Who allowed the work, and who the cranking."""

from __future__ import annotations

from backprobe.evidence.walkround import Authority
from backprobe.findings import Verdict
from backprobe.stages.walkround.authority import ASK_FOR_CRANK, ASK_FOR_WORK, authority

BOTH = Authority(work_by="Maud Linden", crank_by="Maud Linden")


def by_id(given: Authority, *, has_crank: bool = True, cranked: bool = False):
    """The findings by their ids."""
    return {found.id: found for found in authority(given, has_crank=has_crank, cranked=cranked)}


def test_one_person_who_allowed_both_is_told_once():
    """One finding, and it holds."""
    found = by_id(BOTH)
    assert set(found) == {"authority"}
    assert found["authority"].verdict is Verdict.HOLDS
    assert found["authority"].because == "work and cranking allowed by Maud Linden"


def test_two_people_are_told_apart():
    """Each with what they allowed."""
    found = by_id(Authority(work_by="Maud Linden", crank_by="Dov Castellan"))
    assert [each.because for each in found.values()] == [
        "work allowed by Maud Linden",
        "cranking allowed by Dov Castellan",
    ]


def test_work_that_was_refused_fails():
    """Nothing is touched then; who refused is named."""
    found = by_id(Authority(work=False, work_by="Maud Linden", crank_by="x"))["authority"]
    assert (found.verdict, found.next) == (Verdict.FAILS, ASK_FOR_WORK)
    assert found.because == "the work was refused by Maud Linden"
    assert by_id(Authority(work=False))["authority"].because == "nobody allowed the work"


def test_work_that_nobody_is_named_for_is_open():
    """Also where it says true, and by whom is left out."""
    for given in (Authority(), Authority(work=True)):
        found = by_id(given)["authority"]
        assert (found.verdict, found.next) == (Verdict.OPEN, ASK_FOR_WORK)


def test_a_crank_that_was_refused_is_open_with_nothing_to_do():
    """It is known; other readings go on, and that nothing can be proven without is said."""
    found = by_id(Authority(work_by="Maud Linden", crank=False))["authority_crank"]
    assert (found.verdict, found.next) == (Verdict.OPEN, None)
    assert found.because == "nobody allowed cranking: without a crank no supply and no ignition can be proven"


def test_a_crank_that_was_refused_and_measured_is_questioned():
    """One of the two is wrong: who allowed it is to be written down."""
    found = by_id(Authority(work_by="Maud Linden", crank=False), cranked=True)["authority_crank"]
    assert (found.verdict, found.next) == (Verdict.OPEN, ASK_FOR_CRANK)


def test_a_crank_of_which_nothing_is_said_is_asked_about():
    """Whether one was measured or not."""
    for cranked in (True, False):
        found = by_id(Authority(work_by="Maud Linden"), cranked=cranked)["authority_crank"]
        assert (found.verdict, found.next) == (Verdict.OPEN, ASK_FOR_CRANK)


def test_a_vehicle_without_a_crank_needs_no_authority_to_crank():
    """One finding on the work, in words that speak of no cranking."""
    found = by_id(Authority(work_by="Maud Linden"), has_crank=False)
    assert [(each.id, each.because) for each in found.values()] == [("authority", "work allowed by Maud Linden")]
