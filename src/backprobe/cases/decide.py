"""What two people have said differently is decided at the desk: an entry that names all that was said, and what holds.

Nothing that was said is changed. A place that holds one value (VIN, serial number, a tapped wire, a sheet) gets one; of
several corrections of one entry one stands.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.cases.may import Caller, Deed
from backprobe.cases.server_words import say
from backprobe.cases.tokens import fresh_id, now
from backprobe.cases.unit_claims import release_unit, settle_units
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.canonical import Body, Json
from backprobe.job.entry import Entry, read_entry
from backprobe.job.fold import JobState, fold
from backprobe.job.journal import Draft
from backprobe.job.kinds import CORRECTION, WITHDRAWN, text
from backprobe.job.lineage import Statement
from backprobe.job.slots import SHEET_SLOTS
from backprobe.store import entries

MOST_VALUE = 200
DECIDED = "decided at the desk"
NAMED_ON_SHEETS = ("vin", "serial")  # slots that a job's sheet fills too


@dataclass(frozen=True, slots=True)
class SlotDecision:
    """The one value of a slot; of sheets its digest."""

    slot: str
    value: str


@dataclass(frozen=True, slots=True)
class DisputeDecision:
    """Which of the statements in place of the entry `about` stands, by its id."""

    about: str
    stands: str


def decide(yard: Yard, caller: Caller, *, job_id: str, decision: SlotDecision | DisputeDecision) -> int:
    """Write what was decided; how many entries. Raises RefusedError where there is nothing of the kind to decide."""
    caller.must(Deed.DECIDE)
    at = now()
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        found = [read_entry(raw) for raw in entries.of_job(connection, caller.organisation, job_id=job_id)]
        state = fold(found)
        if isinstance(decision, SlotDecision):
            drafts = list(_of_slot(state, decision))
        else:
            drafts = [_of_dispute(state, decision, found={entry.id: entry for entry in found})]
        said = say(held, drafts, job_id=job_id, at=at)
        settle_units(held, job_id, at=at)
    return len(said)


def release(yard: Yard, caller: Caller, *, serial: str) -> str:
    """Let go of a unit that has left its vehicle; the job that had it. Raises RefusedError where none has it."""
    caller.must(Deed.DECIDE)
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        job_id = release_unit(held, serial.replace("\0", ""), at=now())
    if job_id is None:
        raise RefusedError("no job has a unit of this number", code="not_found")
    return job_id


def open_matters(state: JobState, found: dict[str, Entry]) -> dict[str, object]:
    """What there is to decide: slots with their values, disputes with what stands in each."""
    slots = [{"name": slot.name, "values": list(slot.values)} for slot in state.open_slots]
    disputes = [
        {"about": dispute.about, "standing": [_said(found[name]) for name in dispute.standing if name in found]}
        for dispute in state.disputes
    ]
    return {"slots": slots, "disputes": disputes}


def _said(entry: Entry) -> dict[str, object]:
    return {"id": entry.id, "kind": entry.kind, "device": entry.device, "at": entry.at, "body": entry.body}


def _of_slot(state: JobState, decision: SlotDecision) -> Iterator[Draft]:
    """The entries that leave a slot with one value."""
    slot = state.slots.get(decision.slot)
    if slot is None or not slot.is_open:
        raise RefusedError(f"nothing is open about {decision.slot!r} in this job", code="not_found")
    sheets = {name: kind for kind, name in SHEET_SLOTS.items()}
    if decision.slot in sheets:
        yield _of_sheets(state.of_kind(sheets[decision.slot]), decision)
        return
    if not 0 < len(decision.value) <= MOST_VALUE or not decision.value.isprintable():
        raise RefusedError(f"value: 1 to {MOST_VALUE} letters are expected", code="request")
    claims = [one for one in state.of_kind("claim") if text(one.body, "slot") == decision.slot]
    if claims:
        body: Body = {"slot": decision.slot, "value": decision.value}
        yield _correction(claims, kind="claim", body=body)
    if decision.slot in NAMED_ON_SHEETS:
        for one in state.of_kind("job"):
            if text(one.body, decision.slot) not in (None, decision.value):
                yield _correction([one], kind="job", body={**one.body, decision.slot: decision.value})


def _of_sheets(sheets: tuple[Statement, ...], decision: SlotDecision) -> Draft:
    chosen = next((one for one in sheets if text(one.body, "sha256") == decision.value), None)
    if chosen is None:
        raise RefusedError("value: the digest of one of the sheets is expected", code="request")
    return _correction(sheets, kind=chosen.kind or "", body=chosen.body)


def _of_dispute(state: JobState, decision: DisputeDecision, *, found: dict[str, Entry]) -> Draft:
    """The entry that names all that stands in one place, and says what one of them says."""
    dispute = next((one for one in state.disputes if one.about == decision.about), None)
    chosen = found.get(decision.stands)
    if dispute is None or chosen is None or decision.stands not in dispute.standing:
        raise RefusedError("nothing of this kind is disputed in this job", code="not_found")
    names: list[Json] = list(dispute.standing)
    if chosen.kind == WITHDRAWN:
        return Draft(id=fresh_id(), kind=WITHDRAWN, body={"entry": names, "why": DECIDED})
    corrects = chosen.kind == CORRECTION
    kind = text(chosen.body, "kind") if corrects else chosen.kind
    inner = chosen.body.get("body") if corrects else chosen.body
    body: Body = {"replaces": names, "kind": kind, "body": inner}
    return Draft(id=fresh_id(), kind=CORRECTION, body=body, blobs=chosen.blobs)


def _correction(replaced: list[Statement] | tuple[Statement, ...], *, kind: str, body: Body) -> Draft:
    names: list[Json] = [one.id for one in replaced]
    sha256 = text(body, "sha256")
    blobs = () if sha256 is None else (sha256,)
    return Draft(id=fresh_id(), kind=CORRECTION, body={"replaces": names, "kind": kind, "body": body}, blobs=blobs)
