"""What the desk sees of jobs: the list, and one of them with everything in it."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

from sqlalchemy import Connection, RowMapping

from backprobe.cases.day import job_json
from backprobe.cases.decide import open_matters
from backprobe.cases.held_job import HeldJob
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Deed
from backprobe.cases.yard import Yard
from backprobe.drawings.margin_bar import NARROWEST, margin_bar
from backprobe.errors import RefusedError
from backprobe.job.answer import judgement_json
from backprobe.job.entry import digest, read_entry
from backprobe.job.journal_door import matters
from backprobe.job.judge import JobJudgement
from backprobe.job.kinds import text
from backprobe.job.pictures import pictures_of
from backprobe.job.told import finding_said, in_words
from backprobe.store import blobs, entries, jobs
from backprobe.store.jobs import Wanted
from backprobe.tongues.speaker import Say, plain

MOST_ENTRIES = 500  # of one job, the newest: the journal itself is fetched by cursor
MOST_CURSOR = 2**53 - 1


def list_jobs(yard: Yard, caller: Caller, *, wanted: Wanted, say: Say = plain) -> dict[str, object]:
    """A page of the list, as in docs/api.md, the engine's sentences as `say` has them. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    if wanted.after is not None and not _is_place(wanted.after):
        raise RefusedError("after: what an answer gave as `after` is expected", code="request")
    with yard.store.reading() as connection:
        found = jobs.listed(connection, caller.organisation, wanted=replace(wanted, limit=wanted.limit + 1))
        shown = found[: wanted.limit]
        people = jobs.people_of(connection, caller.organisation, jobs=[row["id"] for row in shown])
        counts = jobs.state_counts(connection, caller.organisation)
    rows = [row_json(row, people.get(row["id"], []), say=say) for row in shown]
    return {
        "jobs": rows,
        "more": len(found) > len(shown),
        "after": jobs.place_of(shown[-1]) if shown else None,
        "counts": counts,
    }


def row_json(row: RowMapping, people: list[dict[str, str]], *, say: Say = plain) -> dict[str, object]:
    """A row of the list."""
    known = {name: row[name] for name in ("verdict", "fails", "thin", "open", "next", "entries", "updated_at")}
    upcoming = row["next"] and say(row["next"])
    return {**job_json(row), **known, "next": upcoming, "yard": row["yard"], "people": people}


def _is_place(text_given: str) -> bool:
    """Whether a text is a place in the list."""
    try:
        place = json.loads(text_given)
    except (ValueError, RecursionError):
        return False
    if not isinstance(place, list) or len(place) != 3:
        return False
    *numbers, name = place
    whole = all(type(each) is int and 0 <= each <= MOST_CURSOR for each in numbers)
    return whole and isinstance(name, str) and name.isprintable()


def one_job(yard: Yard, caller: Caller, *, job_id: str, say: Say = plain) -> dict[str, object]:
    """One job with everything in it, the engine's sentences as `say` has them. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    held = judge_again(yard, caller.organisation, job_id=job_id)
    if held is None:
        raise RefusedError("there is no such job", code="not_found")
    with yard.store.reading() as connection:
        row = jobs.row_of(connection, caller.organisation, job_id=job_id)
        assert row is not None
        people = jobs.people_of(connection, caller.organisation, jobs=[job_id]).get(job_id, [])
        recent = entries.recent(connection, caller.organisation, job_id=job_id, limit=MOST_ENTRIES)
        photos = [_photo(connection, caller, body=one.body) for one in held.state.of_kind("photo")]
    return {
        **_engines(held, say),
        "job": row_json(row, people, say=say),
        "entries": [_entry(each) for each in recent],
        "photos": photos,
        "to_decide": open_matters(held.state, {entry.id: entry for entry in held.entries}),
        "faults": [say(str(fault)) for fault in held.journal.faults],
    }


def _engines(held: HeldJob, say: Say) -> dict[str, object]:
    """What the engine says of a job: the answer with its pictures, or why there is none, and what is left open."""
    judged = held.judged
    said: dict[str, object] = {
        "answer": _answer(held),
        "drawings": {} if judged is None else pictures_of(judged),
        "bars": {} if judged is None else bars_of(judged, say),
        "open": list(matters(held.state)),
    }
    said = said if say is plain else in_words(said, say)
    return {**said, "fault": held.fault and say(held.fault)}


def _answer(held: HeldJob) -> dict[str, object] | None:
    """The judgement as `judge --json` gives it; None where the job cannot be judged yet."""
    if held.judged is None:
        return None
    raw = b"".join(entry.raw + b"\n" for entry in held.entries)
    state = {"entries": len(held.entries), "sha256": digest(raw)}
    return {**judgement_json(held.judged), "job": held.id, "journal": state}


def bars_of(judged: JobJudgement, say: Say = plain) -> dict[str, str]:
    """The margin bars as SVG, by the finding's place in the list; findings without a limit have none."""
    findings = [finding_said(each, say) for each in judged.findings]
    return {str(at): margin_bar(each, width=NARROWEST) for at, each in enumerate(findings) if each.limit is not None}


def _entry(row: RowMapping) -> dict[str, object]:
    """An entry as the desk shows it: what was said, when, and by whose phone."""
    entry = read_entry(row["raw"])
    said: dict[str, object] = {name: getattr(entry, name) for name in ("id", "kind", "device", "seq", "at", "body")}
    return {**said, "cursor": row["cursor"], "received_at": row["received_at"], "person": row["person"]}


def _photo(connection: Connection, caller: Caller, *, body: dict[str, Any]) -> dict[str, object]:
    sha256 = text(body, "sha256") or ""
    row = blobs.noted(connection, caller.organisation, sha256=sha256)
    kept = row is not None and not row["quarantined"] and row["type"] != blobs.ERASED
    return {"file": text(body, "file"), "sha256": sha256, "shows": text(body, "shows"), "kept": kept}
