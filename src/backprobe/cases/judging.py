"""Jobs whose entries came after they were judged are judged again, one after the other, in the background."""

from __future__ import annotations

import logging
import threading

from backprobe.cases.described import describe_job
from backprobe.cases.held_job import HeldJob, held_job
from backprobe.cases.reports_in import deliver_waiting
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import BackprobeError
from backprobe.store import jobs

AT_ONCE = 20
LOOK_S = 1.0
QUIET_S = 2.0  # a job to which entries are being added is judged when there is a pause
_log = logging.getLogger(__name__)


def judge_again(yard: Yard, organisation: str, *, job_id: str) -> HeldJob | None:
    """Judge a job and write its row; None where there is no such job."""
    with yard.store.reading() as connection:
        row = jobs.row_of(connection, organisation, job_id=job_id)
        if row is None:
            return None
        held = held_job(yard, connection, organisation=organisation, job_id=job_id)
    if row["judged_cursor"] < row["cursor"]:
        with yard.store.writing() as connection:
            describe_job(connection, organisation, held=held, cursor=row["cursor"])
    return held


def judge_waiting(yard: Yard) -> int:
    """Judge some of the jobs that wait for it; how many."""
    with yard.store.reading() as connection:
        waiting = jobs.to_be_judged(connection, limit=AT_ONCE, before=now(-QUIET_S))
    for organisation, job_id in waiting:
        try:
            judge_again(yard, organisation, job_id=job_id)
        except BackprobeError:
            raise
        except Exception:  # noqa: BLE001 - a fault of the engine in one job must not keep the others waiting
            _log.exception("job %r cannot be judged", job_id)
            _give_up(yard, organisation, job_id=job_id)
    return len(waiting)


def _give_up(yard: Yard, organisation: str, *, job_id: str) -> None:
    """Leave a job as it is until something new arrives for it."""
    with yard.store.writing() as connection:
        row = jobs.row_of(connection, organisation, job_id=job_id)
        if row is not None:
            values = {"judged_cursor": row["cursor"], "next": "this job could not be judged: see the server's log"}
            jobs.describe(connection, organisation, job_id=job_id, values=values)


class Judging:
    """A thread that judges what waits, until it is stopped."""

    def __init__(self, yard: Yard) -> None:
        self._yard = yard
        self._stopped = threading.Event()
        self._thread = threading.Thread(target=self._run, name="judging", daemon=True)

    def start(self) -> None:
        """Begin."""
        self._thread.start()

    def stop(self) -> None:
        """End after the job at hand."""
        self._stopped.set()
        self._thread.join()

    def _run(self) -> None:
        while not self._stopped.is_set():
            try:
                done = deliver_waiting(self._yard) + judge_waiting(self._yard)
            except BackprobeError as fault:  # the database is busy or away: look again later
                _log.warning("judging waits: %s", fault.message)
                done = 0
            except Exception:  # noqa: BLE001 - the thread must outlive any fault: nobody else would judge
                _log.exception("judging stumbled")
                done = 0
            self._stopped.wait(0.05 if done else LOOK_S)
