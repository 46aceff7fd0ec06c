"""Which sign-offs there are, and what came after them."""

from __future__ import annotations

from tests.samples.journals import Phone
from tests.samples.signing import KEY, OTHER_KEY, SEEDS, signed_off, two_phones

from backprobe.findings import Stage, Verdict
from backprobe.job.chain import Line
from backprobe.job.entry import Entry
from backprobe.job.journal import journal_of
from backprobe.job.sign_off import signed
from backprobe.job.signed import (
    finding_as_told,
    not_covered,
    sign_off_finding,
    sign_offs,
    signature_faults,
    signed_as_told,
    widest,
)
from backprobe.keys.ed25519 import signature_holds


def lines(*entries: Entry) -> tuple[Line, ...]:
    return journal_of(entries).lines


def late(number: int = 0) -> Entry:
    """What a third phone said later."""
    return Phone("phone-c", ids=600 + number).reads("Blue", "on", "0.02")


SAID = two_phones()
FIRST = signed_off(SAID)
OTHER = signed_off(SAID, seed=SEEDS[1], number=2)
AGAIN = signed_off([*SAID, FIRST, late()], number=3)


def test_sign_offs_are_found_in_their_order():
    """Two keys, two sign-offs, each with its line; both signatures hold."""
    found = sign_offs(lines(*SAID, FIRST, OTHER), signature_holds)
    assert [(one.line, one.sign_off.key, one.holds) for one in found] == [(6, KEY, True), (7, OTHER_KEY, True)]


def test_a_signature_of_something_else_does_not_hold():
    """The signature of another sign-off; and one that names a fingerprint that is not its key's."""
    borrowed = signed(FIRST, str(OTHER.body["signature"]))
    (one,) = sign_offs(lines(*SAID, borrowed), signature_holds)
    assert not one.holds
    (fault,) = signature_faults([one])
    assert (fault.line, fault.entry) == (6, FIRST.id)
    (other,) = sign_offs(lines(*SAID, FIRST), lambda *_, **__: True)
    assert other.holds
    misnamed = signed_off(SAID)
    misnamed = Phone(misnamed.device, ids=800).say("sign_off", misnamed.body | {"fingerprint": "0" * 64})
    (third,) = sign_offs(lines(*SAID, misnamed), lambda *_, **__: True)
    assert not third.holds


def test_what_is_not_understood_is_no_sign_off():
    """A sign-off without its parts is left alone."""
    assert sign_offs(lines(Phone().say("sign_off", {"end": "proven"})), signature_holds) == ()


def test_what_came_later_is_not_covered():
    """A third phone's reading after the sign-off; nothing before it."""
    there = lines(*SAID, FIRST, late())
    (first,) = sign_offs(there, signature_holds)
    assert [line.number for line in not_covered(there, first, others=[first])] == [7]


def test_another_s_sign_off_is_no_evidence():
    """Two people who signed the same entries side by side: neither leaves anything uncovered."""
    there = lines(*SAID, FIRST, OTHER)
    found = sign_offs(there, signature_holds)
    assert [not_covered(there, one, others=found) for one in found] == [(), ()]
    assert [line.number for line in not_covered(there, found[0], others=found[:1])] == [7]


def test_a_person_who_signs_is_no_evidence_either():
    """The entry of the person on the signing device, before the sign-off; anything else from there counts."""
    device = FIRST.device
    for kind, left in (("person", []), ("reading", [6])):
        desk = Phone(device, ids=700)
        said = desk.say(kind, {"sha256": "a" * 64})
        one = signed_off(SAID, seed=SEEDS[1])
        two = desk.say("sign_off", FIRST.body)
        there = lines(*SAID, said, two, one)
        by_other = [each for each in sign_offs(there, lambda *_, **__: True) if each.sign_off.key == OTHER_KEY]
        everybody = sign_offs(there, lambda *_, **__: True)
        assert [line.number for line in not_covered(there, by_other[0], others=everybody)] == left


def test_the_widest_sign_off_counts():
    """The later one, which covers the reading that came between; of equals the last."""
    there = lines(*SAID, FIRST, late(), AGAIN)
    best = widest(there, sign_offs(there, signature_holds))
    assert best is not None
    assert (best[0].line, best[1]) == (8, ())
    there = lines(*SAID, FIRST, OTHER)
    best = widest(there, sign_offs(there, signature_holds))
    assert best is not None
    assert best[0].line == 7
    assert widest(there, []) is None


def test_no_sign_off_is_asked_for_until_a_job_is_to_end():
    """Nothing at all while nobody has said how it ends; then it is open, with what to do."""
    there = lines(*SAID)
    assert sign_off_finding(there, (), wanted=False) is None
    due = sign_off_finding(there, (), wanted=True)
    assert due is not None
    assert (due.stage, due.verdict, due.next) == (
        Stage.HAND_OVER,
        Verdict.OPEN,
        "sign the job off",
    )


def test_a_sign_off_over_all_there_is_holds():
    """With how the job ended, how many entries, and the key's fingerprint in groups."""
    there = lines(*SAID, FIRST)
    done = sign_off_finding(there, sign_offs(there, signature_holds), wanted=False)
    assert done is not None
    assert done.verdict is Verdict.HOLDS
    assert done.because.startswith("proven, over 5 entries, with the key ")
    assert done.next is None


def test_later_evidence_demands_a_new_sign_off():
    """Open, naming what came; seven later entries are counted, five of them named."""
    there = lines(*SAID, FIRST, late())
    later = sign_off_finding(there, sign_offs(there, signature_holds), wanted=False)
    assert later is not None
    assert (later.verdict, later.because) == (
        Verdict.OPEN,
        "signed off before 1 entry came: reading on line 7",
    )
    assert "sign the job off again" in (later.next or "")
    phone = Phone("phone-c", ids=600)
    for key in ("off", "on", "crank", "after", "off", "on", "off"):
        phone.reads("Blue", key, "0.02")
    there = lines(*SAID, FIRST, *phone.entries)
    many = sign_off_finding(there, sign_offs(there, signature_holds), wanted=True)
    assert many is not None
    assert many.because.startswith("signed off before 7 entries came: reading on line 7, ")
    assert many.because.endswith(" and 2 more")


def test_a_new_sign_off_settles_it():
    """Over all of it again."""
    there = lines(*SAID, FIRST, late(), AGAIN)
    done = sign_off_finding(there, sign_offs(there, signature_holds), wanted=True)
    assert done is not None
    assert done.verdict is Verdict.HOLDS


def test_a_broken_sign_off_fails():
    """A signature that does not hold; a signed entry that is not there any more."""
    there = lines(*SAID, signed(FIRST, "0" * 128))
    broken = sign_off_finding(there, sign_offs(there, signature_holds), wanted=True)
    assert broken is not None
    assert broken.verdict is Verdict.FAILS
    assert broken.because.startswith("journal line 6: altered: the signature")
    short = lines(*SAID[:4], FIRST)
    gone = sign_off_finding(short, sign_offs(short, signature_holds), wanted=True)
    assert gone is not None
    assert gone.verdict is Verdict.FAILS
    assert "once there, is missing" in gone.because


def test_the_server_s_note_on_the_unit_demands_no_new_sign_off():
    """A day without signal: the note that the unit is claimed comes after the sign-off. A refusal is evidence."""
    entries = two_phones()
    signed_entry = signed_off(entries)

    def verdict(*kinds: str) -> Verdict:
        server = Phone("server", ids=800)
        for kind in kinds:
            if kind == "withdrawn":
                server.withdraws(server.entries[-1])
            else:
                server.say(kind, {"serial": "U-1", "held_by": "job-8", "vehicle": None})
        found = lines(*entries, signed_entry, *server.entries)
        finding = sign_off_finding(found, sign_offs(found, signature_holds), wanted=True)
        assert finding is not None
        return finding.verdict

    assert verdict("unit_claimed") is Verdict.HOLDS
    assert verdict("unit_claimed", "withdrawn") is Verdict.HOLDS
    assert verdict("unit_refused") is Verdict.OPEN
    assert verdict("unit_claimed", "unit_refused", "withdrawn") is Verdict.OPEN


def test_what_nobody_has_checked_is_open_at_best():
    """Told to hold: it holds; told nothing: open; told not to hold: it fails; and what came later is open as ever."""
    there = lines(*SAID, FIRST)
    told = {
        name: finding_as_told(there, answers, wanted=True)
        for name, answers in (("holds", {FIRST.id: True}), ("nothing", {}), ("broken", {FIRST.id: False}))
    }
    verdicts = {name: finding.verdict for name, finding in told.items() if finding is not None}
    assert verdicts == {"holds": Verdict.HOLDS, "nothing": Verdict.OPEN, "broken": Verdict.FAILS}
    assert told["holds"] == sign_off_finding(there, sign_offs(there, signature_holds), wanted=True)
    assert told["nothing"] is not None
    assert told["nothing"].because.endswith("; its signature was not checked here")
    assert signed_as_told(there, {FIRST.id: False}) is None
    assert signed_as_told(there, {}) == {"id": FIRST.id, "end": "proven", "late": 0, "holds": None}
    assert signed_as_told(lines(*SAID, FIRST, late()), {FIRST.id: True}) == {
        "id": FIRST.id,
        "end": "proven",
        "late": 1,
        "holds": True,
    }
    later = finding_as_told(lines(*SAID, FIRST, late()), {}, wanted=True)
    assert later is not None
    assert later.because.startswith("signed off before 1 entry came")
