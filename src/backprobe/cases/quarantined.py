"""What is in quarantine, and what the lead decides: take it into the journal, or leave it out. The bytes stay."""

from __future__ import annotations

from sqlalchemy import RowMapping

from backprobe.cases.arrivals import arrival
from backprobe.cases.may import Caller, Deed
from backprobe.cases.sync import keep
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.entry import Entry
from backprobe.store import blobs, entries, jobs, people, quarantine
from backprobe.store.entries import Held
from backprobe.tongues.speaker import Say, plain

TAKE, LEAVE = "take", "leave"


def list_quarantine(yard: Yard, caller: Caller, *, say: Say = plain) -> list[dict[str, object]]:
    """What nobody has decided on yet, why it stands there said as `say` has it. Raises RefusedError."""
    caller.must(Deed.DECIDE_QUARANTINE)
    with yard.store.reading() as connection:
        rows = quarantine.listed(connection, caller.organisation)
        labels = {row["id"]: row["label"] or row["device"] for row in people.phones(connection, caller.organisation)}
    items = [_item(row, labels.get(row["phone"])) for row in rows]
    return [{**item, "error": say(str(item["error"]))} for item in items]


def _item(row: RowMapping, phone: str | None) -> dict[str, object]:
    known = {name: row[name] for name in ("number", "code", "error", "job", "received_at")}
    return {**known, "id": row["entry"], "phone": phone, "text": row["raw"].decode("utf-8", "replace")}


def decide(yard: Yard, caller: Caller, *, number: int, decision: str) -> None:
    """Decide on one item. Raises RefusedError where it cannot be taken in."""
    caller.must(Deed.DECIDE_QUARANTINE)
    at = now()
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        row = quarantine.one(connection, caller.organisation, number=number)
        if row is None or row["decision"] is not None:
            raise RefusedError("there is nothing of this number to decide on", code="not_found")
        if decision == TAKE:
            _take(held, row, caller=caller, at=at)
        quarantine.decide(connection, caller.organisation, number=number, decision=decision, at=at)


def _take(held: Held, row: RowMapping, *, caller: Caller, at: str) -> None:
    """Take an entry in, with the files it names, whoever sent them."""
    entry = arrival(row["raw"].decode("utf-8", "replace")).entry
    if entry is None or entry.raw != row["raw"]:
        raise RefusedError("this is no entry: it can only be left out", code="journal")
    before = entries.known(held, [entry.id]).get(entry.id)
    if before is not None and before != entry.digest:
        raise RefusedError("another entry bears this id; that one stays as it is", code="id_taken")
    if before is None:
        keep(held, [entry], caller=caller, at=at)
    _open_files(held, entry)


def _open_files(held: Held, entry: Entry) -> None:
    blobs.take_out_of_quarantine(held.connection, held.organisation, digests=entry.blobs)
    jobs.judge_again(held.connection, held.organisation, jobs=[entry.job])
