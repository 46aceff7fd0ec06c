"""Files deleted on purpose, so that a person's data can go: the entries that name them stay, and no digest breaks."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.cases.described import plain
from backprobe.cases.may import Caller, Deed
from backprobe.cases.server_words import say
from backprobe.cases.tokens import fresh_id, now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.canonical import Body
from backprobe.job.journal import Draft
from backprobe.job.kinds import ERASED
from backprobe.store import blobs, entries, jobs
from backprobe.store.entries import Held

FORGOTTEN_S = 30 * 86_400  # what a phone has not gone on with for so long it begins again
NOT_SHOWN = "the reason was not given in letters"


@dataclass(frozen=True, slots=True)
class Erasing:
    """The job, the digests of its files that are to go, and why."""

    job_id: str
    digests: tuple[str, ...]
    why: str


def erase(yard: Yard, caller: Caller, *, wanted: Erasing) -> int:
    """Delete files of a job and write that into its journal; how many. Raises RefusedError with nothing deleted."""
    caller.must(Deed.ERASE)
    digests, at = tuple(dict.fromkeys(wanted.digests)), now()
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        if jobs.row_of(connection, caller.organisation, job_id=wanted.job_id) is None:
            raise RefusedError("there is no such job", code="not_found")
        for sha256 in digests:
            _must_be_its_own(held, sha256, job_id=wanted.job_id)
        body: Body = {"blobs": list(digests), "why": plain(wanted.why) or NOT_SHOWN}
        say(held, [Draft(id=fresh_id(), kind=ERASED, body=body)], job_id=wanted.job_id, at=at)
        blobs.note_erased(connection, caller.organisation, digests=digests, at=at)
    _delete(yard, digests)
    return len(digests)


def _must_be_its_own(held: Held, sha256: str, *, job_id: str) -> None:
    """Raise RefusedError for a file that is not this job's, or another's too: a unit's sheet is no person's data."""
    uses = entries.jobs_of_blob(held.connection, held.organisation, sha256=sha256)
    if job_id not in uses:
        raise RefusedError("no entry of this job names that file", code="not_found")
    if len(uses) > 1:
        raise RefusedError("other jobs rest on that file too; it stays", code="not_allowed")


def tidy(yard: Yard) -> None:
    """What a killed server may have left: files that were to be deleted, and pieces that nobody goes on with."""
    with yard.store.reading() as connection:
        digests = blobs.erased(connection, yard.organisation)
    _delete(yard, digests)
    yard.blobs.forget(older_than_s=FORGOTTEN_S)


def _delete(yard: Yard, digests: tuple[str, ...]) -> None:
    for sha256 in digests:
        yard.blobs.erase(sha256)
        (yard.made / f"{sha256}.jpg").unlink(missing_ok=True)
