"""What the chain of digests shows, and what it cannot."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from tests.samples.journals import Phone

from backprobe.job.chain import Head, Line, against_heads, chain_faults, heads
from backprobe.job.entry import Entry
from backprobe.job.journal import read_journal


def two_phones() -> list[Entry]:
    """Four entries of one phone, three of another, one after the other by turns."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    for key in ("off", "on", "crank"):
        one.reads("Red", key, "12.30")
        other.reads("Blue", key, "0.02")
    one.reads("Red", "after", "12.10")
    return [one.entries[0], other.entries[0], *one.entries[1:3], *other.entries[1:], one.entries[3]]


ENTRIES = two_phones()
RAW = b"".join(entry.raw + b"\n" for entry in ENTRIES)
A1, B1, A2, A3, B2, B3, A4 = ENTRIES


def lines(*entries: Entry) -> list[Line]:
    return [Line(number, entry) for number, entry in enumerate(entries, 1)]


def said(*entries: Entry) -> list[str]:
    return [str(fault) for fault in chain_faults(lines(*entries))]


def split(raw: bytes) -> list[bytes]:
    """The lines of a journal file; what stands behind the last line end is a torn line."""
    return raw.split(b"\n")[:-1]


def test_a_whole_chain_has_no_faults():
    """Two devices' entries by turns, each in its own order."""
    assert chain_faults(lines(*ENTRIES)) == ()


def test_an_entry_taken_out_is_named():
    """The gap is named with its number, its device and the lines around it."""
    assert said(A1, B1, A3, B2, B3, A4) == [
        f"journal line 3: missing: entry number 2 of 'phone-a', between line 1 and {A3}"
    ]
    assert said(A1, A4) == [f"journal line 2: missing: entries number 2 to 3 of 'phone-a', between line 1 and {A4}"]


def test_a_first_entry_taken_out_is_named():
    """A chain that does not begin at 1 has lost its beginning."""
    assert said(B2, B3) == [f"journal line 1: missing: entry number 1 of 'phone-b', before {B2}"]


def test_an_altered_entry_is_named():
    """The entry after next confirms the next: so the one before was altered, and no other."""
    forged = replace(A2, body=A2.body | {"volts": "12.90"})
    assert said(A1, forged, A3, A4) == [f"journal line 2: altered after writing: {forged}; line 3 keeps another digest"]


def test_either_of_the_last_two_may_be_the_altered_one():
    """Nothing confirms the last entry: a break before it can be its own."""
    forged = replace(A3, body=A3.body | {"volts": "12.90"})
    assert said(A1, A2, forged, A4) == [
        f"journal line 3: altered after writing: {forged} or {A4}; line 4 keeps another digest"
    ]


def test_swapped_lines_are_named():
    """Entries of one device out of their order."""
    assert said(A1, A3, A2, A4) == [f"journal line 3: out of order: {A2} stands after line 2, {A3}"]


def test_two_entries_of_one_number_are_named():
    """A device that was copied and went on in two places."""
    fork = replace(A3, id=A4.id, body={"wire": "Red", "key": "on", "volts": "1.0", "capture": "max"})
    assert said(A1, A2, A3, fork) == [
        f"journal line 4: two different entries bear one number: line 3 ({A3}) and line 4 ({fork})"
    ]


def test_heads_are_the_last_entries():
    """The highest number of each device and that entry's digest, in whatever order they stand."""
    expected = {"phone-a": Head(4, A4.digest), "phone-b": Head(3, B3.digest)}
    assert heads(ENTRIES) == heads(reversed(ENTRIES)) == expected


def test_entries_added_after_the_heads_were_kept_are_no_fault():
    """Heads kept after two entries still hold after four."""
    assert against_heads(lines(*ENTRIES), heads([A1, B1, A2])) == ()


def test_what_was_cut_off_shows_against_kept_heads():
    """Entries removed from the end break no chain; the kept head misses them."""
    cut = lines(*ENTRIES[:-1])
    assert chain_faults(cut) == ()
    assert [str(fault) for fault in against_heads(cut, heads(ENTRIES))] == [
        "journal line 7: entry number 4 of 'phone-a', once there, is missing"
    ]


def test_a_rewritten_end_shows_against_kept_heads():
    """A chain made anew from its second entry on is whole in itself; the kept head is another."""
    phone = Phone("phone-a")
    for volts in ("12.30", "12.90", "12.30", "12.10"):
        phone.reads("Red", "on", volts)
    anew = lines(*phone.entries)
    assert chain_faults(anew) == ()
    assert [fault.line for fault in against_heads(anew, {"phone-a": heads(ENTRIES)["phone-a"]})] == [4]


def changed_bytes(at: int) -> list[bytes]:
    """The journal with the byte at one place changed: one bit, to a digit, to a line end, to nothing legal."""
    others = {RAW[at] ^ 1, RAW[at] ^ 0x20, ord("7"), ord("a"), ord("\n"), 0xFF} - {RAW[at]}
    return [RAW[:at] + bytes([other]) + RAW[at + 1 :] for other in sorted(others)]


def test_every_changed_byte_before_the_last_entries_shows():
    """At each place up to the end of a device's entry before its last, any of six changes is a fault."""
    ends = [0, *(at + 1 for at, byte in enumerate(RAW) if byte == ord("\n"))]
    spans = dict(zip((entry.id for entry in ENTRIES), pairwise(ends), strict=True))
    open_ended = {A4.id, B3.id}
    checked = 0
    for entry_id, (start, end) in spans.items():
        for at in range(start, end) if entry_id not in open_ended else ():
            for raw in changed_bytes(at):
                assert read_journal(split(raw)).faults, (at, raw)
                checked += 1
    assert checked > 5 * 5 * 200  # five entries of over 200 bytes, at least five changes each


def test_every_changed_byte_shows_against_kept_heads():
    """With the heads kept elsewhere, the last entries are covered as well: any change of any byte shows."""
    kept = heads(ENTRIES)
    unseen = [
        at
        for at in range(len(RAW))
        for raw in changed_bytes(at)
        if not (journal := read_journal(split(raw))).faults and not against_heads(journal.lines, kept)
    ]
    assert unseen == []


def test_the_chain_alone_misses_a_changed_figure_in_the_last_entry():
    """As documented: a last entry altered into another well-formed one shows only against a kept head."""
    journal = read_journal(split(RAW[::-1].replace(b"01.21", b"09.21", 1)[::-1]))
    assert journal.entries[-1].body["volts"] == "12.90"
    assert journal.faults == ()
    assert len(against_heads(journal.lines, heads(ENTRIES))) == 1
