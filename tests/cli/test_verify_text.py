"""A verification in words: everything that was found is there, and nothing else steers the terminal."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.samples.journals import Phone
from tests.samples.signing import KEY, SEEDS, journal_bytes, signed_off, two_phones

from backprobe.cases.verify import Verification
from backprobe.cli.verify_text import HEADLINE, NEXT, PAGES, as_json, as_text, next_step
from backprobe.job.chain import Fault
from backprobe.job.covered import rows_of
from backprobe.job.entry import Entry
from backprobe.job.verified import Held, Result, verified
from backprobe.keys.ed25519 import signature_holds

SAID = two_phones()
SIGNED = [*SAID, signed_off(SAID)]
FINDINGS = {
    "verdict": "thin",
    "findings": [
        {"what": "Red: while the engine cranks", "verdict": "thin", "because": "MIN hold"},
        {"what": "VIN", "verdict": "holds", "because": "17 characters"},
    ],
}
HAND_OVER = {
    "end": "provisional",
    "missing": [{"what": "a parked night", "owed_by": "Tam", "until": "2026-04-07"}],
    "undone": [],
    "restored": ["fuse F12"],
    "told_driver": ["call the yard"],
    "why": "rain",
}


def verification(entries: list[Entry], *, faults: tuple[Fault, ...] = (), known: bool = True) -> Verification:
    """The verification of a record of these entries."""
    held = Held(blob=lambda _: None, faults=faults)
    names = {KEY: "Ines"} if known else {}
    done = verified(rows_of(journal_bytes(entries)), held, signature_holds=signature_holds, names=names)
    return Verification(
        path=Path("r.pdf"), is_pdf=True, sha256="9" * 64, verified=done, findings=FINDINGS, hand_over=HAND_OVER
    )


def test_an_intact_record():
    """The word, the journal, who signed, what; the pages are spoken of as not looked at."""
    lines = as_text(verification(SIGNED)).splitlines()
    assert lines[0] == "r.pdf: intact, and signed with a key that is known here"
    assert lines[1] == f"  journal  6 entries, sha256 {'9' * 64}"
    assert lines[2] == "  signed   proven, 2026-05-04T16:40:00Z by the signing device's clock"
    assert lines[3].startswith("           by Ines: ")
    assert lines[4] == (
        "           over 5 entries; verdict holds (backprobe 0.1.0, not the one here, by other limits than those here)"
    )
    assert lines[5:] == [
        "  findings  2 were signed: 1 holds, 1 thin",
        "    thin  Red: while the engine cranks: MIN hold",
        "  missing  a parked night, owed by Tam until 2026-04-07",
        "  restored  fuse F12",
        "  told driver  call the yard",
        "  why  rain",
        f"note: {PAGES}",
    ]


def test_every_result_has_its_words():
    """A headline for each; something to do for each but intact."""
    assert set(HEADLINE) == set(Result)
    assert set(NEXT) | {Result.INTACT, Result.KEY_UNKNOWN} == set(Result)
    assert next_step(verification(SIGNED)) is None
    assert KEY in (next_step(verification(SIGNED, known=False)) or "")


def test_altered_things_are_named_and_counted():
    """Twenty of twenty-five; what was signed is not told of a thing that is altered."""
    faults = tuple(Fault(at, "", f"fault {at}") for at in range(1, 26))
    text = as_text(verification(SIGNED, faults=faults))
    assert "  line 20, fault 20" in text
    assert "line 21" not in text
    assert "  and 5 more" in text
    assert "findings" not in text.split("note:")[0]
    assert as_json(verification(SIGNED, faults=faults))["findings"] is None
    assert "  signed-findings.json is" in as_text(
        verification(SIGNED, faults=(Fault(0, "", "signed-findings.json is attached, but nobody has signed"),))
    )


def test_later_entries_are_named_with_their_device():
    """Line, id, kind, device."""
    late = Phone("phone-c", ids=600).reads("Blue", "on", "0.02")
    assert f"  not covered  line 7, entry {late.id}: reading by 'phone-c'" in as_text(verification([*SIGNED, late]))


def test_a_signature_that_does_not_hold_is_said():
    """In capitals, beside what it claims."""
    broken = replace(SIGNED[5], body=SIGNED[5].body | {"signature": "0" * 128})
    assert "NOT HELD BY ITS SIGNATURE: proven" in as_text(verification([*SAID, broken]))


def test_what_else_there_is_is_said():
    """Files that are only named, files beside, sign-offs by strangers, entries that are not understood."""
    done = replace(verification(SIGNED), only_named=5, beside=("invoice.txt",))
    text = as_text(done)
    assert "note: files of the evidence that are named by digest only: 5" in text
    assert "note: invoice.txt is attached as well; nobody has signed it" in text
    strange = [*SAID, signed_off(SAID, seed=SEEDS[1], number=2)]
    both = as_text(verification([*strange, signed_off(strange, number=3)]))
    assert "note: sign-offs by keys that are not known here: 1" in both
    odd = as_text(verification([*SIGNED, Phone("phone-c", ids=600).say("smell", {})]))
    assert "note: not understood by this version of backprobe: line 7 (smell, entry " in odd


@pytest.mark.parametrize("hostile", ["\x1b[2J\x1b[1;1Hintact", "a\nr.pdf: intact", "a\rb", "\u202etcatni"])
def test_nothing_steers_the_terminal(hostile: str):
    """Letters from a stranger's file that would move the cursor, end the line or turn it round."""
    strange = replace(
        verification(SIGNED),
        findings={"findings": [{"what": hostile, "verdict": "thin", "because": hostile}]},
        hand_over={"why": hostile, "undone": [hostile], "missing": [{"what": hostile}]},
    )
    text = as_text(strange)
    assert len(text.splitlines()) == text.count("\n") + 1
    assert all(letter == "\n" or letter.isprintable() for letter in text)
    assert sum(line.startswith("r.pdf: ") for line in text.splitlines()) == 1


@pytest.mark.parametrize("value", [None, {}, {"findings": 3}, {"findings": ["x"]}, {"findings": [{}]}, {"missing": {}}])
def test_whatever_a_stranger_signed_is_told_or_left_out(value: dict[str, object] | None):
    """No error, whatever shape it has."""
    assert as_text(replace(verification(SIGNED), findings=value, hand_over=value)).startswith("r.pdf: intact")
