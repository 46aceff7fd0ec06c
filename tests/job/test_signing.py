"""What must be so before a job is signed off, and the entry that is then to be signed."""

from __future__ import annotations

import hashlib
import json

import pytest
from tests.samples.signing import KEY, two_phones

from backprobe.errors import JobError
from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.sign_off import digests_text
from backprobe.job.signing import NO_END, Tools, drafted, to_sign

TOOLS = Tools(engine=None, limits="a" * 64, unit_sheet="b" * 64)
NIGHT = Finding(
    id="prove_parked",
    stage=Stage.PROVE,
    what="Reports over a parked night",
    verdict=Verdict.OPEN,
    because="no night",
    next=None,
)
SIGN_OFF = Finding(
    id="sign_off", stage=Stage.HAND_OVER, what="Sign-off", verdict=Verdict.OPEN, because="nobody", next=None
)
OWED = HandOver(end=End.PROVISIONAL, missing=(Missing(what="parked night", owed_by="the yard", until="2026-04-02"),))


def test_without_an_end_nothing_is_signed():
    """The refusal shows how to write one."""
    with pytest.raises(JobError) as refusal:
        to_sign(None, [NIGHT], tools=TOOLS)
    assert refusal.value.message == NO_END


def test_proven_is_refused_while_a_night_is_missing():
    """With what is missing, and how the job can end instead."""
    with pytest.raises(JobError) as refusal:
        to_sign(HandOver(end=End.PROVEN), [NIGHT], tools=TOOLS)
    assert refusal.value.message.startswith("this job cannot be signed as proven:\n  Reports over a parked night: open")
    assert 'what = "parked night"' in refusal.value.message


def test_what_is_signed_are_the_findings_but_the_one_on_the_sign_off():
    """Their bytes and those of the hand-over, by their digests; the worst of them is the verdict."""
    what = to_sign(OWED, [NIGHT, SIGN_OFF], tools=TOOLS)
    assert what.shown == (NIGHT,)
    assert [each["id"] for each in json.loads(what.findings)["findings"]] == ["prove_parked"]
    assert what.judged.findings == hashlib.sha256(what.findings).hexdigest()
    assert what.judged.hand_over == hashlib.sha256(what.hand_over).hexdigest()
    assert (what.judged.end, what.judged.verdict, what.judged.limits) == ("provisional", "open", "a" * 64)


def test_the_draft_names_all_entries_and_keeps_what_it_was_made_over():
    """Five entries of two phones: two heads, their digests one a line among the files, the signature still empty."""
    entries = two_phones()
    what = to_sign(OWED, [NIGHT], tools=TOOLS)
    draft, blobs = drafted(entries, what, key=KEY, entry_id="i", at=None, by="p")
    heads = draft.body["heads"]
    assert isinstance(heads, list)
    assert [head[:2] for head in heads if isinstance(head, list)] == [["phone-a", 3], ["phone-b", 2]]
    assert (draft.kind, draft.by, draft.body["entries"], draft.body["signature"]) == ("sign_off", "p", 5, "")
    assert draft.blobs == tuple(blobs)
    assert list(blobs.values()) == [what.findings, what.hand_over, digests_text(entries)]
