"""Whether what was signed still stands, and on which line it does not."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from tests.samples.journals import Phone
from tests.samples.signing import journal_bytes, signed_off, two_phones

from backprobe.job.chain import Fault
from backprobe.job.covered import Rows, covered_faults, rows_of, without_echoes
from backprobe.job.entry import Entry
from backprobe.job.journal import journal_of, merge
from backprobe.job.kinds import SIGN_OFF
from backprobe.job.sign_off import SignOff, read_sign_off


def whole() -> list[Entry]:
    """Five entries of two phones and a sign-off over them: six lines."""
    said = two_phones()
    return [*said, signed_off(said)]


WHOLE = whole()
LISTED = [entry.digest for entry in WHOLE[:5]]


def sign_off_in(rows: Rows) -> SignOff:
    (found,) = (read_sign_off(line.entry) for line in rows.journal.lines if line.entry.kind == SIGN_OFF)
    return found


def exact(content: bytes, listed: list[str] | None = LISTED) -> list[Fault]:
    """All faults, as they are told."""
    rows = rows_of(content)
    found = covered_faults(rows, sign_off_in(rows), listed=listed)
    return list(without_echoes(rows, found, exact=listed is not None))


def lines(*entries: Entry | bytes) -> bytes:
    return b"".join((one if isinstance(one, bytes) else one.raw) + b"\n" for one in entries)


def test_what_was_signed_has_no_fault():
    """With the list of digests and without it."""
    assert exact(journal_bytes(WHOLE)) == exact(journal_bytes(WHOLE), None) == []


def forgeries(entry: Entry) -> list[bytes]:
    """The line with another figure, another word, another wire, and another link to the entry before."""
    changes = [(b"12.", b"21."), (b"10.", b"01."), (b"U-1", b"U-2"), (b"Red", b"Rod")]
    changes += [(link.encode(), link[::-1].encode()) for link in [entry.prev] if link is not None]
    return [entry.raw.replace(before, after) for before, after in changes if before in entry.raw]


@pytest.mark.parametrize("at", range(5))
def test_an_altered_entry_is_named_by_line_and_id(at: int):
    """Any of the five, whatever was changed in it: that line and no other."""
    forged = forgeries(WHOLE[at])
    assert forged
    for line in forged:
        (fault,) = exact(lines(*WHOLE[:at], line, *WHOLE[at + 1 :]))
        assert (fault.line, fault.entry) == (at + 1, WHOLE[at].id)
        assert fault.what == "altered: not the entry that stood here when it was signed"


@pytest.mark.parametrize("at", range(5))
def test_a_line_that_no_longer_reads_is_named_by_its_id(at: int):
    """A brace lost: the id is still there to be read."""
    (fault,) = exact(lines(*WHOLE[:at], WHOLE[at].raw[1:], *WHOLE[at + 1 :]))
    assert (fault.line, fault.entry) == (at + 1, WHOLE[at].id)


@pytest.mark.parametrize("at", range(5))
def test_a_removed_entry_is_missed(at: int):
    """On the line where it stood; the last one as well, which the chain alone would not miss."""
    faults = exact(lines(*WHOLE[:at], *WHOLE[at + 1 :]))
    assert faults[0] == Fault(at + 1, "", "missing: the entry that stood here when it was signed")


def test_several_altered_entries_are_all_named():
    """The second and the fourth line; the first of them is the second."""
    changed = [entry.raw.replace(b"12.31", b"13.21").replace(b"U-1", b"U-2") for entry in WHOLE]
    assert [fault.line for fault in exact(lines(*changed))] == [2, 4]


def test_a_journal_written_anew_from_some_entry_on_is_seen_where_it_begins():
    """A forger changes phone a's second entry and does all the later sums again: it and the third are named."""
    a, b = Phone("phone-a"), Phone("phone-b", ids=100)
    forged = [
        a.reads("Red", "on", "12.30"),
        b.reads("Violet", "on", "12.31"),
        a.reads("Red", "off", "13.60"),
        b.claims("serial", "U-1"),
        a.reads("Red", "crank", "10.12"),
    ]
    assert journal_of(forged).faults == ()
    assert [(f.line, f.entry) for f in exact(lines(*forged, WHOLE[5]))] == [(3, forged[2].id), (5, forged[4].id)]


def test_without_the_list_the_heads_still_show_it():
    """Then on the line of the device's last entry, or where the chain breaks."""
    (last,) = exact(lines(*WHOLE[:4], WHOLE[4].raw.replace(b"10.12", b"10.21"), WHOLE[5]), None)
    assert (last.line, last.entry) == (5, WHOLE[4].id)
    broken = exact(lines(WHOLE[0].raw.replace(b"12.30", b"12.03"), *WHOLE[1:]), None)
    assert (broken[0].line, broken[0].entry) == (1, WHOLE[0].id)
    assert exact(lines(*WHOLE[:4], WHOLE[5]), None)[0].what.startswith("entry number 3 of 'phone-a', once there")


def test_an_entry_put_in_between_is_seen():
    """A third phone is none of those that were signed, but comes later; a second first entry of phone b is not."""
    other = Phone("phone-b", ids=500).reads("Violet", "on", "12.99")
    faults = exact(lines(*WHOLE[:2], other, *WHOLE[2:]))
    assert [fault.line for fault in faults if "not among the entries that were signed" in fault.what] == [3]
    assert exact(lines(*WHOLE, Phone("phone-c", ids=600).reads("Red", "on", "1"))) == []


@pytest.mark.parametrize(("at", "other"), [(a, b) for a in range(6) for b in range(a)])
def test_two_lines_that_changed_places_are_seen(at: int, other: int):
    """Of one phone or of two, and the sign-off with any line before it."""
    turned = list(WHOLE)
    turned[at], turned[other] = turned[other], turned[at]
    assert exact(journal_bytes(turned)) != []


def test_a_merged_journal_stands_in_its_own_order():
    """By device and number: the same entries, and no fault."""
    merged = merge(journal_of(WHOLE), journal_of(WHOLE[:2])).entries
    assert [entry.device for entry in merged] != [entry.device for entry in WHOLE]
    assert exact(journal_bytes(merged)) == []


@pytest.mark.parametrize(
    ("spoil", "line"),
    [
        (lambda content: content[:-1], 6),
        (lambda content: content + b"\n", 7),
        (lambda content: b"\n" + content, 1),
        (lambda content: content + content.split(b"\n")[2] + b"\n", 7),
        (lambda content: content.replace(b"\n", b"\r\n", 1), 1),
        (lambda content: content.replace(b"\n", b"\n\n", 1), 2),
        (lambda content: content.replace(b"\n", b" ", 1), 1),
    ],
)
def test_what_is_wrong_with_the_file_alone(spoil: Callable[[bytes], bytes], line: int):
    """The last line end lost, empty lines, a line twice, foreign line ends, two lines in one."""
    faults = exact(spoil(journal_bytes(WHOLE)))
    assert line in [fault.line for fault in faults]


def test_a_wrong_count_or_sum_shows_by_itself():
    """A sign-off whose heads are right and whose number of entries is not says what cannot be."""
    said = two_phones()
    entry = signed_off(said)
    wrong = Phone(entry.device, ids=700).say(SIGN_OFF, entry.body | {"entries": 4})
    assert [fault.what for fault in exact(lines(*said, wrong))] == ["4 entries were signed; these are not the same"]


def test_ids_are_read_off_lines():
    """Also off one that is torn; none off a line without."""
    rows = rows_of(lines(WHOLE[0].raw[:200], b"{}", WHOLE[1]))
    assert rows.id_on(3) == WHOLE[1].id
    assert rows.id_on(2) == rows.id_on(9) == ""
    assert rows_of(b"").raw == ()
