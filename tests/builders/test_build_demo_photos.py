"""The demo's photos are the ones that their builder draws."""

from __future__ import annotations

import importlib.util
import io
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest
from PIL import Image

from backprobe.files.photos import paper_photo

ROOT = Path(__file__).resolve().parents[2]
BUILDER = ROOT / "builders" / "build_demo_photos.py"


@pytest.fixture(scope="module")
def builder() -> ModuleType:
    """The builder as a module."""
    spec = importlib.util.spec_from_file_location("build_demo_photos", BUILDER)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # dataclasses look their module up
    spec.loader.exec_module(module)
    return module


def checked(builder: ModuleType, monkeypatch: pytest.MonkeyPatch) -> int:
    """What --check comes to."""
    monkeypatch.setattr(sys, "argv", ["build_demo_photos.py", "--check"])
    return int(builder.main())


def test_the_photos_in_the_tree_are_up_to_date():
    """Running the builder again would change nothing that can be seen."""
    ran = subprocess.run([sys.executable, BUILDER, "--check"], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout) == (0, "photos: current\n")


def test_a_photo_that_was_altered_is_noticed(builder: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """No file, then the right one, then one whose label is painted over."""
    monkeypatch.setattr(builder, "OUT", tmp_path)
    assert checked(builder, monkeypatch) == 1
    monkeypatch.setattr(sys, "argv", ["build_demo_photos.py"])
    assert builder.main() == 0
    assert checked(builder, monkeypatch) == 0
    file = tmp_path / "serial-and-vin.jpg"
    picture = Image.open(io.BytesIO(file.read_bytes()))
    picture.paste((92, 100, 112), (200, 270, 570, 450))
    picture.save(file)
    assert checked(builder, monkeypatch) == 1


def test_they_are_drawn_alike_each_time_and_are_small(builder: ModuleType):
    """The same bytes twice, below 60 kB, without any chance."""
    for make in builder.PHOTOS.values():
        first = make()
        assert first == make()
        assert len(first) < builder.MOST_BYTES == 60_000


def test_one_was_held_sideways_and_comes_upright_on_paper(builder: ModuleType):
    """The joint was taken with the camera upright: its file lies on its side, on paper it stands."""
    path = ROOT / "demo" / "linden-yard" / "truck-07" / "photos" / "bare-joint.jpg"
    assert Image.open(io.BytesIO(path.read_bytes())).size == (480, 640)
    photo = paper_photo(path, "photos/bare-joint.jpg")
    assert (photo.width_px, photo.height_px) == builder.SIZE == (640, 480)
