"""Sign a job off: judge its folder, see that it can end as its sheet says, and add the sign-off to its journal."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from backprobe import __version__
from backprobe.cases.at_hand import engine_sha256, limits_sha256
from backprobe.cases.judge import JudgedFolder, judge_folder
from backprobe.errors import JobError
from backprobe.evidence.hand_over import HandOver
from backprobe.files.blobs import put_bytes
from backprobe.files.journal_file import held_journal
from backprobe.findings import Finding, Verdict, worst
from backprobe.job.canonical import canonical
from backprobe.job.entry import Entry, digest
from backprobe.job.ids import timed_id
from backprobe.job.journal import Draft, continued
from backprobe.job.kinds import text
from backprobe.job.rows import plain
from backprobe.job.sign_off import bytes_to_sign, fingerprint, signed
from backprobe.job.signing import Tools, ToSign, drafted, to_sign
from backprobe.keys.folder import Signer


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
    unit_sheet = job.imported.folder.named(job.imported.sheet.unit_sheet, "the unit's sheet").read_bytes()
    tools = Tools(engine=engine_sha256(), limits=limits_sha256(), unit_sheet=digest(unit_sheet))
    what = to_sign(job.judged.evidence.sheet.hand_over, job.judged.findings, tools=tools)
    who = name or job.judged.evidence.sheet.technician
    if not who:
        raise JobError("nobody is named who signs\nexpected: --name NAME, or technician in job.toml")
    key = signer.key
    entry, covers = _Kept(folder, job, who=plain(who), stamp=stamp).append(what, key, signer=signer)
    return SignedJob(
        job=job,
        hand_over=what.end,
        findings=what.shown,
        entry=entry,
        name=who,
        fingerprint=fingerprint(key),
        covers=covers,
    )


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

    def append(self, what: ToSign, key: str, *, signer: Signer) -> tuple[Entry, int]:
        """The sign-off, added to the journal, and how many entries it covers."""
        job, device = self.job.imported.job, f"key-{fingerprint(key)[:16]}"
        with held_journal(self.folder) as held:
            if held.journal.entries != self.job.imported.journal.entries:
                raise JobError("the journal grew while the job was being judged; nothing was signed. Sign again")
            by, drafts = self._person()
            made = continued(held.journal, drafts, job=job, device=device, engine=__version__)
            stood = (*held.journal.entries, *made)
            name = timed_id(self.stamp.time_ms, self.stamp.random[1])
            draft, blobs = drafted(stood, what, key=key, entry_id=name, at=self.stamp.at, by=by)
            for content in blobs.values():
                self.blob(content)
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
