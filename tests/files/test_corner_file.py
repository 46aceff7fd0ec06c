"""An index of corners on disk."""

from __future__ import annotations

import pytest

from backprobe.errors import InputError, UnreadableError
from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.files.corner_file import corners_for, corners_in, write_corners

INDEX = CornerIndex(corners=(Corner(1.0, 2.0, ("A", "B")),), attribution="© somebody", source="m.osm.pbf")


def test_what_is_written_is_read(tmp_path):
    """In a folder that is made on the way; an earlier index is written over."""
    path = tmp_path / "maps" / "yard.corners"
    for _ in range(2):
        assert write_corners(INDEX, path) == path.stat().st_size
    assert corners_in(path) == INDEX


def test_another_file_is_left_alone(tmp_path):
    """A readings table of that name keeps every byte."""
    path = tmp_path / "readings.csv"
    path.write_text("wire,key,volts\n", encoding="utf-8")
    with pytest.raises(InputError, match="it was left as it is"):
        write_corners(INDEX, path)
    assert path.read_text(encoding="utf-8") == "wire,key,volts\n"


def test_an_older_index_may_be_written_over(tmp_path):
    """Of another version: that is what building again is for."""
    path = tmp_path / "yard.corners"
    path.write_text("backprobe corners 0\n", encoding="utf-8")
    write_corners(INDEX, path)
    assert corners_in(path) == INDEX


def test_where_nothing_can_be_written(tmp_path):
    """A folder of that name, a file where a folder would be, a name that no system takes."""
    (tmp_path / "file").write_text("x", encoding="utf-8")
    for path in (tmp_path, tmp_path / "file" / "yard.corners", tmp_path / "a\0b"):
        with pytest.raises(InputError, match="could not be written"):
            write_corners(INDEX, path)


def test_what_is_no_index_is_refused(tmp_path):
    """A photo, and a text."""
    path = tmp_path / "yard.corners"
    for raw in (b"\xff\xd8\xff\xe0" + bytes(99), b"hello"):
        path.write_bytes(raw)
        with pytest.raises(UnreadableError):
            corners_in(path)


def test_the_index_of_a_job_folder(tmp_path):
    """The one that was named goes before the folder's own; where neither is, nothing is named."""
    folder = tmp_path / "truck"
    folder.mkdir()
    assert corners_for(folder) is None
    write_corners(INDEX, folder / "corners.txt")
    assert corners_for(folder) == INDEX
    other = CornerIndex(corners=(), attribution="© another", source="n.osm.pbf")
    write_corners(other, tmp_path / "other.corners")
    assert corners_for(folder, tmp_path / "other.corners") == other
    with pytest.raises(UnreadableError, match="none of this name"):
        corners_for(folder, tmp_path / "none.corners")
