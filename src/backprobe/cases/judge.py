"""Judge a job folder: import it into its journal, and judge what the journal holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from backprobe.cases.import_folder import Imported, import_folder
from backprobe.cases.photos import Photos, photos_of
from backprobe.cases.policy import policy_for
from backprobe.cases.signed_job import judged_otherwise, sign_offs_of
from backprobe.files.corner_file import corners_for
from backprobe.files.journal_file import JOURNAL
from backprobe.files.open import small_text, text_lines
from backprobe.formats.recording_csv import read_recording
from backprobe.job.answer import judgement_json
from backprobe.job.bus import buses_of
from backprobe.job.door import meter_for, recording_limits_V
from backprobe.job.entry import digest
from backprobe.job.judge import JobEvidence, JobJudgement, judge_job
from backprobe.job.proving import proving_of
from backprobe.job.receptions import receptions_of
from backprobe.job.signed import sign_off_finding
from backprobe.job.units import unit_findings
from backprobe.stages.mount.reception.answer import passed_over


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedFolder:
    """A job folder with its judgement; `signers` says whose the keys (hex) are that somebody vouches for, by name."""

    imported: Imported
    judged: JobJudgement
    photos: Photos = field(default_factory=Photos)
    signers: Mapping[str, str] = field(default_factory=dict)

    @property
    def notes(self) -> tuple[str, ...]:
        """What the technician should know of the folder itself."""
        otherwise = judged_otherwise(self.imported, self.judged.findings)
        logs = self.judged.evidence.receptions
        heard = (f"{log.file}: {note}" for log in logs for note in passed_over(log))
        proof = () if self.judged.proof is None else self.judged.proof.beside
        policy = self.judged.evidence.policy
        strict = () if policy is None else (f"{policy.file}: the fleet's own limits count where they are tighter",)
        return (*self.imported.notes, *self.photos.notes, *proof, *heard, *otherwise, *strict)

    def as_json(self) -> dict[str, object]:
        """The judgement with the state of the journal."""
        journal = journal_bytes(self.imported)
        state = {"entries": len(self.imported.journal.entries), "sha256": digest(journal)}
        notes = list(self.notes)
        return {**judgement_json(self.judged), "job": self.imported.job, "journal": state, "notes": notes}


def judge_folder(folder: Path, policy: Path | None = None, *, corners: Path | None = None) -> JudgedFolder:
    """Import the folder and judge it. Raises InputError and JournalError in the technician's words.

    `policy` is the fleet's own, where it does not lie in the folder; `corners` an index of corners, to be used before
    the folder's own.
    """
    own, index = policy_for(folder, policy), corners_for(folder, corners)
    imported = import_folder(folder)
    evidence, photos = evidence_of(imported), photos_of(imported)
    evidence = replace(
        evidence,
        policy=own,
        proving=replace(evidence.proving, corners=index),
        refused_photos=photos.refused_of(imported.walkround),
    )
    return JudgedFolder(imported=imported, judged=judge_job(evidence), photos=photos)


def evidence_of(imported: Imported) -> JobEvidence:
    """The evidence that the folder's journal holds, with its recordings opened."""
    sheet, unit, found, walked = imported.sheet, imported.unit, imported.folder, imported.walkround
    text = small_text(found.named(sheet.meter_file, "the meter's file")) if sheet.meter_file else None
    limits_V = recording_limits_V(sheet.vehicle.system_V, unit.supply.least_V)
    return JobEvidence(
        sheet=sheet,
        unit=unit,
        meter=meter_for(sheet, text),
        table=imported.state.table,
        recordings=tuple(
            read_recording(text_lines(path), file=path.name, thresholds_V=limits_V) for path in found.recordings
        ),
        buses=buses_of(imported.state),
        walkround=walked,
        mount=imported.mount,
        proving=proving_of(imported.state, imported.prove.reports, script=imported.prove.script),
        missing_photos=tuple(photo.file for photo in walked.photos if not found.shows(photo.file)) if walked else (),
        disputes=tuple(disputes_of(imported)),
        units=unit_findings(imported.state),
        receptions=receptions_of(imported.state),
        sign_off=sign_off_finding(
            imported.journal.lines, sign_offs_of(imported), wanted=imported.sheet.hand_over is not None
        ),
    )


def disputes_of(imported: Imported) -> list[str]:
    """What the journal leaves open, in words."""
    state = imported.state
    found = [f"entry {dispute.about} was corrected in two ways" for dispute in state.disputes]
    found += [f"{slot.name}: {' or '.join(slot.values)}" for slot in state.open_slots]
    found += [f"entry {odd.id} ({odd.kind}) is kept but not understood: {odd.why}" for odd in state.unknown]
    found += [f"entry {name} is named by another and has not arrived" for name in state.awaited]
    return found


def journal_bytes(imported: Imported) -> bytes:
    """The journal's bytes as they stand in the folder."""
    return (imported.folder.path / JOURNAL).read_bytes()
