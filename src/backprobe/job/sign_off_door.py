"""The engine's door for a sign-off: what a phone has to sign, as JSON text in and out; the phone only signs bytes.

In: a journal as for `backprobe.job.journal_door`, with ``"sign"``: ``{"id", "at", "by", "device", "engine", "key",
"engine_sha256", "limits_sha256"}``: the new entry's id, the device's clock, the entry of the person who signs, the
device's name and version of backprobe, the public key in hex, and by which engine and limits the browser judges.

Out: ``{"ok": true, "entry": text, "blobs": {sha256: text}, "end", "verdict", "entries", "fingerprint"}``. `entry` is
the whole entry with an empty signature: its bytes are what is signed, and with the signature put in it is the entry.
The entries are taken by device and number, the order of merged journals.
"""

from __future__ import annotations

from backprobe.errors import JobError
from backprobe.formats.parts import Parts
from backprobe.job.entry import is_sha256
from backprobe.job.journal import continued, journal_of
from backprobe.job.journal_door import JOURNAL, Asked, asked_in, evidence_of
from backprobe.job.judge import judge_job
from backprobe.job.kinds import text
from backprobe.job.sign_off import by_device, fingerprint
from backprobe.job.signing import Tools, drafted, to_sign
from backprobe.job.told import told


def sign_off_text(asked: str) -> str:
    """What is to be signed, or why the job cannot be signed as its sheet says.

    >>> print(sign_off_text("{}"))
    {"code": "job", "error": "entries: a list of texts is expected", "ok": false}
    """
    return told(asked, JOURNAL, answer_to=_answer)


def _answer(parts: Parts) -> dict[str, object]:
    asked, by = asked_in(parts), _signer(parts)
    evidence = evidence_of(asked)
    what = to_sign(evidence.sheet.hand_over, judge_job(evidence).findings, tools=_tools(asked, by))
    journal = journal_of(by_device(asked.entries))
    key = _sha256(by, "key")
    draft, blobs = drafted(journal.entries, what, key=key, entry_id=by.text("id"), at=by.maybe("at"), by=by.maybe("by"))
    job = asked.state.job or ""
    (entry,) = continued(journal, [draft], job=job, device=by.text("device"), engine=by.text("engine"))
    return {
        "ok": True,
        "entry": entry.raw.decode("utf-8"),
        "blobs": {sha256: content.decode("utf-8") for sha256, content in blobs.items()},
        "end": what.judged.end,
        "verdict": what.judged.verdict,
        "entries": len(journal.entries),
        "fingerprint": fingerprint(key),
    }


def _signer(parts: Parts) -> Parts:
    found = parts.values.get("sign")
    if not isinstance(found, dict):
        raise JobError("sign: an object is expected, which says who signs and with which key")
    return Parts(found, JobError)


def _tools(asked: Asked, by: Parts) -> Tools:
    """By what the browser judges; of the unit's sheet the digest of the bytes that the journal names."""
    sheets = [text(one.body, "sha256") for one in asked.state.of_kind("unit_sheet")]
    return Tools(
        engine=None if by.maybe("engine_sha256") is None else _sha256(by, "engine_sha256"),
        limits=_sha256(by, "limits_sha256"),
        unit_sheet=sheets[0] or "",
    )


def _sha256(parts: Parts, name: str) -> str:
    value = parts.text(name)
    if not is_sha256(value):
        raise JobError(f"{name}: 64 hex digits are expected")
    return value
