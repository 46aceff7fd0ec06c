"""What a record says of the work itself: photos, what was joined and how to undo it, what it does not cover."""

from __future__ import annotations

from collections.abc import Iterable

from backprobe.cases.photos import JobPhoto, Photos
from backprobe.evidence.hand_over import HandOver
from backprobe.evidence.joint import Joint
from backprobe.evidence.photo import Shows
from backprobe.evidence.unit_sheet import Purpose
from backprobe.findings import Finding, Stage
from backprobe.job.judge import JobJudgement
from backprobe.paper.content import JoinedRow, OwedRow, ShownPhoto
from backprobe.stages.hand_over.ending import missing_in_words

MOST_PHOTOS = 12  # two pages of them; the others stay in the job folder, and the record says how many
MOST_NOTE = 240  # letters of a photo's note that stand in a record; the whole note is in job.toml
DIGEST_SHOWN = 16
UNSAID = "Photo"
UNTOUCHED = "nothing of the vehicle was touched"
MOUNTED = "mount_"  # ids of findings on the mount, which is judged with the joints
WORK_OF = {
    Stage.WALKROUND: "the state of the vehicle",
    Stage.PROBE: "the choice of wires",
    Stage.JOIN: "joints",
    Stage.MOUNT: "mounting",
    Stage.PROVE: "a test of the unit",
}


def shown_photos(photos: Photos) -> tuple[ShownPhoto, ...]:
    """The photos that stand in a record, with their captions."""
    return tuple(_shown(each) for each in photos.shown[:MOST_PHOTOS])


def _shown(photo: JobPhoto) -> ShownPhoto:
    named, picture = photo.named, photo.picture
    note = named.note if named.note is None or len(named.note) <= MOST_NOTE else f"{named.note[: MOST_NOTE - 1]}…"
    shows = UNSAID if named.shows is Shows.OTHER else _capital(named.shows.words)
    digest = f"sha256 {photo.sha256[:DIGEST_SHOWN]}…" if photo.sha256 else "not in the journal"
    return ShownPhoto(
        jpeg=picture.jpeg,
        width_px=picture.width_px,
        height_px=picture.height_px,
        shows=shows,
        note=note,
        source=f"{named.file}, {digest}",
        alt=f"{shows}: {named.note}" if named.note else f"{shows}, without a note: {named.file}",
    )


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def more_photos(photos: Photos) -> list[str]:
    """A note where there are more photos than a record shows."""
    more = len(photos.shown) - MOST_PHOTOS
    return [f"{more} more photos are in the job folder and in the journal's keeping"] if more > 0 else []


def joined_rows(judged: JobJudgement) -> tuple[JoinedRow, ...]:
    """What became of each lead and how to undo it; an unused lead has its row too."""
    sheet, unit = judged.evidence.sheet, judged.evidence.unit
    grounds = {lead.name for lead in unit.leads_for(Purpose.GROUND)}
    return tuple(_row(joint, grounded=joint.lead in grounds) for joint in sheet.joints)


def _row(joint: Joint, *, grounded: bool) -> JoinedRow:
    method = None if joint.method is None else joint.method.words
    fuse = None if joint.fuse_A is None else f"behind a fuse of {joint.fuse_A:g} A"
    if joint.wire is None and not grounded:
        if not joint.left:
            return JoinedRow(lead=joint.lead, joined="not told where it went", undo=joint.undo)
        return JoinedRow(lead=joint.lead, joined=f"not used: {joint.left}", undo=joint.undo or UNTOUCHED)
    to = "to the frame" if joint.wire is None else f"to {joint.wire}"
    said = ", ".join(part for part in (to, method, joint.place, fuse) if part)
    return JoinedRow(lead=joint.lead, joined=said, undo=joint.undo)


def owed_rows(hand_over: HandOver | None) -> tuple[OwedRow, ...]:
    """What a provisional job still lacks, who owes it, and until when."""
    if hand_over is None:
        return ()
    return tuple(OwedRow(what=missing_in_words(one), owed_by=one.owed_by, until=one.until) for one in hand_over.missing)


def told_driver(hand_over: HandOver | None) -> tuple[str, ...] | None:
    """What the driver was told; None while the job was not handed over."""
    return None if hand_over is None else hand_over.told_driver


def not_covered(findings: Iterable[Finding]) -> list[str]:
    """A note on the stages that no finding speaks of.

    >>> not_covered([])[0]
    'Not in this record: the state of the vehicle, the choice of wires, joints, mounting, a test of the unit.'
    """
    found = tuple(findings)
    covered = {finding.stage for finding in found}
    covered |= {Stage.MOUNT for finding in found if finding.id.startswith(MOUNTED)}
    lacking = [work for stage, work in WORK_OF.items() if stage not in covered]
    return [f"Not in this record: {', '.join(lacking)}."] if lacking else []
