"""One entry of the journal: what was said, by which device, and its place in that device's chain.

An entry is its bytes. What this version understands is read into the fields; what it does not understand, a later
version or an unknown kind, is kept byte for byte and handed on.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeAlias

from backprobe.errors import JournalError, shortened
from backprobe.job.canonical import Body, canonical, parsed

VERSION = 1
MOST_BYTES = 64_000
FRAME = ("v", "id", "job", "kind", "device", "seq", "prev")  # what every version keeps
FIELDS = ("v", "id", "job", "kind", "at", "device", "seq", "prev", "by", "engine", "body", "blobs")

_UUID = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}", re.ASCII)
_SHA256 = re.compile(r"[0-9a-f]{64}", re.ASCII)
_KIND = re.compile(r"[a-z][a-z0-9_]{0,39}", re.ASCII)
_TIME = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?(Z|[+-]\d\d:\d\d)", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One item of evidence in its place.

    `v` is the version of the form, `id` a UUID, `job` the job it belongs to, `kind` what `body` holds, `at` what the
    device's clock said (RFC 3339, null where unknown), `seq` counts per `device` from 1, `prev` is the digest of that
    device's entry before, `by` the id of the `person` entry of whoever did it (never a name), `engine` the version that
    wrote it, `blobs` the digests of files that belong to it. `raw` is the entry exactly as stored, without line end.

    Making one checks every field and raises JournalError. An entry of a later version comes only from `read_entry`.
    """

    v: int = VERSION
    id: str
    job: str
    kind: str
    at: str | None = None
    device: str
    seq: int
    prev: str | None
    by: str | None = None
    engine: str
    body: Body
    blobs: tuple[str, ...] = ()
    raw: bytes = field(default=b"", repr=False)

    def __post_init__(self) -> None:
        _check(self, _FRAME_RULES)
        if self.v == VERSION:
            _check(self, _VERSION_1_RULES)
            object.__setattr__(self, "raw", _sized(canonical(self.as_json())))
        elif not self.raw:
            raise JournalError(f"an entry of version {self.v} cannot be made here, only handed on; expected {VERSION}")

    def as_json(self) -> dict[str, object]:
        """The entry as JSON values."""
        values = {name: getattr(self, name) for name in FIELDS}
        return values | {"blobs": list(self.blobs)}

    @property
    def version_known(self) -> bool:
        """Whether this version of the product knows how to read the entry's body."""
        return self.v == VERSION

    @property
    def digest(self) -> str:
        """The sha256 of the entry's bytes, in hex."""
        return digest(self.raw)

    def __str__(self) -> str:
        return f"entry {self.id} ({self.kind}, number {self.seq} of {self.device!r})"


def digest(entry_bytes: bytes) -> str:
    """The sha256 of an entry's bytes (without line end) in hex.

    >>> digest(b"abc")[:16]
    'ba7816bf8f01cfea'
    """
    return hashlib.sha256(entry_bytes).hexdigest()


def read_entry(raw: bytes) -> Entry:
    """The entry that `raw` (one line without its end) holds; `entry.raw == raw` always.

    Every version keeps the `FRAME`, so that the chain can be checked without understanding the rest. Raises
    JournalError where the frame is missing or wrong, or an entry of a known version is not in its canonical form.
    """
    values = parsed(_sized(raw))
    if not isinstance(values, dict):
        raise JournalError("not readable as an entry: expected a table in braces")
    v = values.get("v")
    if v != VERSION or isinstance(v, bool):
        return _later(values, raw)
    if set(values) != set(FIELDS):
        odd = sorted(set(values) ^ set(FIELDS))
        raise JournalError(f"not an entry of version {VERSION}: missing or surplus: {', '.join(map(shortened, odd))}")
    if not isinstance(values["blobs"], list):
        raise JournalError("entry.blobs: expected a list of digests")
    entry = Entry(**values | {"blobs": tuple(values["blobs"])})
    if entry.raw != raw:
        raise JournalError(f"{entry}: not written in the one form that entries have; it was altered after writing")
    return entry


def _later(values: dict[str, Any], raw: bytes) -> Entry:
    """An entry of a version that is not understood here: the frame is read, the rest only carried."""
    missing = [name for name in FRAME if name not in values]
    if missing:
        raise JournalError(f"not an entry of any version: missing: {', '.join(missing)}")
    at, by, engine = (values.get(name) for name in ("at", "by", "engine"))
    body, blobs = values.get("body"), values.get("blobs")
    return Entry(
        **{name: values[name] for name in FRAME},
        at=at if isinstance(at, str) else None,
        by=by if isinstance(by, str) else None,
        engine=engine if isinstance(engine, str) else "",
        body=body if isinstance(body, dict) else {},
        blobs=tuple(blob for blob in blobs if is_sha256(blob)) if isinstance(blobs, list) else (),
        raw=raw,
    )


def is_sha256(value: object) -> bool:
    """Whether `value` is a sha256 in lower-case hex."""
    return isinstance(value, str) and _SHA256.fullmatch(value) is not None


def _sized(raw: bytes) -> bytes:
    if len(raw) > MOST_BYTES:
        raise JournalError(f"an entry of {len(raw)} bytes is too large: at most {MOST_BYTES}; larger things are blobs")
    return raw


def _whole(value: object) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and value >= 1


def _text(value: object) -> bool:
    return isinstance(value, str) and value != ""


def _digests(value: object) -> bool:
    return isinstance(value, tuple) and all(map(is_sha256, value)) and len(set(value)) == len(value)


def _like(pattern: re.Pattern[str], *, or_null: bool = False) -> Callable[[object], bool]:
    return lambda value: (or_null and value is None) or (isinstance(value, str) and bool(pattern.fullmatch(value)))


_Rules: TypeAlias = Mapping[str, tuple[Callable[[object], bool], str]]
_FRAME_RULES: _Rules = {
    "v": (_whole, "a whole number from 1"),
    "id": (_like(_UUID), "a UUID in lower case"),
    "job": (_text, "the job's id"),
    "kind": (_like(_KIND), "a word in lower case"),
    "device": (_text, "the device's name"),
    "seq": (_whole, "a whole number from 1"),
    "prev": (_like(_SHA256, or_null=True), "the sha256 of the device's entry before"),
}
_VERSION_1_RULES: _Rules = {
    "at": (_like(_TIME, or_null=True), "a time as 2026-05-04T09:30:00Z, or null"),
    "by": (_like(_UUID, or_null=True), "the id of a person's entry, or null"),
    "engine": (_text, "the version that wrote the entry"),
    "body": (lambda value: isinstance(value, dict), "a table"),
    "blobs": (_digests, "sha256 digests, each once"),
}


def _check(entry: Entry, rules: _Rules) -> None:
    """Raise JournalError for the first field that breaks its rule."""
    for name, (fits, expected) in rules.items():
        _expect(fits(getattr(entry, name)), entry, name=name, expected=expected)
    first = entry.seq == 1
    _expect((entry.prev is None) == first, entry, name="prev", expected="null for the first entry of a device alone")


def _expect(fits: bool, entry: Entry, *, name: str, expected: str) -> None:
    if not fits:
        raise JournalError(f"entry.{name}: {shortened(repr(getattr(entry, name)))}; expected {expected}")
