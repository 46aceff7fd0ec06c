"""What a record says, before it is set on paper."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.findings import Finding, Verdict
from backprobe.job.readings_grid import ReadingsGrid


@dataclass(frozen=True, slots=True)
class IdentityRow:
    """What the job is about, one fact: 'Vehicle', 'Harrow & Vale, fleet no. 17'."""

    label: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceRow:
    """The wire chosen for one lead of the unit.

    `wire` is None where none is chosen; `place` is its connector and cavity, where known; `note` is what must be
    said beside it (why none is chosen, 'circuit not identified', 'proven for 10 minutes').
    """

    lead: str
    wire: str | None
    place: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture as an SVG string, its caption, and its words for those who cannot see it.

    `title` heads the part of the page in which it stands alone, or, with `half`, beside another of half the width.
    """

    svg: str
    caption: str
    alt: str
    title: str = "The crank, as it was recorded"
    half: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportedBlock:
    """What the unit reported: the picture of it, the findings that hold, and the names of those that do not.

    The latter stand with all findings that do not hold. `notes` are what must be said beside it.
    """

    picture: Picture | None
    findings: tuple[Finding, ...]
    others: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownPhoto:
    """A photo as a JPEG of `width_px` × `height_px`.

    `shows` is what it was taken of, `note` what is said of it besides, `source` the file and its digest, `alt` the
    photo in words for those who cannot see it.
    """

    jpeg: bytes
    width_px: int
    height_px: int
    shows: str
    note: str | None
    source: str
    alt: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinedRow:
    """What became of one lead of the unit, and how it is undone (None: nobody has written that down)."""

    lead: str
    joined: str
    undo: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwedRow:
    """What the job still lacks, who owes it, and until when; None where that is not said."""

    what: str
    owed_by: str | None
    until: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOffBlock:
    """The sign-off as it stands on the page.

    `end` is how the job ended, `lines` what was said of that (missing, undone, told the driver); `signed` says who
    signed, when and what, `key` is the fingerprint of the key, in groups.
    """

    end: str
    lines: tuple[str, ...]
    signed: str
    key: str


@dataclass(frozen=True, slots=True)
class Attachment:
    """A file that is attached beside the journal: its name, its bytes, and what it is."""

    name: str
    content: bytes
    description: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordContent:
    """Everything that stands in a record.

    `verdict` and `sentence` are the answer at a glance, `next_step` the one thing to do next (None: nothing).
    `journal` is attached as `journal_name`; `journal_digest` is its sha256 in hex and must be that of these bytes.
    `made_at` is an ISO 8601 time, None where it is not known. `notes` are cautions and what else must be read.
    `reported` is the proof of the unit, None where there is none; what holds of it does not stand among `findings`.
    `wiring` is the drawing of what was built, `joined` the same in words with how to undo it, `owed` what is still
    missing, `driver_told` what the driver was told (None: the job was not handed over yet).
    `sign_off` is None where nobody has signed; with it the journal's digest is also shown as a code to be scanned.
    `language` is the language of the texts (BCP 47, two letters).
    """

    title: str
    verdict: Verdict
    sentence: str
    journal: bytes
    journal_name: str
    journal_digest: str
    engine_version: str
    identity: tuple[IdentityRow, ...] = ()
    next_step: str | None = None
    choices: tuple[ChoiceRow, ...] = ()
    findings: tuple[Finding, ...] = ()
    wiring: Picture | None = None
    reported: ReportedBlock | None = None
    readings: ReadingsGrid | None = None
    pictures: tuple[Picture, ...] = ()
    photos: tuple[ShownPhoto, ...] = ()
    joined: tuple[JoinedRow, ...] = ()
    owed: tuple[OwedRow, ...] = ()
    driver_told: tuple[str, ...] | None = None
    notes: tuple[str, ...] = ()
    sign_off: SignOffBlock | None = None
    attached: tuple[Attachment, ...] = ()
    made_at: str | None = None
    language: str = "en"
