"""What stands after corrections and withdrawals."""

from __future__ import annotations

from collections.abc import Iterable

from hypothesis import given
from hypothesis import strategies as st
from tests.samples.journals import Phone, histories, uuid7

from backprobe.job.entry import Entry
from backprobe.job.kinds import misfit
from backprobe.job.lineage import Dispute, Standing, standing, statement


def stands(entries: Iterable[Entry]) -> Standing:
    entries = list(entries)
    return standing([statement(entry) for entry in entries], {entry.id for entry in entries})


def volts(entries: Iterable[Entry]) -> list[object]:
    return [one.body["volts"] for one in stands(entries).statements]


def test_a_correction_stands_in_place_of_what_it_names():
    """The figure read first is gone, the corrected one stands."""
    one = Phone()
    one.corrects("12.60", one.reads("Red", "on", "12.30"))
    assert volts(one.entries) == ["12.60"]


def test_a_correction_of_a_correction():
    """The last in the row stands."""
    one = Phone()
    one.corrects("12.70", one.corrects("12.60", one.reads("Red", "on", "12.30")))
    assert volts(one.entries) == ["12.70"]


def test_a_withdrawal_leaves_nothing():
    """A withdrawn reading, and a withdrawn correction with what it corrected, are gone."""
    one = Phone()
    one.withdraws(one.reads("Red", "on", "12.30"))
    one.withdraws(one.corrects("12.60", one.reads("Red", "off", "12.30")))
    assert stands(one.entries) == Standing(statements=(), disputes=(), awaited=())


def test_a_correction_that_arrives_first_stands_and_waits():
    """What it replaces is awaited by name; once there, it is superseded."""
    one = Phone()
    first = one.reads("Red", "on", "12.30")
    second = one.corrects("12.60", first)
    assert volts([second]) == ["12.60"]
    assert stands([second]).awaited == (first.id,)
    assert stands([second, first]).awaited == ()
    assert volts([second, first]) == ["12.60"]


def test_two_different_corrections_are_a_dispute():
    """Both are kept, both marked; the dispute names what they are about."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    first = one.reads("Red", "on", "12.30")
    mine, theirs = one.corrects("12.60", first), other.corrects("12.90", first)
    found = stands([first, mine, theirs])
    assert found.disputes == (Dispute(first.id, (mine.id, theirs.id)),)
    assert [one.disputed for one in found.statements] == [True, True]


def test_two_equal_corrections_are_none():
    """Both phones saw the same slip and put it right the same way: one of them stands, undisputed."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    first = one.reads("Red", "on", "12.30")
    found = stands([first, one.corrects("12.60", first), other.corrects("12.60", first)])
    assert [(said.body["volts"], said.disputed) for said in found.statements] == [("12.60", False)]
    assert found.disputes == ()


def test_a_correction_against_a_withdrawal_is_a_dispute():
    """One says it was another figure, one says it was no reading."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    first = one.reads("Red", "on", "12.30")
    mine, gone = one.corrects("12.60", first), other.withdraws(first)
    found = stands([first, mine, gone])
    assert found.disputes == (Dispute(first.id, (mine.id, gone.id)),)
    assert [said.id for said in found.statements] == [mine.id]
    assert found.statements[0].disputed


def test_a_dispute_ends_when_somebody_replaces_both():
    """A correction that names both sides stands alone."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    first = one.reads("Red", "on", "12.30")
    mine, theirs = one.corrects("12.60", first), other.corrects("12.90", first)
    found = stands([first, mine, theirs, one.corrects("12.60", mine, theirs)])
    assert found.disputes == ()
    assert [said.body["volts"] for said in found.statements] == ["12.60"]


def test_an_entry_cannot_replace_itself():
    """A correction that names itself replaces nothing and stands."""
    one = Phone()
    one.say("correction", {"replaces": uuid7(0), "kind": "claim", "body": {"slot": "vin", "value": "X"}})
    assert [said.kind for said in stands(one.entries).statements] == ["claim"]


def test_what_names_itself_still_replaces_the_others_it_names():
    """A correction of a reading and, by a slip, of itself: the reading is replaced, nothing is disputed."""
    one = Phone()
    first = one.reads("Red", "on", "12.30")
    body = {"slot": "vin", "value": "X"}
    one.say("correction", {"replaces": [first.id, uuid7(1)], "kind": "claim", "body": body})
    assert [(said.kind, said.disputed) for said in stands(one.entries).statements] == [("claim", False)]


def test_corrections_in_a_circle_all_stand():
    """Two that replace each other would both vanish; both are kept, disputed."""
    one = Phone()
    one.say("correction", {"replaces": uuid7(1), "kind": "claim", "body": {"slot": "vin", "value": "X"}})
    one.say("correction", {"replaces": uuid7(0), "kind": "claim", "body": {"slot": "vin", "value": "Y"}})
    found = stands(one.entries)
    assert [(said.body["value"], said.disputed) for said in found.statements] == [("X", True), ("Y", True)]
    assert found.disputes == (Dispute(uuid7(0), (uuid7(0), uuid7(1))),)


@given(histories(), st.randoms())
def test_the_order_of_arrival_does_not_matter(said, random):
    """Any permutation of any history stands the same."""
    known = [entry for entry in said if misfit(entry.kind, entry.body) is None]
    shuffled = random.sample(known, len(known))
    assert stands(shuffled) == stands(known)


@given(histories())
def test_nothing_vanishes_without_an_entry_that_says_so(said):
    """Each entry stands, is named by another, is a withdrawal, or says just what another standing one says."""
    known = [entry for entry in said if misfit(entry.kind, entry.body) is None]
    found = stands(known)
    statements = [statement(entry) for entry in known]
    named = {name for one in statements for name in one.replaces}
    for one in statements:
        stays = any(one.id == other.id or (one.replaces and one.says_as(other)) for other in found.statements)
        assert stays or one.id in named or one.kind is None
