"""The layer contract in pyproject.toml is one that can be broken."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOMS = (
    "cli",
    "cases",
    "paper",
    "files",
    "job",
    "tongues",
    "stages",
    "drawings",
    "formats",
    "inference",
    "limits",
    "physics",
)


def lint(folder: Path, root: Path, faults: dict[str, str]) -> str:
    """What import-linter says of a small house with the given modules (path → source); empty where all is kept."""
    house = folder / "backprobe"
    for room in (*ROOMS, "evidence"):
        (house / room).mkdir(parents=True)
        (house / room / "__init__.py").touch()
    for path, source in {"__init__.py": "", "findings.py": "", "errors.py": "", **faults}.items():
        (house / path).parent.mkdir(exist_ok=True)
        (house / path).write_text(source, encoding="utf-8")
    shutil.copy(root / "pyproject.toml", folder / "pyproject.toml")
    command = [Path(sys.executable).with_name("lint-imports"), "--no-cache"]
    env = {**os.environ, "PYTHONPATH": str(folder)}
    done = subprocess.run(command, cwd=folder, env=env, capture_output=True, text=True, check=False)
    return "" if done.returncode == 0 else done.stdout + done.stderr


@pytest.mark.parametrize(
    ("path", "source"),
    [
        ("errors.py", "import backprobe.findings"),
        ("evidence/a.py", "from backprobe.findings import Finding\nimport backprobe.limits"),
        ("limits/a.py", "import backprobe.physics"),
        ("physics/a.py", "import backprobe.limits"),
        ("inference/a.py", "import backprobe.formats"),
        ("formats/a.py", "def f():\n    import backprobe.files"),
        ("paper/a.py", "import backprobe.files"),
        ("files/a.py", "import backprobe.paper"),
        ("cases/a.py", "import backprobe.cli"),
        ("store/__init__.py", "import backprobe.cases"),
    ],
)
def test_an_import_that_points_up_is_refused(path: str, source: str, tmp_path: Path, root: Path) -> None:
    """Imports upward or sideways, also inside functions, break the contract."""
    assert "BROKEN" in lint(tmp_path, root, {path: source})


def test_an_unnamed_room_is_refused(tmp_path: Path, root: Path) -> None:
    """A package that no layer names makes the check fail."""
    assert "rumpus" in lint(tmp_path, root, {"rumpus/__init__.py": ""})


def test_imports_that_point_down_are_let_through(tmp_path: Path, root: Path) -> None:
    """The contract keeps quiet on a house in order."""
    said = lint(
        tmp_path, root, {"cli/a.py": "import backprobe.paper, backprobe.limits", "job/a.py": "import backprobe.formats"}
    )
    assert said == ""
