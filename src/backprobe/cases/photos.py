"""The photos of a job folder: those that can be shown, in the order of the sheets, and why others cannot."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.cases.import_folder import Imported, named_photos
from backprobe.errors import UnreadableError
from backprobe.evidence.photo import NamedPhoto
from backprobe.evidence.walkround import Walkround
from backprobe.files.folder import JOB_SHEET, PHOTOS
from backprobe.files.photos import PaperPhoto, paper_photo
from backprobe.job.kinds import text
from backprobe.job.rows import plain


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPhoto:
    """A photo that can be shown: what is said of it, its picture, and the digest of the file as the journal has it."""

    named: NamedPhoto
    picture: PaperPhoto
    sha256: str


@dataclass(frozen=True, slots=True)
class Photos:
    """What a folder's photos came to; `notes` are for the technician, `refused` says what was expected of a photo."""

    shown: tuple[JobPhoto, ...] = ()
    notes: tuple[str, ...] = ()
    refused: tuple[tuple[str, str], ...] = ()

    def refused_of(self, walked: Walkround | None) -> tuple[str, ...]:
        """Those photos that a walkround names and that cannot be shown, each with what was expected of it."""
        named = {photo.file for photo in walked.photos} if walked else set()
        return tuple(f"{file}: expected {expected}" for file, expected in self.refused if file in named)


def photos_of(imported: Imported) -> Photos:
    """The photos of the folder: those that job sheet and walkround name first, in their order, then the rest by name.

    A photo that cannot be shown, or was erased from the journal on purpose, is told of in a note. It changes nothing
    in what the job is judged by.
    """
    files = {f"{PHOTOS}/{path.name}": path for path in imported.folder.photos}
    digests = {text(one.body, "file"): text(one.body, "sha256") or "" for one in imported.state.of_kind("photo")}
    named = named_photos(imported.sheet, imported.walkround)
    listed = [each for each in named if each.file in files]
    rest = [NamedPhoto(file=name) for name in files if name not in {each.file for each in named}]
    found: list[JobPhoto] = []
    refused: list[tuple[str, str]] = []
    missing = [each.file for each in imported.sheet.photos if each.file not in files]
    notes = [f"{JOB_SHEET} names {name}: there is no such photo" for name in missing]
    for each in (*listed, *rest):
        sha256 = digests.get(plain(each.file), "")
        if sha256 in imported.state.erased:
            notes.append(f"{each.file} was erased from the journal on purpose: it is not shown")
            continue
        try:
            found.append(JobPhoto(named=each, picture=paper_photo(files[each.file], each.file), sha256=sha256))
        except UnreadableError as refusal:
            notes.append(f"{each.file} cannot be shown; expected: {refusal.expected}")
            refused.append((each.file, refusal.expected))
    return Photos(tuple(found), tuple(notes), tuple(refused))
