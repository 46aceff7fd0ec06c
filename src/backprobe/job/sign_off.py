"""A sign-off: what somebody puts a name to when a job is handed over.

It is an entry of kind `sign_off`. Its body holds the head of each device's chain, and with it every entry before; the
digests of the findings that were shown, of how the job ended, of the engine, of all limits and of the unit's sheet; the
signer's public key; and a signature over the bytes of this very entry with an empty signature in it. So each byte
of the sign-off is signed, and through the digests each byte of what it covers. See docs/decisions/0002.

Signing and checking a signature are done elsewhere: nothing here knows more than bytes and digests.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from backprobe.errors import JournalError
from backprobe.job.canonical import Body, Json, canonical
from backprobe.job.chain import Head, heads
from backprobe.job.entry import Entry, digest
from backprobe.job.kinds import SIGN_OFF, misfit, text, whole

UNSIGNED = ""
ATTACHED = ("signed-findings.json", "signed-hand-over.json", "signed-entries.txt")


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What was judged from the entries, and by what: `end` and `verdict` in words, all else as sha256.

    `findings` and `hand_over` are those of the blobs that hold them (`job.shown`), `engine` that of the engine's
    source, None where that was not at hand, `limits` that of all limits (`job.limits_text`), `unit_sheet` that of the
    sheet's bytes.
    """

    end: str
    verdict: str
    findings: str
    hand_over: str
    engine: str | None
    limits: str
    unit_sheet: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOff:
    """A sign-off as read from its `entry`; `key` is the public key in hex, `signature` as well."""

    entry: Entry
    heads: Mapping[str, Head]
    entries: int
    entries_sha256: str
    order_sha256: str
    judged: Judged
    key: str
    fingerprint: str
    signature: str

    @property
    def blobs(self) -> dict[str, str]:
        """The digests of the files it was made over, by the names under which a record carries them."""
        return dict(zip(ATTACHED, (self.judged.findings, self.judged.hand_over, self.order_sha256), strict=True))

    def covers(self, entry: Entry) -> bool:
        """Whether `entry` has its place before this sign-off, or is this sign-off."""
        head = self.heads.get(entry.device)
        return entry.id == self.entry.id or (head is not None and entry.seq <= head.seq)


def digests_text(entries: Iterable[Entry]) -> bytes:
    """The digests of `entries`, one a line, in the order given."""
    return b"".join(entry.digest.encode() + b"\n" for entry in entries)


def by_device(entries: Iterable[Entry]) -> list[Entry]:
    """The entries in the order in which merged journals are written: by device (code points), then number."""
    return sorted(entries, key=lambda entry: (entry.device, entry.seq, entry.id))


def fingerprint(key: str) -> str:
    """The sha256, in hex, of the 32 bytes of a public key given in hex."""
    return hashlib.sha256(bytes.fromhex(key)).hexdigest()


def grouped(hex_digits: str) -> str:
    """Hex digits in groups of four, to be read out and compared.

    >>> grouped("0123456789abcdef")
    '0123 4567 89ab cdef'
    """
    return " ".join(hex_digits[at : at + 4] for at in range(0, len(hex_digits), 4))


def unsigned_body(entries: Iterable[Entry], judged: Judged, *, key: str) -> Body:
    """The body that covers `entries`, which stand in this order, with an empty signature."""
    stood = tuple(entries)
    last: list[Json] = [[device, head.seq, head.digest] for device, head in heads(stood).items()]
    return {
        "end": judged.end,
        "verdict": judged.verdict,
        "heads": last,
        "entries": len(stood),
        "entries_sha256": digest(digests_text(by_device(stood))),
        "order_sha256": digest(digests_text(stood)),
        "findings_sha256": judged.findings,
        "hand_over_sha256": judged.hand_over,
        "engine_sha256": judged.engine,
        "limits_sha256": judged.limits,
        "unit_sheet_sha256": judged.unit_sheet,
        "key": key,
        "fingerprint": fingerprint(key),
        "signature": UNSIGNED,
    }


def bytes_to_sign(entry: Entry) -> bytes:
    """The bytes of a sign-off with an empty signature in it: what is signed, and what a signature is held against."""
    return canonical(entry.as_json() | {"body": entry.body | {"signature": UNSIGNED}})


def signed(entry: Entry, signature: str) -> Entry:
    """The sign-off with its signature (hex) in it."""
    return replace(entry, body=entry.body | {"signature": signature})


def read_sign_off(entry: Entry) -> SignOff:
    """The sign-off that `entry` holds. Raises JournalError where it is none, or says one thing twice."""
    body = entry.body
    why = misfit(entry.kind, body) if entry.kind == SIGN_OFF and entry.version_known else "this is no sign-off"
    last = _heads(body) if why is None else {}
    if why is None and len(last) != len(_list(body)):
        why = "heads: one device is named twice"
    if why is not None:
        raise JournalError(f"{entry}: {why}")
    return SignOff(
        entry=entry,
        heads=last,
        entries=whole(body, "entries") or 0,
        judged=Judged(
            end=_said(body, "end"),
            verdict=_said(body, "verdict"),
            findings=_said(body, "findings_sha256"),
            hand_over=_said(body, "hand_over_sha256"),
            engine=text(body, "engine_sha256"),
            limits=_said(body, "limits_sha256"),
            unit_sheet=_said(body, "unit_sheet_sha256"),
        ),
        **{name: _said(body, name) for name in ("entries_sha256", "order_sha256", "key", "fingerprint", "signature")},
    )


def _said(body: Body, name: str) -> str:
    return text(body, name) or ""


def _list(body: Body) -> list[Json]:
    value = body.get("heads")
    return value if isinstance(value, list) else []


def _heads(body: Body) -> dict[str, Head]:
    found = {}
    for device, seq, last in (item for item in _list(body) if isinstance(item, list)):
        found[str(device)] = Head(seq if isinstance(seq, int) else 0, str(last))
    return found
