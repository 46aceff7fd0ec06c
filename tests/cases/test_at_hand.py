"""The engine and the limits at hand, by their digests."""

from __future__ import annotations

import compileall
import hashlib
import shutil
import subprocess
import sys
from pathlib import Path

from backprobe.cases.at_hand import engine_sha256, limit_tables, limits_sha256
from backprobe.job.limits_text import limits_text

SOURCE = Path(__file__).resolve().parents[2] / "src" / "backprobe"
BELOW = ("job", "stages", "drawings", "formats", "inference", "limits", "physics", "evidence")
PRINT = "from backprobe.cases.at_hand import engine_sha256; print(engine_sha256())"


def engine_of(tree: Path) -> str:
    """The engine's digest of a copy of the sources."""
    done = subprocess.run(
        [sys.executable, "-c", PRINT], env={"PYTHONPATH": str(tree)}, capture_output=True, text=True, check=True
    )
    return done.stdout.strip()


def test_the_engine_is_all_that_stands_below_the_browser_line():
    """Added up by hand: digest and path of each file, a line each, by path."""
    files = [SOURCE / "findings.py", SOURCE / "errors.py"]
    files += [path for folder in BELOW for path in (SOURCE / folder).rglob("*.py")]
    digests = {path.relative_to(SOURCE).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}
    text = "".join(f"{digests[name]} {name}\n" for name in sorted(digests))
    assert engine_sha256() == hashlib.sha256(text.encode()).hexdigest()


def test_another_engine_has_another_digest(tmp_path: Path):
    """A change to a stage shows, one to the terminal does not; without sources nothing is claimed."""
    tree = tmp_path / "backprobe"
    shutil.copytree(SOURCE, tree, ignore=shutil.ignore_patterns("__pycache__"))
    before = engine_of(tmp_path)
    with (tree / "cli" / "main.py").open("a", encoding="utf-8") as file:
        file.write("# longer\n")
    assert engine_of(tmp_path) == before
    with (tree / "stages" / "probe" / "roles.py").open("a", encoding="utf-8") as file:
        file.write("# longer\n")
    assert engine_of(tmp_path) != before
    compileall.compile_dir(str(tree), legacy=True, quiet=2)
    for path in tree.rglob("*.py"):
        path.unlink()
    assert engine_of(tmp_path) == "None"


def test_every_table_of_limits_is_plain():
    """All modules of limits are in it, and no value is of a kind whose change would not show."""
    modules = {path.stem for path in (SOURCE / "limits").glob("*.py")} - {"__init__"}
    tables = limit_tables()
    with_tables = {name.split(".")[0] for name in tables}
    assert {"practice", "vin", "meters", "iso_16750_2"} <= with_tables <= modules
    assert limits_sha256() == hashlib.sha256(limits_text(tables)).hexdigest()
    assert b"practice.PRACTICE.supply_in_crank.12.value = 9.0\n" in limits_text(tables)
