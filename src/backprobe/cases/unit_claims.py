"""Which vehicle a unit is in, settled as entries arrive: claim and refusal are entries that the server writes.

A unit is claimed by the serial number that stands in a job: on its sheet or scanned on the phone. One job in one
vehicle has it; a job in another vehicle is refused it and gets a finding. What the technicians said stays as it is.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.cases.server_words import SERVER, say
from backprobe.cases.tokens import fresh_id
from backprobe.job.canonical import Body
from backprobe.job.entry import Entry, read_entry
from backprobe.job.fold import fold
from backprobe.job.journal import Draft
from backprobe.job.kinds import CORRECTION, SIGN_OFF, UNIT_CLAIMED, UNIT_REFUSED, WITHDRAWN, text, texts
from backprobe.store import entries, units
from backprobe.store.entries import Held
from backprobe.store.units import Claim

NAMING = ("claim", "job")  # kinds that name a unit or a vehicle
LISTENED = (*NAMING, CORRECTION, WITHDRAWN, SIGN_OFF)
ABANDONED = "abandoned"
MOST_SERIAL = 200
NO_LONGER_NAMED = "the unit is no longer named here"
NOT_ELSEWHERE = "the unit is not in another vehicle any more"
RELEASED = "the lead says that the unit has left this vehicle"


@dataclass(frozen=True, slots=True)
class Said:
    """The units that a job names, and its vehicle's VIN where it is settled."""

    serials: frozenset[str]
    vin: str | None


def touches_units(entry: Entry) -> bool:
    """Whether an entry can change which units its job has."""
    if entry.kind == CORRECTION:
        return entry.version_known and entry.body.get("kind") in NAMING
    return entry.version_known and entry.device != SERVER and entry.kind in LISTENED


def plain_serial(serial: str) -> str:
    """A serial number as numbers are compared: without spaces, in capitals.

    >>> plain_serial(" ln2-00417 ")
    'LN2-00417'
    """
    return "".join(serial.split()).upper()


def settle_units(held: Held, job_id: str, *, at: str) -> None:
    """Bring the claims of a job to what its entries say; who waits for one of its units is asked again."""
    for serial in _settle(held, job_id, at=at):
        _ask_again(held, serial, at=at)


def release_unit(held: Held, serial: str, *, at: str) -> str | None:
    """Let go of a unit that has left its vehicle, whatever that job says; the job that had it, None where none had.

    The job does not claim it again. Whoever waits for the unit is asked next.
    """
    found = units.holder(held.connection, held.organisation, serial=plain_serial(serial))
    if found is None:
        return None
    units.release(held.connection, held.organisation, serial=found.serial, job=found.job)
    _take_back(held, found.job, serial=found.serial, kind=UNIT_CLAIMED, why=RELEASED, at=at)
    _ask_again(held, found.serial, at=at)
    return found.job


def _ask_again(held: Held, serial: str, *, at: str) -> None:
    for waiting in units.waiting_for(held.connection, held.organisation, serial=serial):
        _settle(held, waiting, at=at)


def _settle(held: Held, job_id: str, *, at: str) -> tuple[str, ...]:
    """The same for one job; the units that it has, or had, to do with."""
    connection, organisation = held.connection, held.organisation
    said = _said(held, job_id)
    has = {claim.serial for claim in units.held_by(connection, organisation, job=job_id)}
    waits = units.waits_of(connection, organisation, job=job_id)
    freed = tuple(sorted(has - said.serials))
    for serial in freed:
        units.release(connection, organisation, serial=serial, job=job_id)
        _take_back(held, job_id, serial=serial, kind=UNIT_CLAIMED, why=NO_LONGER_NAMED, at=at)
    if said.vin is not None:
        units.name_vehicle(connection, organisation, job=job_id, vehicle=said.vin)
    for serial in sorted(set(waits) - said.serials):
        _wait_no_more(held, job_id, serial=serial, at=at)
    for serial in sorted(said.serials - has):
        _claim(held, Claim(serial, job_id, said.vin), waits=serial in waits, at=at)
    return tuple(sorted(has | said.serials))


def _claim(held: Held, wanted: Claim, *, waits: bool, at: str) -> None:
    """Claim one unit; what the server has to say about it."""
    holder = units.claim(held.connection, held.organisation, wanted=wanted)
    if holder.job == wanted.job or (wanted.vehicle is not None and holder.vehicle == wanted.vehicle):
        if waits:
            _wait_no_more(held, wanted.job, serial=wanted.serial, at=at)
        if holder.job == wanted.job:
            body: Body = {"serial": wanted.serial, "vehicle": wanted.vehicle}
            say(held, [Draft(id=fresh_id(), kind=UNIT_CLAIMED, body=body)], job_id=wanted.job, at=at)
    elif not waits:
        body = {"serial": wanted.serial, "held_by": holder.job, "vehicle": holder.vehicle}
        draft = Draft(id=fresh_id(), kind=UNIT_REFUSED, body=body)
        say(held, [draft], job_id=wanted.job, at=at)
        units.wait(held.connection, held.organisation, serial=wanted.serial, job=wanted.job, entry=draft.id)


def _wait_no_more(held: Held, job_id: str, *, serial: str, at: str) -> None:
    _take_back(held, job_id, serial=serial, kind=UNIT_REFUSED, why=NOT_ELSEWHERE, at=at)
    units.wait_no_more(held.connection, held.organisation, serial=serial, job=job_id)


def _take_back(held: Held, job_id: str, *, serial: str, kind: str, why: str, at: str) -> None:
    """Withdraw what the server said of a unit in a job and has not withdrawn yet."""
    gone = {name for entry in _of_server(held, job_id, kind=WITHDRAWN) for name in texts(entry.body, "entry")}
    drafts = [
        Draft(id=fresh_id(), kind=WITHDRAWN, body={"entry": entry.id, "why": why})
        for entry in _of_server(held, job_id, kind=kind)
        if text(entry.body, "serial") == serial and entry.id not in gone
    ]
    say(held, drafts, job_id=job_id, at=at)


def _of_server(held: Held, job_id: str, *, kind: str) -> list[Entry]:
    """What the server has said of one kind in a job."""
    raws = entries.of_job(held.connection, held.organisation, job_id=job_id, kinds=[kind])
    return [entry for entry in map(read_entry, raws) if entry.device == SERVER]


def _released(held: Held, job_id: str) -> frozenset[str]:
    """The units that the lead has let go of in a job."""
    taken_back = {
        name
        for entry in _of_server(held, job_id, kind=WITHDRAWN)
        if text(entry.body, "why") == RELEASED
        for name in texts(entry.body, "entry")
    }
    claims = _of_server(held, job_id, kind=UNIT_CLAIMED) if taken_back else []
    return frozenset(text(entry.body, "serial") or "" for entry in claims if entry.id in taken_back)


def _said(held: Held, job_id: str) -> Said:
    """What the entries of a job come to, as far as units are concerned; nothing of a job that was abandoned."""
    raws = entries.of_job(held.connection, held.organisation, job_id=job_id, kinds=LISTENED)
    found = [read_entry(raw) for raw in raws]
    ends = [text(entry.body, "end") for entry in found if entry.kind == SIGN_OFF]
    if ends and ends[-1] == ABANDONED:
        return Said(frozenset(), None)
    slots = fold(found).slots
    serials = slots["serial"].values if "serial" in slots else ()
    plain = {name for serial in serials if 0 < len(name := plain_serial(serial)) <= MOST_SERIAL and name.isprintable()}
    plain -= _released(held, job_id)
    vin = slots["vin"].value if "vin" in slots else None
    return Said(frozenset(plain), None if vin is None else plain_serial(vin)[:MOST_SERIAL].replace("\0", ""))
