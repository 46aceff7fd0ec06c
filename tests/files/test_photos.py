"""Photos made ready for paper."""

from __future__ import annotations

import io
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image
from tests.samples.photos import (
    BOTTOM_LEFT,
    BOTTOM_RIGHT,
    TOP_LEFT,
    TOP_RIGHT,
    as_file,
    bomb,
    four_corners,
    with_notes,
)

from backprobe.errors import UnreadableError
from backprobe.files import photos
from backprobe.files.photos import LONGEST_PX, PaperPhoto, paper_photo


def ready(folder: Path, content: bytes) -> PaperPhoto:
    """The photo of that content, for paper."""
    path = folder / "a.jpg"
    path.write_bytes(content)
    return paper_photo(path, "photos/a.jpg")


def why_not(folder: Path, content: bytes) -> str:
    """What was expected instead of that content."""
    with pytest.raises(UnreadableError) as caught:
        ready(folder, content)
    assert caught.value.place.file == "photos/a.jpg"
    assert "\n" not in caught.value.expected
    return caught.value.expected


def corners(photo: PaperPhoto) -> list[str]:
    """Which of the four colours each corner has, in reading order."""
    picture = Image.open(io.BytesIO(photo.jpeg))
    width, height = picture.size
    known = {"red": TOP_LEFT, "green": TOP_RIGHT, "blue": BOTTOM_LEFT, "white": BOTTOM_RIGHT}
    found = [picture.getpixel((x, y)) for y in (4, height - 5) for x in (4, width - 5)]
    return [
        min(known, key=lambda name: sum(abs(a - b) for a, b in zip(known[name], pixel, strict=True))) for pixel in found
    ]


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_three_formats_are_read_whatever_the_name(tmp_path: Path, kind: str):
    """The content tells, not the name: all of them lie in a.jpg."""
    photo = ready(tmp_path, as_file(four_corners(), kind))
    assert (photo.width_px, photo.height_px) == (120, 80)
    assert corners(photo) == ["red", "green", "blue", "white"]


@pytest.mark.parametrize(
    ("orientation", "expected"),
    [
        (1, ["red", "green", "blue", "white"]),
        (3, ["white", "blue", "green", "red"]),
        (6, ["blue", "red", "white", "green"]),
        (8, ["green", "white", "red", "blue"]),
    ],
)
def test_a_camera_held_sideways(tmp_path: Path, orientation: int, expected: list[str]):
    """Exif 2.3, tag Orientation: 3 turned by 180°, 6 by 90° to the right, 8 by 90° to the left."""
    photo = ready(tmp_path, with_notes(orientation))
    assert corners(photo) == expected
    assert (photo.width_px > photo.height_px) == (orientation in (1, 3))


def test_nothing_that_the_camera_wrote_is_left(tmp_path: Path):
    """No name, no Exif, no comment: the file is there for the picture alone."""
    content = with_notes(6)
    assert b"Okafor" in content
    photo = ready(tmp_path, content)
    assert b"Okafor" not in photo.jpeg
    left = Image.open(io.BytesIO(photo.jpeg))
    assert not left.getexif()
    assert set(left.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


@pytest.mark.parametrize(
    ("size", "on_paper"),
    [((4000, 3000), (720, 540)), ((3000, 4000), (540, 720)), ((7200, 20), (720, 2)), ((9000, 1), (720, 1))],
)
def test_large_and_odd_sizes_become_small(tmp_path: Path, size: tuple[int, int], on_paper: tuple[int, int]):
    """The longest side is 720: 4000 × 3000 becomes 720 × 540; a line stays a line."""
    photo = ready(tmp_path, as_file(four_corners(*size)))
    assert (photo.width_px, photo.height_px) == on_paper
    assert max(on_paper) == LONGEST_PX


def test_a_small_photo_is_not_blown_up(tmp_path: Path):
    """One point stays one point."""
    photo = ready(tmp_path, as_file(Image.new("RGB", (1, 1))))
    assert (photo.width_px, photo.height_px) == (1, 1)


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGBA", "CMYK", "YCbCr"])
def test_every_way_to_keep_colours(tmp_path: Path, mode: str):
    """Black and white, grey, palette, four inks: what comes out has three colours."""
    content = as_file(four_corners().convert(mode), "JPEG" if mode in ("CMYK", "YCbCr") else "PNG")
    assert Image.open(io.BytesIO(ready(tmp_path, content).jpeg)).mode == "RGB"


def test_what_is_clear_becomes_white(tmp_path: Path):
    """Paper shows through where a picture lets light through."""
    photo = ready(tmp_path, as_file(Image.new("RGBA", (40, 40), (0, 0, 0, 0)), "PNG"))
    assert Image.open(io.BytesIO(photo.jpeg)).getpixel((20, 20)) == (255, 255, 255)


def test_sixteen_bits_of_grey_are_not_washed_out(tmp_path: Path):
    """Half of 65535 is half of 255."""
    grey = Image.new("I;16", (40, 40), 32768)
    level = Image.open(io.BytesIO(ready(tmp_path, as_file(grey, "PNG")).jpeg)).convert("L").getpixel((20, 20))
    assert level == pytest.approx(128, abs=2)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photo_that_is_cut_off_says_so(tmp_path: Path, kind: str):
    """Half of the file is refused, in words that say what to do."""
    whole = as_file(Image.effect_noise((300, 200), 60).convert("RGB"), kind)
    said = why_not(tmp_path, whole[: len(whole) // 2])
    assert said.startswith("a whole picture; this one is ")
    assert said.endswith("copy it again, or take it again")
    assert kind == "WEBP" or "cut off" in said


def test_the_first_bytes_alone_are_a_damaged_photo(tmp_path: Path):
    """What begins as a JPEG was one."""
    assert "damaged at its beginning" in why_not(tmp_path, as_file(four_corners())[:30])


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "this file is empty"),
        (b"time_s,battery\n0,12.5\n", "this file is none"),
        (b"%PDF-1.7\n", "this file is none"),
        (b"GIF89a" + bytes(50), "this file is none"),
        (b"\x00\x00\x00\x18ftypheic" + bytes(50), "HEIC or AVIF: save it as JPEG"),
    ],
)
def test_what_is_no_photo_is_named(tmp_path: Path, content: bytes, words: str):
    """Each in words that say what to do about it."""
    assert words in why_not(tmp_path, content)


@pytest.mark.parametrize(
    ("size", "words"),
    [
        ((60_000, 60_000), "at most 64 million pixels; this picture claims to have far more"),
        ((2_000_000_000, 2), "at most 64 million pixels; this picture claims to have far more"),
        ((11_000, 10_000), "at most 24 million pixels; this picture has, or claims to have, 11000 × 10000"),
        ((5_000, 5_000), "at most 24 million pixels; this picture has, or claims to have, 5000 × 5000"),
    ],
)
def test_a_claim_to_fill_all_memory_is_not_believed(tmp_path: Path, size: tuple[int, int], words: str):
    """PNGs of a few bytes that claim 25 million pixels and more; none of them is begun."""
    content = bomb(*size)
    assert len(content) < 200
    assert why_not(tmp_path, content) == words


def test_a_file_that_is_too_large_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """The limit is 40 MB; here it is set to a few bytes less than the file has."""
    content = as_file(four_corners())
    monkeypatch.setattr(photos, "MOST_BYTES", len(content) - 1)
    assert "this file is larger" in why_not(tmp_path, content)
    monkeypatch.setattr(photos, "MOST_BYTES", len(content))
    assert ready(tmp_path, content).width_px == 120


def test_a_file_that_is_not_there(tmp_path: Path):
    """The system's words are passed on."""
    with pytest.raises(UnreadableError, match="No such file"):
        paper_photo(tmp_path / "b.jpg", "photos/b.jpg")


def test_the_same_photo_gives_the_same_bytes(tmp_path: Path):
    """A record made twice is the same record."""
    content = with_notes(8)
    assert ready(tmp_path, content) == ready(tmp_path, content)


SEEDS = [
    with_notes(6),
    as_file(four_corners(), "PNG"),
    as_file(four_corners(), "WEBP"),
    as_file(four_corners(), progressive=True),
]


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(SEEDS), st.lists(st.tuples(st.floats(0, 0.9999), st.integers(0, 255)), max_size=8), st.data())
def test_any_damage_is_read_or_refused(tmp_path_factory, seed: bytes, changes: list[tuple[float, int]], data):
    """Whatever bytes are changed, or cut off: a photo comes out, or the project's own error."""
    content = bytearray(seed[: data.draw(st.integers(0, len(seed)))])
    for at, value in changes:
        if content:
            content[int(at * len(content))] = value
    path = tmp_path_factory.mktemp("photo") / "a.jpg"
    path.write_bytes(bytes(content))
    try:
        photo = paper_photo(path, "photos/a.jpg")
    except UnreadableError:
        return
    assert Image.open(io.BytesIO(photo.jpeg)).size == (photo.width_px, photo.height_px)


def test_pictures_are_loaded_only_where_there_is_one():
    """The module loads without the library that reads pictures."""
    script = "import sys, backprobe.files.photos; print('PIL' in sys.modules)"
    environment = {"PYTHONPATH": ":".join(sys.path)}
    found = subprocess.run([sys.executable, "-c", script], env=environment, capture_output=True, text=True, check=True)
    assert found.stdout.strip() == "False"
