"""A yard is made where there is none, and found where there is one."""

from __future__ import annotations

from pathlib import Path

import pytest

from backprobe.cases.yard import DATABASE, HOME, open_yard
from backprobe.errors import OptionError
from backprobe.store.people import organisation_name


def test_it_is_made_once(tmp_path: Path) -> None:
    """Opened again it has the name it was made with."""
    for name in ("Linden Yard", "other"):
        yard = open_yard(tmp_path / "data", name=name)
        with yard.store.reading() as connection:
            assert organisation_name(connection, HOME) == "Linden Yard"
        yard.store.close()
    assert (tmp_path / "data" / DATABASE).is_file()
    assert (tmp_path / "data").stat().st_mode & 0o077 == 0


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    """Said in plain words."""
    (tmp_path / "data").write_text("x", encoding="utf-8")
    with pytest.raises(OptionError, match="a folder to keep things in is expected"):
        open_yard(tmp_path / "data")
