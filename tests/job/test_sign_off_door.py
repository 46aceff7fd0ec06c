"""What a phone is given to sign is what a terminal signs, and with the signature in it the whole journal verifies."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from tests.job.test_journal_door import Held, reading
from tests.samples.jobs import demo_job
from tests.samples.signing import KEY, handed_over, private_pem

from backprobe.cases.at_hand import engine_sha256, limits_sha256
from backprobe.job.covered import rows_of
from backprobe.job.entry import Entry, digest, read_entry
from backprobe.job.ids import timed_id
from backprobe.job.journal_door import judge_journal_text
from backprobe.job.sign_off import by_device, bytes_to_sign, read_sign_off, signed
from backprobe.job.sign_off_door import sign_off_text
from backprobe.job.verified import Held as Beside
from backprobe.job.verified import Result, verified
from backprobe.keys.ed25519 import sign, signature_holds

NIGHT = """
[hand_over]
end = "provisional"
[[hand_over.missing]]
what = "one parked night"
owed_by = "the yard office"
until = 2026-04-07
"""
SIGN = {
    "id": timed_id(1_770_000_000_000, bytes(10)),
    "at": "2026-04-01T08:15:00Z",
    "by": None,
    "device": "phone-5f2c",
    "engine": "0.1.0",
    "key": KEY,
    "engine_sha256": engine_sha256(),
    "limits_sha256": limits_sha256(),
}


def answer(held: Held, **changed: object) -> dict[str, Any]:
    """What the door says to somebody who wants to sign."""
    return dict(json.loads(sign_off_text(json.dumps({**json.loads(held.asked()), "sign": {**SIGN, **changed}}))))


@pytest.fixture
def held(tmp_path: Path) -> Held:
    """The demo job that went well, ending provisionally, with a phone's reading in it."""
    found = Held(handed_over(tmp_path, says=NIGHT))
    found.say("reading", reading("X12/4 RD", "on", "12.30"))
    return found


def signed_entry(said: dict[str, Any]) -> Entry:
    """The entry with its signature, as a phone puts it in."""
    empty = read_entry(said["entry"].encode())
    assert bytes_to_sign(empty) == said["entry"].encode()  # the phone signs the bytes that it was given
    return signed(empty, sign(private_pem(), said["entry"].encode()))


def journal_of(held: Held, *more: Entry) -> bytes:
    """The journal's bytes, by device and number as the server hands it out."""
    return b"".join(each.raw + b"\n" for each in by_device([*held.entries, *held.said, *more]))


def test_what_is_signed_on_a_phone_verifies(held: Held) -> None:
    """Signed with RFC 8032's first key: intact, by the name under which the key is known; all entries are covered."""
    said = answer(held)
    entry = signed_entry(said)
    assert (said["end"], said["entries"]) == ("provisional", len(held.entries) + 1)
    assert (entry.device, entry.seq, entry.prev) == ("phone-5f2c", 2, held.said[-1].digest)
    blobs = {name: text.encode() for name, text in said["blobs"].items()}
    assert set(blobs) == set(entry.blobs)
    assert all(digest(content) == name for name, content in blobs.items())
    done = verified(
        rows_of(journal_of(held, entry)), Beside(blob=blobs.get), signature_holds=signature_holds, names={KEY: "Ines"}
    )
    assert (done.result, done.faults, done.late) == (Result.INTACT, (), ())


def test_a_byte_that_is_changed_afterwards_is_found(held: Held) -> None:
    """Twelve volts and three tenths become four: the first altered entry is that reading."""
    said = answer(held)
    blobs = {name: text.encode() for name, text in said["blobs"].items()}
    altered = journal_of(held, signed_entry(said)).replace(b'"volts":"12.30"', b'"volts":"12.40"')
    done = verified(rows_of(altered), Beside(blob=blobs.get), signature_holds=signature_holds, names={KEY: "Ines"})
    assert done.result is Result.ALTERED
    assert done.faults[0].entry == held.said[0].id


def test_engine_limits_and_unit_sheet_are_those_at_hand(held: Held) -> None:
    """By their digests, as a terminal would write them; the sheet's is that of its bytes."""
    judged = read_sign_off(signed_entry(answer(held))).judged
    sheet = next(entry.body["sha256"] for entry in held.entries if entry.kind == "unit_sheet")
    assert (judged.engine, judged.limits, judged.unit_sheet) == (engine_sha256(), limits_sha256(), sheet)
    assert read_sign_off(signed_entry(answer(held, engine_sha256=None))).judged.engine is None


def test_the_judge_believes_a_signature_only_as_told(held: Held) -> None:
    """Unchecked it is open, checked it holds; a reading afterwards demands another."""
    entry = signed_entry(answer(held))
    held.said.append(entry)

    def finding(**more: object) -> dict[str, Any]:
        said = json.loads(judge_journal_text(json.dumps({**json.loads(held.asked()), **more})))
        return next(dict(each) for each in said["findings"] if each["id"] == "sign_off")

    assert finding()["verdict"] == "open"
    assert finding(signatures={entry.id: True})["verdict"] == "holds"
    assert finding(signatures={entry.id: False})["verdict"] == "fails"
    held.say("reading", reading("X12/4 RD", "off", "12.60"))
    assert finding(signatures={entry.id: True})["next"] == "look at what came later and sign the job off again"


def test_proven_is_refused_as_in_a_terminal(tmp_path: Path) -> None:
    """Truck 12 of the demo fails: the refusal is that of `sign`, and there is nothing to sign."""
    held = Held(handed_over(tmp_path, "truck-12", says='\n[hand_over]\nend = "proven"\n'))
    said = answer(held)
    assert said["ok"] is False
    assert said["error"].startswith("this job cannot be signed as proven:\n  ")
    unended = Held(demo_job(tmp_path / "plain", "truck-12"))
    assert answer(unended)["error"].startswith(("nothing says how this job ends", "this job cannot be signed"))


@pytest.mark.parametrize(
    ("changed", "error"),
    [
        ({"key": "zz"}, "key: 64 hex digits are expected"),
        ({"id": None}, "id: a text is expected"),
        ({"limits_sha256": "1"}, "limits_sha256: 64 hex digits are expected"),
    ],
)
def test_who_signs_must_be_said(held: Held, changed: dict[str, object], error: str) -> None:
    """A key, an id, digests: each named where it is not as it must be."""
    assert answer(held, **changed)["error"] == error


def test_a_journal_with_a_gap_is_not_signed(held: Held) -> None:
    """An entry of another device that has not arrived yet: said, and nothing to sign."""
    del held.entries[3]
    assert "missing: entry number 4" in answer(held)["error"]
