"""Journals: read whole, faults named, merged by union, continued in their chain."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.journals import JOB, Phone, histories, reading, uuid7

from backprobe.errors import JournalError
from backprobe.job.entry import Entry
from backprobe.job.journal import Draft, Journal, continued, journal_of, merge, read_journal


def phone(count: int, device: str = "phone-a", ids: int = 0) -> list[Entry]:
    one = Phone(device, ids=ids)
    for at in range(count):
        one.reads("Red", "on", f"12.3{at}")
    return one.entries


def test_lines_are_read_with_their_numbers():
    """Three lines, three entries, no faults."""
    entries = phone(3)
    journal = read_journal(entry.raw + b"\n" for entry in entries)
    assert journal.entries == tuple(entries)
    assert [line.number for line in journal.lines] == [1, 2, 3]
    assert journal.sound() is journal


def test_a_repeated_line_is_read_once():
    """The same entry twice is one entry."""
    one, two = phone(2)
    assert read_journal([one.raw, two.raw, one.raw]).entries == (one, two)
    assert read_journal([one.raw, two.raw, one.raw]).faults == ()


def test_one_id_for_two_entries_is_a_fault():
    """The first stays, the second is named and not taken."""
    one, two = phone(2)
    other = replace(one, body=reading("Red", "on", "1.0"))
    journal = read_journal([one.raw, two.raw, other.raw])
    assert journal.entries == (one, two)
    assert [str(fault) for fault in journal.faults] == [f"journal line 3: {other} bears the id of line 1"]


def test_a_damaged_line_is_a_fault_and_the_rest_is_read():
    """Line 2 is named, lines 1 and 3 are read; the gap in the chain shows as well."""
    one, two, three = phone(3)
    journal = read_journal([one.raw, two.raw[:40], three.raw])
    assert journal.entries == (one, three)
    assert [(fault.line, fault.what[:21]) for fault in journal.faults] == [
        (2, "not readable as an en"),
        (3, "missing: entry number"),
    ]
    with pytest.raises(JournalError, match=r"journal line 2: .*\njournal line 3: "):
        journal.sound()


def test_many_faults_are_shortened():
    """Seven bad lines: five are shown, two counted."""
    with pytest.raises(JournalError, match="and 2 more"):
        read_journal([b"bad"] * 7).sound()


def test_an_entry_of_another_job_is_a_fault():
    """One journal holds one job."""
    stranger = replace(phone(1, "phone-b", 50)[0], job="job-8")
    journal = read_journal([phone(1)[0].raw, stranger.raw])
    assert [fault.what for fault in journal.faults] == [f"{stranger} belongs to job 'job-8', not to 'job-7'"]


def test_unknown_kinds_and_versions_go_through_byte_for_byte():
    """A journal with an unknown kind and an entry of version 99 is read, merged and written as it came."""
    one = Phone()
    one.reads("Red", "on", "12.30")
    odd = one.say("hologram", {"of": "the dash"})
    values = odd.as_json() | {"v": 99, "id": uuid7(9), "seq": 3, "prev": odd.digest, "body": 3.5, "lens": {"mm": 35.5}}
    later = json.dumps(values, indent=None).encode()
    raw = [one.entries[0].raw, odd.raw, later]
    journal = read_journal(raw)
    assert journal.faults == ()
    assert [entry.raw for entry in merge(journal, journal_of(phone(2, "phone-b", 50))).entries][:3] == raw
    (new,) = continued(journal, [Draft(id=uuid7(10), kind="note", body={})], job=JOB, device="phone-a", engine="1")
    assert read_journal([*raw, new.raw]).faults == ()


def test_drafts_are_put_at_the_end_of_their_device():
    """Numbers go on from the device's last, each entry keeps the digest of the one before."""
    journal = journal_of([*phone(2), *phone(1, "phone-b", 50)])
    drafts = [Draft(id=uuid7(70 + at), kind="note", body={"text": str(at)}, by=uuid7(99)) for at in range(2)]
    new = continued(journal, drafts, job=JOB, device="phone-a", engine="0.2.0")
    assert [(entry.seq, entry.engine, entry.by) for entry in new] == [(3, "0.2.0", uuid7(99)), (4, "0.2.0", uuid7(99))]
    assert new[0].prev == journal.entries[1].digest
    assert read_journal(entry.raw for entry in (*journal.entries, *new)).faults == ()


def test_a_new_device_begins_at_one():
    """The first entry of a device has no entry before it."""
    (new,) = continued(Journal(), [Draft(id=uuid7(1), kind="note", body={})], job=JOB, device="desk", engine="0.1.0")
    assert (new.seq, new.prev) == (1, None)


def test_nothing_is_added_to_a_journal_with_faults():
    """Damage is settled before anything is written behind it."""
    with pytest.raises(JournalError, match="line 1"):
        continued(read_journal([b"bad"]), [], job=JOB, device="desk", engine="0.1.0")


@pytest.mark.parametrize(("job", "ids"), [("job-8", [80]), (JOB, [0]), (JOB, [80, 80])])
def test_another_job_or_a_used_id_is_refused(job, ids):
    """Drafts for another job, or with an id that is taken, are not put in."""
    drafts = [Draft(id=uuid7(count), kind="note", body={}) for count in ids]
    with pytest.raises(JournalError):
        continued(journal_of(phone(1)), drafts, job=job, device="desk", engine="0.1.0")


def test_merging_two_contents_of_one_id_is_refused():
    """Neither is overwritten: the error names both."""
    one = phone(1)
    other = [replace(one[0], body=reading("Red", "on", "1.0"))]
    with pytest.raises(JournalError, match="bear one id"):
        merge(journal_of(one), journal_of(other))


def test_merging_with_a_damaged_journal_is_refused():
    """A line that cannot be read would be lost in the merged journal."""
    with pytest.raises(JournalError, match="line 1"):
        merge(journal_of(phone(1)), read_journal([b"bad"]))


def test_what_has_not_arrived_shows_in_the_merged_journal():
    """A phone's second entry without its first: merged, and the gap named."""
    merged = merge(journal_of(phone(2)), journal_of(phone(2, "phone-b", 50)[1:]))
    assert len(merged.entries) == 3
    assert [fault.what.split(",")[0] for fault in merged.faults] == ["missing: entry number 1 of 'phone-b'"]


@given(histories(), st.data())
def test_merging_is_union_whatever_the_order(said, data):
    """Any two overlapping parts of a history, either way round and again, give the whole history."""
    mine = data.draw(st.lists(st.booleans(), min_size=len(said), max_size=len(said)))
    both = data.draw(st.lists(st.booleans(), min_size=len(said), max_size=len(said)))
    one = journal_of([entry for entry, is_mine, shared in zip(said, mine, both, strict=True) if is_mine or shared])
    other = journal_of([entry for entry, is_mine in zip(said, mine, strict=True) if not is_mine])
    merged = merge(one, other)
    assert merged == merge(other, one) == merge(merged, one) == merge(merged, merged)
    assert {entry.id for entry in merged.entries} == {entry.id for entry in said}
    assert merged.faults == ()
