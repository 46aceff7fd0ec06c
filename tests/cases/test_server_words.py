"""What the server says in a job is a chain like any other."""

from __future__ import annotations

from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.server_words import SERVER, say
from backprobe.cases.tokens import fresh_id
from backprobe.cases.yard import Yard
from backprobe.job.journal import Draft, read_journal
from backprobe.store import entries, jobs


def test_entries_follow_on_one_another_in_each_job(yard: Yard) -> None:
    """Two in one job, one in another: numbers 1, 2 and 1; no fault in either journal."""
    body = {"serial": "LN2-1", "vehicle": None}
    with yard.store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        for job in ("a", "a", "b"):
            say(held, [Draft(id=fresh_id(), kind="unit_claimed", body=body)], job_id=job, at=AT)
        assert say(held, [], job_id="c", at=AT) == ()
        journals = {job: read_journal(entries.of_job(connection, ORGANISATION, job_id=job)) for job in "abc"}
        rows = {job: jobs.row_of(connection, ORGANISATION, job_id=job) for job in "abc"}
    assert [(entry.seq, entry.device) for entry in journals["a"].entries] == [(1, SERVER), (2, SERVER)]
    assert [entry.seq for entry in journals["b"].entries] == [1]
    assert all(journal.faults == () for journal in journals.values())
    assert rows["c"] is None
    assert rows["a"] is not None
    assert (rows["a"]["entries"], rows["a"]["cursor"]) == (2, 2)
