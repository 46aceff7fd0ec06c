"""Texts that somebody handed in as entries: which of them are entries that can be kept."""

from __future__ import annotations

import json
from dataclasses import dataclass

from backprobe.errors import JournalError, shortened
from backprobe.job.entry import Entry, read_entry

MOST_NAME = 200  # letters of a job's id and of a device's name: they stand in the database's indexes
MOST_SEQ = 2**53 - 1


@dataclass(frozen=True, slots=True)
class Arrival:
    """A text with the entry that it is, or with why it is none (`fault`), and what ids can be read in it."""

    raw: bytes
    entry: Entry | None
    fault: str | None = None
    id: str | None = None
    job: str | None = None


def arrival(text: str) -> Arrival:
    """What a text holds."""
    raw = text.encode("utf-8", "surrogatepass")
    try:
        entry = read_entry(raw)
    except JournalError as fault:
        return Arrival(raw, None, _shown(fault.message), *_ids(raw))
    why = _unfit(entry)
    return Arrival(raw, entry if why is None else None, why, entry.id, _plain(entry.job) if why else entry.job)


def _unfit(entry: Entry) -> str | None:
    """Why the store cannot keep an entry under its names; None where it can."""
    for name, value in (("job", entry.job), ("device", entry.device)):
        if len(value) > MOST_NAME or not value.isprintable():
            return f"entry.{name}: {shortened(value)!r}; expected at most {MOST_NAME} printable letters"
    if entry.seq > MOST_SEQ:
        return f"entry.seq: {entry.seq}; expected a number up to {MOST_SEQ}"
    return None


def _ids(raw: bytes) -> tuple[str | None, str | None]:
    """The ids of entry and job in a text that is no entry, for whoever looks at it."""
    try:
        values = json.loads(raw)
    except (ValueError, RecursionError):
        return None, None
    found = values if isinstance(values, dict) else {}
    return _plain(found.get("id")), _plain(found.get("job"))


def _shown(message: str) -> str:
    """A message in letters that every database takes: it may quote what was handed in."""
    return message.replace("\0", " ").encode("utf-8", "replace").decode("utf-8")


def _plain(value: object) -> str | None:
    return shortened(value) if isinstance(value, str) and value.isprintable() else None
