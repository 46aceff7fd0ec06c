"""Which place sees the sky: a mount sheet and a file of orbits, opened and answered."""

from __future__ import annotations

from pathlib import Path

from backprobe.errors import JobError
from backprobe.files.open import small_text, text_lines
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.navigation import read_navigation
from backprobe.stages.mount.answer import SkyAnswer, sky_answer
from backprobe.stages.mount.picture import sky_picture
from backprobe.stages.mount.question import Question

SVG = b"<svg"


def sky_files(mount: Path, asked: Question, *, nav: Path | None = None) -> SkyAnswer:
    """The answer to the sheet; without `nav` for the nominal constellation. Raises InputError in plain words."""
    sheet = read_mount(small_text(mount), mount.name)
    orbits = None if nav is None else read_navigation(text_lines(nav)(), file=nav.name, near_week=asked.week)
    return sky_answer(sheet, asked, orbits=orbits)


def draw_sky(answer: SkyAnswer, path: Path) -> None:
    """Write the picture of the best place; nothing but an earlier picture is ever written over."""
    try:
        if path.is_file() and path.read_bytes()[:4] not in (b"", SVG):
            raise JobError(f"{path}: there is a file of this name that is no SVG; it was left as it is")
        path.write_text(sky_picture(answer, answer.best), encoding="utf-8")
    except OSError as fault:
        raise JobError(f"the picture could not be written to {path}: {fault.strerror}") from None
