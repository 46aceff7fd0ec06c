"""A job as it stands, the same in whatever order its entries arrived."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.journals import Phone, histories, reading

from backprobe.errors import JournalError
from backprobe.job.entry import read_entry
from backprobe.job.fold import JobState, NotUnderstood, fold, unique
from backprobe.job.journal import journal_of, merge

SHA = "a" * 64


@given(histories(), st.randoms())
def test_any_order_of_arrival_gives_one_state(said, random):
    """Every permutation of every history, with repeats, folds to an equal state."""
    shuffled = random.sample(said, len(said)) + random.sample(said, len(said) // 2)
    assert fold(shuffled) == fold(said)


@given(histories(), st.data())
def test_any_split_between_two_phones_gives_one_state(said, data):
    """Whatever part each phone holds, merged either way they fold to the state of the whole."""
    places = data.draw(st.lists(st.sampled_from(("mine", "yours", "both")), min_size=len(said), max_size=len(said)))
    mine = journal_of(entry for entry, place in zip(said, places, strict=True) if place != "yours")
    yours = journal_of(entry for entry, place in zip(said, places, strict=True) if place != "mine")
    assert fold(merge(mine, yours).entries) == fold(merge(yours, mine).entries) == fold(said)


@given(histories())
def test_settled_means_nothing_is_left_to_look_at(said):
    """A state is settled exactly if nothing is disputed, awaited, unknown or open."""
    state = fold(said)
    left = [*state.disputes, *state.awaited, *state.unknown, *(one for one in state.slots.values() if one.is_open)]
    assert state.settled == (left == [])


def test_no_entries_are_an_empty_job():
    """Nothing said, nothing known."""
    assert fold([]) == JobState()
    assert fold([]).settled


def test_unknown_kinds_and_versions_are_listed_and_leave_the_job_open():
    """A kind nobody knows and an entry of version 99: named, with why."""
    one = Phone()
    odd = one.say("hologram", {"of": "the dash"})
    later = read_entry(odd.raw.replace(b'"v":1}', b'"v":99}').replace(odd.id.encode(), odd.id[:-1].encode() + b"1"))
    state = fold([odd, later])
    assert state.unknown == (
        NotUnderstood(odd.id, "hologram", 1, "the kind 'hologram' is not known to this version"),
        NotUnderstood(later.id, "hologram", 99, "version 99 is later than 1"),
    )
    assert not state.settled


def test_a_correction_to_an_unknown_kind_is_listed():
    """The reading it replaces no longer stands; what stands is not understood, and that is said."""
    one = Phone()
    first = one.reads("Red", "on", "12.30")
    one.say("correction", {"replaces": first.id, "kind": "hologram", "body": {}})
    state = fold(one.entries)
    assert state.table.readings == ()
    assert [odd.why for odd in state.unknown] == ["'hologram' is no kind of evidence"]


def test_a_malformed_body_is_listed():
    """A reading without a wire says nothing and does not stop the rest."""
    one = Phone()
    one.say("reading", {"key": "on"})
    one.reads("Red", "on", "12.30")
    state = fold(one.entries)
    assert [odd.why for odd in state.unknown] == ["wire: expected text"]
    assert len(state.table.readings) == 1


def test_what_a_later_version_says_is_not_awaited():
    """A correction of an entry that is there, though not understood, waits for nothing."""
    one = Phone()
    odd = one.say("hologram", {})
    assert fold([odd, one.corrects("12.30", odd)]).awaited == ()
    assert fold([one.entries[1]]).awaited == (odd.id,)


def test_recordings_and_erased_files():
    """Recordings stand as said; erased digests are listed so that nobody misses their files."""
    one = Phone()
    body = {"file": "crank.csv", "sha256": SHA, "bytes": 12, "stored": True}
    kept = one.say("recording", body, blobs=(SHA,))
    one.say("erased", {"blobs": [SHA], "why": "asked for"})
    state = fold(one.entries)
    assert [(said.entry, said.body) for said in state.of_kind("recording")] == [(kept, body)]
    assert state.erased == {SHA}


def test_readings_have_many_values():
    """Two readings of one wire at one key are two readings, not a contradiction."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    state = fold([one.reads("Red", "on", "12.30"), other.reads("Red", "on", "12.40")])
    assert [found.typed for found in state.table.readings] == ["12.30", "12.40"]
    assert state.settled


def test_open_slots_are_listed():
    """Two serial numbers leave the job open."""
    one = Phone()
    state = fold([one.claims("serial", "U-1"), one.claims("serial", "U-2"), one.claims("vin", "X")])
    assert [slot.name for slot in state.open_slots] == ["serial"]
    assert not state.settled


def test_two_jobs_are_not_mixed():
    """Entries of another job raise."""
    entry = Phone().reads("Red", "on", "12.30")
    stranger = replace(Phone("phone-b", ids=100).reads("Red", "on", "1.0"), job="job-8")
    with pytest.raises(JournalError, match="job-7, job-8"):
        fold([entry, stranger])


def test_one_id_with_two_contents_is_refused():
    """Neither of the two is believed."""
    entry = Phone().reads("Red", "on", "12.30")
    with pytest.raises(JournalError, match="two different entries bear the id"):
        unique([entry, replace(entry, body=reading("Red", "on", "1.0"))])
