"""A job as the server holds it: its entries folded, its files at hand, judged by the same engine as everywhere."""

from __future__ import annotations

import logging
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from sqlalchemy import Connection

from backprobe.cases.signing_keys import signers
from backprobe.cases.yard import Yard
from backprobe.cases.yard_corners import yard_corners
from backprobe.errors import BackprobeError
from backprobe.findings import Verdict
from backprobe.formats.text import encoding_of
from backprobe.job.entry import Entry, read_entry
from backprobe.job.fold import JobState, fold
from backprobe.job.journal import Journal, journal_of
from backprobe.job.journal_door import Asked, evidence_of
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.job.kinds import CORRECTION, SIGN_OFF, WITHDRAWN, text
from backprobe.job.lineage import Statement
from backprobe.job.signed import Signed, sign_off_finding, sign_offs
from backprobe.keys.ed25519 import signature_holds
from backprobe.store import blobs, entries

SHEETS = {
    "job": "job.toml",
    "unit_sheet": "unit.toml",
    "meter_sheet": "meter.toml",
    "walkround": "walkround.toml",
    "mount": "mount.toml",
    "policy": "policy.toml",
}
MOST_READ_BYTES = 64_000_000  # a file larger than this is kept, and not judged on the server
_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldJob:
    """A job's entries in the order of devices and numbers, and what they come to.

    `judged` is None where the job cannot be judged yet, and `fault` says why; `end` is how it was signed off.
    """

    id: str
    entries: tuple[Entry, ...]
    journal: Journal
    state: JobState
    judged: JobJudgement | None
    fault: str | None
    end: str | None

    @property
    def verdict(self) -> Verdict:
        """The worst of all findings; open where nothing could be judged."""
        return Verdict.OPEN if self.judged is None else self.judged.verdict


def held_job(yard: Yard, connection: Connection, *, organisation: str, job_id: str) -> HeldJob:
    """The job judged as it stands."""
    found = [read_entry(raw) for raw in entries.of_job(connection, organisation, job_id=job_id)]
    ordered = tuple(sorted(found, key=lambda entry: (entry.device, entry.seq, entry.id)))
    journal, state = journal_of(ordered), fold(ordered)
    signed = sign_offs(journal.lines, signature_holds)
    judged, fault = None, None
    try:
        texts = texts_of(yard, connection, organisation=organisation, statements=state.standing)
        asked = Asked(state, texts, corners=yard_corners(yard))
        judged = _judged(asked, journal, signed=signed, names=signers(connection, organisation))
    except BackprobeError as refusal:
        fault = refusal.message
    except Exception:  # noqa: BLE001 - a fault of the engine in one job must not hide what was said in it
        _log.exception("job %r cannot be judged", job_id)
        fault = "this job could not be judged: the server's log says why"
    good = [one.sign_off for one in signed if one.holds]
    return HeldJob(
        id=job_id,
        entries=ordered,
        journal=journal,
        state=state,
        judged=judged,
        fault=fault,
        end=good[-1].judged.end if good else None,
    )


def _judged(asked: Asked, journal: Journal, *, signed: Sequence[Signed], names: Mapping[str, str]) -> JobJudgement:
    evidence = evidence_of(asked)
    ended = evidence.sheet.hand_over is not None
    finding = sign_off_finding(journal.lines, signed, wanted=ended, names=names)
    return judge_job(replace(evidence, sign_off=finding))


def texts_of(
    yard: Yard, connection: Connection, *, organisation: str, statements: Iterable[Statement]
) -> dict[str, str]:
    """The texts of the files that the statements name, by digest, as far as they are kept and are texts."""
    found: dict[str, str] = {}
    for one in statements:
        sha256 = text(one.body, "sha256")
        if sha256 is not None and sha256 not in found:
            content = text_file(yard, connection, organisation=organisation, sha256=sha256)
            if content is not None:
                found[sha256] = decoded(content).replace("\r\n", "\n").replace("\r", "\n")
    return found


def text_file(yard: Yard, connection: Connection, *, organisation: str, sha256: str) -> bytes | None:
    """The bytes of a text that is kept; None where there is none, in quarantine, no text, or too large to be judged."""
    row = blobs.noted(connection, organisation, sha256=sha256)
    if row is None or row["quarantined"] or not row["type"].startswith("text/") or row["bytes"] > MOST_READ_BYTES:
        return None
    path = yard.blobs.path(sha256)
    return None if path is None else path.read_bytes()


def decoded(content: bytes) -> str:
    """A file's text; what does not fit its encoding becomes a mark."""
    return content.decode(encoding_of(content), errors="replace")


def sheets_of(yard: Yard, connection: Connection, *, organisation: str, job_id: str) -> dict[str, str]:
    """The sheets of a job as they stand, under the names in docs/api.md, to the letter."""
    kinds = (*SHEETS, CORRECTION, WITHDRAWN)
    raws = entries.of_job(connection, organisation, job_id=job_id, kinds=kinds)
    state = fold(read_entry(raw) for raw in raws)
    found: dict[str, str] = {}
    for kind, name in SHEETS.items():
        for one in state.of_kind(kind)[:1]:
            content = text_file(yard, connection, organisation=organisation, sha256=text(one.body, "sha256") or "")
            if content is not None:
                found[name] = decoded(content)
    return found


def has_begun(held: HeldJob) -> bool:
    """Whether anybody has recorded anything beside sheets and what the server says."""
    planned = {*SHEETS, "person", SIGN_OFF}
    return any(entry.kind not in planned and entry.device != "server" for entry in held.entries)
