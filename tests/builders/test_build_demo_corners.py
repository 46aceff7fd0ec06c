"""The demo's corners are those that their builder makes."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
BUILDER = ROOT / "builders" / "build_demo_corners.py"
CURRENT = "corners.txt: current\n"


def test_the_corners_in_the_tree_are_up_to_date():
    """Running the builder again would change nothing."""
    ran = subprocess.run([sys.executable, BUILDER, "--check"], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout) == (0, CURRENT)


def test_others_are_noticed(tmp_path: Path):
    """No file, then one that was changed, in a copy of the builder's surroundings; writing puts it right."""
    copy = tmp_path / "builders" / BUILDER.name
    copy.parent.mkdir()
    copy.write_text(BUILDER.read_text(encoding="utf-8"), encoding="utf-8")
    (tmp_path / "src").symlink_to(ROOT / "src")

    def ran(*words: str) -> tuple[int, str]:
        done = subprocess.run([sys.executable, copy, *words], capture_output=True, text=True, check=False)
        return done.returncode, done.stdout

    assert ran("--check")[0] == 1
    assert ran() == (0, CURRENT)
    file = tmp_path / "demo" / "linden-yard" / "corners.txt"
    file.write_text(file.read_text(encoding="utf-8").replace("invented", "drawn"), encoding="utf-8")
    assert ran("--check") == (1, "corners.txt: out of date\n")
