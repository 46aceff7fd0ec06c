"""Entries from phones into the store, and back to phones: idempotent, in any order, with gaps."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from backprobe.cases.arrivals import Arrival, arrival
from backprobe.cases.may import Caller, Deed
from backprobe.cases.server_words import SERVER
from backprobe.cases.unit_claims import settle_units, touches_units
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.entry import Entry, digest
from backprobe.job.kinds import SIGN_OFF, text
from backprobe.store import entries, jobs, people, quarantine, signing_keys
from backprobe.store.entries import Held, Pulled
from backprobe.store.quarantine import SetAside

MOST_AT_ONCE = 500
KEPT, KNOWN, REFUSED, QUARANTINED = "kept", "known", "refused", "quarantined"
WITHDRAWN = "the phone was withdrawn; the lead decides"


@dataclass(frozen=True, slots=True)
class Result:
    """What became of one text: `kept`, `known`, `refused` or `quarantined`, and why where it was not kept."""

    id: str | None
    state: str
    code: str | None = None
    error: str | None = None


@dataclass(frozen=True, slots=True)
class Taken:
    """One result for each text in its order, when that was, and the cursor of the organisation's newest entry."""

    results: tuple[Result, ...]
    received_at: str
    cursor: int


@dataclass(frozen=True, slots=True)
class Page:
    """Entries after a cursor, the cursor to go on from, and whether there are more."""

    entries: tuple[Pulled, ...]
    cursor: int
    more: bool


def take_batch(yard: Yard, texts: Sequence[str], *, caller: Caller, at: str) -> Taken:
    """Take in a batch, in one transaction: what is answered is on the disk. Raises RefusedError and StoreError."""
    caller.must(Deed.HAND_IN)
    if len(texts) > MOST_AT_ONCE:
        raise RefusedError(f"{len(texts)} entries in one batch; at most {MOST_AT_ONCE}", code="too_large")
    arrived = [arrival(text) for text in texts]
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        results = tuple(_sorted_out(held, arrived, caller=caller))
        fresh = [each.entry for each, done in zip(arrived, results, strict=True) if done.state == KEPT and each.entry]
        _set_aside(held, arrived, results=results, caller=caller, at=at)
        keep(held, fresh, caller=caller, at=at)
        phone = caller.phone
        if phone is not None:
            people.seen(connection, phone.id, at=at)
        return Taken(results, at, entries.newest(connection, caller.organisation))


def keep(held: Held, fresh: Sequence[Entry], *, caller: Caller, at: str) -> None:
    """Write entries that are not known yet, and what follows from them for jobs and units."""
    if not fresh:
        return
    phone = None if caller.phone is None else caller.phone.id
    cursor = entries.add(held, fresh, received_at=at, phone=phone)
    counts = Counter(entry.job for entry in fresh)
    begun = entries.touch(held, counts, cursor=cursor, at=at)
    jobs.said(held.connection, held.organisation, jobs=counts, at=at)
    if caller.person is not None and caller.phone is not None:
        for job_id in begun:
            jobs.assign(held.connection, held.organisation, job_id=job_id, people=[caller.person])
    for job_id in dict.fromkeys(entry.job for entry in fresh if touches_units(entry)):
        settle_units(held, job_id, at=at)


def _sorted_out(held: Held, arrived: Sequence[Arrival], *, caller: Caller) -> Iterator[Result]:
    """What becomes of each text, before anything is written."""
    known = entries.known(held, [each.entry.id for each in arrived if each.entry is not None])
    mine = "" if caller.phone is None else caller.phone.id
    others = people.devices_of_others(held.connection, held.organisation, but=mine) | {SERVER}
    signers = _signers(held, arrived) if mine else {}
    for each in arrived:
        entry = each.entry
        if entry is None:
            yield Result(each.id, REFUSED, "journal", each.fault)
            continue
        before = known.get(entry.id)
        if before is not None:
            yield _met_before(entry, same=before == entry.digest)
        elif not caller.may(Deed.READ_DAY):
            yield Result(entry.id, QUARANTINED, "phone_withdrawn", WITHDRAWN)
        elif entry.device in others:
            yield Result(entry.id, REFUSED, "not_your_device", f"{entry.device!r} is the name of another device")
        elif signers.get(_key(entry), mine) != mine:
            yield Result(entry.id, REFUSED, "not_your_key", "this sign-off is by the key of another phone")
        else:
            known[entry.id] = entry.digest
            yield Result(entry.id, KEPT)


def _key(entry: Entry) -> str:
    """The public key that a sign-off names; empty where there is none."""
    return (text(entry.body, "key") or "") if entry.kind == SIGN_OFF else ""


def _signers(held: Held, arrived: Sequence[Arrival]) -> dict[str, str]:
    """The phones whose keys stand in the sign-offs that have arrived, by key."""
    keys = {_key(each.entry) for each in arrived if each.entry is not None} - {""}
    return signing_keys.phones_of(held.connection, held.organisation, keys=keys)


def _met_before(entry: Entry, *, same: bool) -> Result:
    if same:
        return Result(entry.id, KNOWN)
    return Result(entry.id, REFUSED, "id_taken", "another entry bears this id; that one stays as it is")


def _set_aside(held: Held, arrived: Sequence[Arrival], *, results: Iterable[Result], caller: Caller, at: str) -> None:
    """Keep what was not taken, for the lead."""
    aside = [
        SetAside(raw=each.raw, code=done.code or "", error=done.error or "", entry=each.id, job=each.job)
        for each, done in zip(arrived, results, strict=True)
        if done.state in (REFUSED, QUARANTINED)
    ]
    phone = None if caller.phone is None else caller.phone.id
    quarantine.set_aside(held.connection, held.organisation, items=aside, received_at=at, phone=phone)


def pull_page(yard: Yard, caller: Caller, *, after: int, limit: int, job_id: str | None) -> Page:
    """Entries after a cursor. A phone reads the jobs of its person. Raises RefusedError."""
    everything = caller.may(Deed.READ_ALL_JOBS)
    if not everything:
        caller.must(Deed.READ_OWN_JOBS)
    with yard.store.reading() as connection:
        found = entries.pull(
            connection,
            caller.organisation,
            after=after,
            limit=limit + 1,
            job_id=job_id,
            person=None if everything else caller.person,
        )
    shown = found[:limit]
    return Page(shown, shown[-1].cursor if shown else after, len(found) > limit)


def digest_of(text: str) -> str:
    """The digest of a text that was handed in as an entry."""
    return digest(text.encode("utf-8", "surrogatepass"))
