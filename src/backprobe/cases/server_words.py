"""What the server itself says in a journal: entries of its own device, following on one another in each job."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe import __version__
from backprobe.job.entry import Entry
from backprobe.job.journal import Draft
from backprobe.store import entries
from backprobe.store.entries import Held

SERVER = "server"  # its name in every journal


def say(held: Held, drafts: Sequence[Draft], *, job_id: str, at: str) -> tuple[Entry, ...]:
    """Write what the server has to say in a job, behind what it has said there before."""
    last = entries.head(held.connection, held.organisation, job_id=job_id, device=SERVER)
    seq, prev = last or (0, None)
    said: list[Entry] = []
    for draft in drafts:
        seq += 1
        entry = Entry(
            id=draft.id, job=job_id, kind=draft.kind, at=at, device=SERVER, seq=seq, prev=prev, by=draft.by,
            engine=__version__, body=draft.body, blobs=draft.blobs,
        )  # fmt: skip
        said.append(entry)
        prev = entry.digest
    if said:
        cursor = entries.add(held, said, received_at=at, phone=None)
        entries.touch(held, {job_id: len(said)}, cursor=cursor, at=at)
    return tuple(said)
