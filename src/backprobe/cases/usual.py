"""How the last vehicle of each type in a day was finished, for the next of its type to take over what fits."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import Connection, RowMapping

from backprobe.cases.held_job import HeldJob, texts_of
from backprobe.cases.yard import Yard
from backprobe.errors import InputError
from backprobe.evidence.hand_over import End
from backprobe.findings import Stage, Verdict
from backprobe.formats.usual_sheets import usual_job, usual_mount, usual_walkround
from backprobe.job.entry import read_entry
from backprobe.job.fold import fold
from backprobe.job.joined import with_circuits
from backprobe.job.journal_door import Asked, sheet_of
from backprobe.job.kinds import CORRECTION, WITHDRAWN
from backprobe.store import entries, jobs

# all that the three sheets are taken from, and the wires that were chosen on a phone
KINDS = ("job", "walkround", "mount", "wire_declared", "circuit", "claim", CORRECTION, WITHDRAWN)
FINISHED = (End.PROVEN, End.PROVISIONAL)


def may_be_usual(held: HeldJob) -> bool:
    """Whether others may take over how this job was done: finished, with joints, none of which fails."""
    if held.judged is None or held.end not in FINISHED or not held.judged.evidence.sheet.joints:
        return False
    return not any(one.stage is Stage.JOIN and one.verdict is Verdict.FAILS for one in held.judged.findings)


def usual_in(
    yard: Yard, connection: Connection, *, organisation: str, rows: Sequence[RowMapping]
) -> list[dict[str, str]]:
    """For each type of vehicle among the jobs of `rows` the last that was finished, as in docs/api.md."""
    types = dict.fromkeys(str(row["vehicle_type"]) for row in rows if row["vehicle_type"] is not None)
    own = [str(row["id"]) for row in rows]
    found: list[dict[str, str]] = []
    for name in types:
        last = jobs.last_usual(connection, organisation, vehicle_type=name, but=own)
        sheets = None if last is None else _sheets(yard, connection, organisation=organisation, job_id=last["id"])
        if last is not None and sheets is not None:
            found.append({"type": name, "from": last["name"], **sheets})
    return found


def _sheets(yard: Yard, connection: Connection, *, organisation: str, job_id: str) -> dict[str, str] | None:
    """The reduced sheets of a job; None where its job sheet is no longer there."""
    raws = entries.of_job(connection, organisation, job_id=job_id, kinds=KINDS)
    state = fold(read_entry(raw) for raw in raws)
    texts = texts_of(yard, connection, organisation=organisation, statements=state.standing)
    asked = Asked(state, texts)
    try:
        sheet = with_circuits(sheet_of(asked), asked.state.table.facts)
        walkround, mount = asked.text_of("walkround"), asked.text_of("mount")
        found = {
            "job": usual_job(asked.must("job")[0], sheet.wires),
            "walkround": "" if walkround is None else usual_walkround(walkround[0]),
        }
        return found if mount is None else {**found, "mount": usual_mount(mount[0])}
    except InputError:
        return None
