"""A mount sheet and a file of orbits, opened and answered."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.samples.mount import DASH_TOML, ROOF_TOML
from tests.samples.navigation import constellation, yuma

from backprobe.cases.sky import draw_sky, sky_files
from backprobe.errors import JobError, UnreadableError
from backprobe.stages.mount.question import question

ASKED = question((60.2, 24.9), "2021-04-29")


@pytest.fixture
def mount(tmp_path: Path) -> Path:
    """A sheet with two places."""
    path = tmp_path / "mount.toml"
    path.write_text(DASH_TOML + ROOF_TOML, encoding="utf-8")
    return path


def test_a_sheet_and_an_almanac(mount: Path, tmp_path: Path) -> None:
    """The week of the almanac is found from the day asked for, and that is said."""
    nav = tmp_path / "almanac.txt"
    nav.write_text("\n".join(yuma(constellation(31, plain=True))), encoding="ascii")
    answer = sky_files(mount, ASKED, nav=nav)
    assert (answer.best.place.name, answer.orbits.kind) == ("on the roof", "YUMA almanac")
    assert any("taken as week 2155" in note for note in answer.notes)


def test_a_photo_for_an_almanac(mount: Path, tmp_path: Path) -> None:
    """A photo is refused by what it looks like."""
    photo = tmp_path / "brdc.21n"
    photo.write_bytes(b"\xff\xd8\xff\xe0" + bytes(200))
    with pytest.raises(UnreadableError, match="this looks like a photo"):
        sky_files(mount, ASKED, nav=photo)


def test_nothing_but_an_earlier_picture_is_written_over(mount: Path, tmp_path: Path) -> None:
    """A picture is written, and written anew; a letter of that name stays as it is."""
    answer = sky_files(mount, ASKED)
    picture = tmp_path / "sky.svg"
    draw_sky(answer, picture)
    draw_sky(answer, picture)
    assert picture.read_text(encoding="utf-8").startswith("<svg")
    picture.write_text("Dear Ines", encoding="utf-8")
    with pytest.raises(JobError, match="no SVG; it was left as it is"):
        draw_sky(answer, picture)
    assert picture.read_text(encoding="utf-8") == "Dear Ines"
    with pytest.raises(JobError, match="could not be written"):
        draw_sky(answer, tmp_path / "nowhere" / "sky.svg")
