"""Sign a job off: judge its folder, see that it can end as its sheet says, and add the sign-off to its journal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from backprobe import __version__
from backprobe.cases.at_hand import engine_sha256, limits_sha256
from backprobe.cases.judge import JudgedFolder, judge_folder
from backprobe.errors import JobError
from backprobe.evidence.hand_over import End, HandOver
from backprobe.files.blobs import put_bytes
from backprobe.files.journal_file import held_journal
from backprobe.findings import Finding, Verdict, worst
from backprobe.job.canonical import canonical
from backprobe.job.entry import Entry, digest
from backprobe.job.ids import timed_id
from backprobe.job.journal import Draft, continued
from backprobe.job.kinds import SIGN_OFF, text
from backprobe.job.rows import plain
from backprobe.job.shown import findings_bytes, hand_over_bytes
from backprobe.job.sign_off import Judged, bytes_to_sign, digests_text, fingerprint, signed, unsigned_body
from backprobe.job.signed import FINDING
from backprobe.keys.folder import Signer
from backprobe.stages.hand_over.ending import ENDING, obstacles
from backprobe.stages.hand_over.lacks import owed_example

NO_END = """\
nothing says how this job ends; write it into job.toml, for example:
  [hand_over]
  end = "provisional"
  told_driver = "what the driver was told"
  [[hand_over.missing]]
  what = "one parked night"
  owed_by = "who"
  until = 2026-04-07"""

OFFER = (
    "settle it; or end the job as provisional, saying who owes what until when, in place of [hand_over] in job.toml:"
)
PUT_RIGHT = "put right what fails; or undo the work and end the job as abandoned"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stamp:
    """What comes from outside: the device's clock (RFC 3339, and ms since 1970) and ten random bytes for each id."""

    at: str
    time_ms: int
    random: tuple[bytes, bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class SignedJob:
    """A job with the sign-off just added, by `name`."""

    job: JudgedFolder
    hand_over: HandOver
    findings: tuple[Finding, ...]
    entry: Entry
    name: str
    fingerprint: str
    covers: int

    @property
    def verdict(self) -> Verdict:
        """The worst of the findings that were signed."""
        return worst(finding.verdict for finding in self.findings)


def sign_folder(folder: Path, signer: Signer, *, stamp: Stamp, name: str | None = None) -> SignedJob:
    """Judge the job folder and sign it off in the name of `name`, else of the technician on the job sheet.

    Raises JobError, saying why, where the job cannot end as its sheet says, where nobody is named, or where the journal
    grew meanwhile; then nothing was signed.
    """
    job = judge_folder(folder)
    hand_over = job.judged.evidence.sheet.hand_over
    if hand_over is None:
        raise JobError(NO_END)
    shown = tuple(each for each in job.judged.findings if each.id != FINDING)
    judged = tuple(each for each in shown if each.id != ENDING)
    hindered = obstacles(hand_over, judged)
    if hindered:
        raise JobError(refusal(hand_over, hindered, findings=judged))
    who = name or job.judged.evidence.sheet.technician
    if not who:
        raise JobError("nobody is named who signs\nexpected: --name NAME, or technician in job.toml")
    key = signer.key
    kept = _Kept(folder, job, who=plain(who), stamp=stamp)
    said = Judged(
        end=str(hand_over.end),
        verdict=str(worst(each.verdict for each in shown)),
        findings=kept.blob(findings_bytes(shown)),
        hand_over=kept.blob(hand_over_bytes(hand_over)),
        engine=engine_sha256(),
        limits=limits_sha256(),
        unit_sheet=digest(job.imported.folder.named(job.imported.sheet.unit_sheet, "the unit's sheet").read_bytes()),
    )
    entry, covers = kept.append(said, key, signer=signer)
    return SignedJob(
        job=job, hand_over=hand_over, findings=shown, entry=entry, name=who, fingerprint=fingerprint(key), covers=covers
    )


def refusal(hand_over: HandOver, hindered: Sequence[str], *, findings: Sequence[Finding]) -> str:
    """Why a job cannot be signed as its sheet says, and how it can: as provisional, where nothing fails."""
    reasons = [f"this job cannot be signed as {hand_over.end}:", *(f"  {reason}" for reason in hindered)]
    if hand_over.end is not End.PROVEN:
        return "\n".join(reasons)
    example = owed_example(findings)
    if not example:
        return "\n".join([*reasons, PUT_RIGHT])
    return "\n".join([*reasons, OFFER, *(f"  {line}" for line in example)])


@dataclass(frozen=True, slots=True)
class _Kept:
    """Keeps what is signed in the folder, and adds the entries."""

    folder: Path
    job: JudgedFolder
    who: str
    stamp: Stamp

    def blob(self, content: bytes) -> str:
        """Keep `content`, unless it was erased on purpose; its digest."""
        return put_bytes(self.folder, content, without=self.job.imported.state.erased).sha256

    def append(self, judged: Judged, key: str, *, signer: Signer) -> tuple[Entry, int]:
        """The sign-off, added to the journal, and how many entries it covers."""
        job, device = self.job.imported.job, f"key-{fingerprint(key)[:16]}"
        with held_journal(self.folder) as held:
            if held.journal.entries != self.job.imported.journal.entries:
                raise JobError("the journal grew while the job was being judged; nothing was signed. Sign again")
            by, drafts = self._person()
            made = continued(held.journal, drafts, job=job, device=device, engine=__version__)
            stood = (*held.journal.entries, *made)
            listed = self.blob(digests_text(stood))
            draft = Draft(
                id=timed_id(self.stamp.time_ms, self.stamp.random[1]),
                kind=SIGN_OFF,
                body=unsigned_body(stood, judged, key=key),
                blobs=(judged.findings, judged.hand_over, listed),
                at=self.stamp.at,
                by=by,
            )
            *_, last = continued(held.journal, [*drafts, draft], job=job, device=device, engine=__version__)
            entry = signed(last, signer.sign(bytes_to_sign(last)))
            held.append((*made, entry))
        return entry, len(stood)

    def _person(self) -> tuple[str, tuple[Draft, ...]]:
        """The id of the signer's `person` entry, and the draft of it where there is none yet."""
        sha256 = self.blob(canonical({"job": self.job.imported.job, "name": self.who}))
        for one in self.job.imported.state.of_kind("person"):
            if text(one.body, "sha256") == sha256:
                return one.id, ()
        name = timed_id(self.stamp.time_ms, self.stamp.random[0])
        return name, (Draft(id=name, kind="person", body={"sha256": sha256}, blobs=(sha256,), at=self.stamp.at),)
