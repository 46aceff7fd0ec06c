"""What a verification comes to; and that no byte of a journal changes unseen."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.journals import Phone
from tests.samples.signing import KEY, OTHER_KEY, SEEDS, journal_bytes, signed_off, two_phones

from backprobe.job.chain import Fault
from backprobe.job.covered import rows_of
from backprobe.job.entry import Entry, digest
from backprobe.job.journal import journal_of, merge
from backprobe.job.sign_off import digests_text
from backprobe.job.verified import Held, Result, Verified, erased_in, missing_blobs, verified
from backprobe.keys.ed25519 import signature_holds

SAID = two_phones()
SIGNED = [*SAID, signed_off(SAID)]
CONTENT = journal_bytes(SIGNED)
LISTS = {digest(text): text for text in (digests_text(SAID),)}
KNOWN = {KEY: "Ines"}


def verify(
    content: bytes, *, names: Mapping[str, str] = KNOWN, held: Held | None = None, listed: bool = True
) -> Verified:
    """The verification of a journal's bytes, with the list of digests at hand unless it is not `listed`."""
    held = held or Held(blob=LISTS.get if listed else lambda _: None)
    return verified(rows_of(content), held, signature_holds=signature_holds, names=names)


def late() -> Entry:
    """What a third phone said later."""
    return Phone("phone-c", ids=600).reads("Blue", "on", "0.02")


def test_intact_and_known():
    """With the list at hand or not; the key has its name."""
    for listed in (True, False):
        done = verify(CONTENT, listed=listed)
        assert (done.result, done.faults, done.late) == (Result.INTACT, (), ())
        assert done.counts is not None
        assert done.known_as(done.counts) == "Ines"


def test_a_key_that_nobody_knows():
    """Nothing is altered, yet it is not said to be intact."""
    assert verify(CONTENT, names={}).result is Result.KEY_UNKNOWN
    assert verify(CONTENT, names={OTHER_KEY: "Tam"}).result is Result.KEY_UNKNOWN


def test_never_signed():
    """Entries alone; so does a journal look whose sign-off was taken away."""
    done = verify(journal_bytes(SAID))
    assert (done.result, done.counts) == (Result.NEVER_SIGNED, None)


def test_later_entries_are_named():
    """By line and entry."""
    done = verify(journal_bytes([*SIGNED, late()]))
    assert done.result is Result.NOT_COVERED
    assert [(line.number, line.entry.id) for line in done.late] == [(7, late().id)]


def test_files_not_yet_taken_in_are_not_covered():
    """Whatever the journal says."""
    done = verify(CONTENT, held=Held(blob=LISTS.get, pending=("readings.csv was changed",)))
    assert done.result is Result.NOT_COVERED


def test_a_fault_among_the_files_is_a_fault():
    """A blob that is missing comes with the others, by line."""
    fault = Fault(3, SAID[2].id, "blobs/abc is missing")
    assert verify(CONTENT, held=Held(blob=LISTS.get, faults=(fault,))).faults == (fault,)


def test_two_phones_of_which_one_arrives_after_the_sign_off():
    """Phone b's last entry was not there yet when phone a signed; merged, it is the one that is not covered."""
    a_side = [SAID[at] for at in (0, 1, 2, 4)]
    signed = [*a_side, signed_off(a_side)]
    merged = merge(journal_of(signed), journal_of([SAID[at] for at in (1, 3)]))
    done = verify(journal_bytes(merged.entries), listed=False)
    assert (done.result, done.faults) == (Result.NOT_COVERED, ())
    assert [line.entry.id for line in done.late] == [SAID[3].id]


def test_two_people_sign_side_by_side():
    """Both known: intact. One known: the other's sign-off is an entry that the known one does not cover."""
    both = journal_bytes([*SIGNED, signed_off(SAID, seed=SEEDS[1], number=2)])
    assert verify(both, names={KEY: "Ines", OTHER_KEY: "Tam"}).result is Result.INTACT
    done = verify(both)
    assert (done.result, [line.number for line in done.late]) == (Result.NOT_COVERED, [7])


def test_a_stranger_signs_everything_again():
    """A known key signed, then a stranger added an entry and signed all: not what the known key signed."""
    longer = [*SIGNED, late()]
    strange = journal_bytes([*longer, signed_off(longer, seed=SEEDS[1], number=2)])
    done = verify(strange)
    assert done.result is Result.NOT_COVERED
    assert [line.number for line in done.late] == [7, 8]
    assert verify(strange, names={OTHER_KEY: "Tam"}).result is Result.INTACT


def spoiled(content: bytes) -> Iterator[tuple[int, bytes]]:
    """Every single-byte change of each kind: one bit, another bit, a byte lost, a byte doubled, a space put in."""
    for at in range(len(content)):
        yield at, content[:at] + bytes([content[at] ^ 0x01]) + content[at + 1 :]
        yield at, content[:at] + bytes([content[at] ^ 0x20]) + content[at + 1 :]
        yield at, content[:at] + content[at + 1 :]
        yield at, content[:at] + content[at : at + 1] + content[at:]
        yield at, content[:at] + b" " + content[at:]


def test_every_single_byte_is_missed_when_it_changes():
    """At every place of the journal, its last line end included: altered, or at least not intact; the line is named."""
    count = 0
    for at, content in spoiled(CONTENT):
        done = verify(content)
        assert done.result is not Result.INTACT, (at, content[at - 20 : at + 20])
        if content.endswith(b"\n") and content.count(b"\n") == 6 and b"\n" not in CONTENT[at : at + 1]:
            line = CONTENT.count(b"\n", 0, at) + 1
            named = [fault.line for fault in done.faults]
            named += [each.number for each in (*done.late, *done.not_understood)]
            assert line in named, (at, done.result, named)
        count += 1
    assert count == 5 * len(CONTENT) > 10_000


@given(st.binary(min_size=1, max_size=1), st.integers(0, len(CONTENT) - 1), st.booleans())
@settings(max_examples=400, deadline=None)
def test_any_byte_anywhere_put_in_or_put_instead(byte: bytes, at: int, instead: bool):
    """Any of the 256, at any place, with the list of digests at hand and without: never intact, unless unchanged."""
    content = CONTENT[:at] + byte + CONTENT[at + instead :]
    if content != CONTENT:
        assert verify(content).result is not Result.INTACT
        assert verify(content, listed=False).result is not Result.INTACT


@given(st.integers(0, len(CONTENT) - 1))
@settings(deadline=None)
def test_a_journal_cut_anywhere(at: int):
    """From the front or from the end."""
    assert verify(CONTENT[:at]).result is not Result.INTACT
    if at:
        assert verify(CONTENT[at:]).result is not Result.INTACT


@pytest.mark.parametrize(
    "change",
    [
        lambda lines: lines[:-1],
        lambda lines: lines[1:],
        lambda lines: [*lines[:4], lines[5], lines[4]],
        lambda lines: [lines[1], lines[0], *lines[2:]],
        lambda lines: [*lines[:4], lines[5]],
        lambda lines: [*lines, lines[0]],
        lambda lines: list(reversed(lines)),
        lambda lines: lines[5:],
    ],
)
def test_lines_taken_away_swapped_or_doubled(change: Callable[[list[bytes]], list[bytes]]):
    """The sign-off, the first, the last before it; swapped with one another; one twice; all turned round."""
    lines = CONTENT.splitlines(keepends=True)
    content = b"".join(change(lines))
    assert verify(content).result is not Result.INTACT
    assert verify(content, listed=False).result is not Result.INTACT


def test_blobs_are_looked_for_once_and_named_on_their_first_line():
    """Two entries name the same file: one fault, on the first of them; erased files have none."""
    phone = Phone()
    one, two = "1" * 64, "2" * 64
    phone.say("recording", {}, blobs=(one,))
    phone.say("recording", {}, blobs=(one, two))
    phone.say("erased", {"blobs": [two], "why": "asked for"})
    lines = journal_of(phone.entries).lines
    assert erased_in(lines) == {two}
    assert missing_blobs(lines, lambda sha256: f"{sha256[0]} is missing") == (
        Fault(1, phone.entries[0].id, "1 is missing"),
    )
    assert missing_blobs(lines, lambda _: None) == ()


def test_what_is_not_understood_is_named():
    """An unknown kind: kept, and listed by its line."""
    done = verify(journal_bytes([*SIGNED, Phone("phone-c", ids=600).say("smell", {"of": "burnt varnish"})]))
    assert [line.number for line in done.not_understood] == [7]


def test_a_sign_off_in_capital_letters_is_altered():
    """The same signature in other bytes."""
    signature = str(SIGNED[5].body["signature"])
    done = verify(CONTENT.replace(signature.encode(), signature.upper().encode()))
    assert (done.result, done.faults[0].line) == (Result.ALTERED, 6)
    assert "no sign-off any more: signature: expected signature" in done.faults[0].what
