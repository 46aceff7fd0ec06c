"""The table of starting profiles is the one that its authority gives."""

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MADE = "src/backprobe/limits/iso_16750_2.py"


def run(root, *options):
    """The finished run of the builder that stands below `root`."""
    builder = root / "builders" / "build_iso_16750_2.py"
    return subprocess.run([sys.executable, builder, *options], capture_output=True, text=True, check=False)


def copied(tmp_path):
    """A small tree with the builder and its authority, and no table made yet."""
    shutil.copytree(ROOT / "builders", tmp_path / "builders", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(ROOT / "authorities" / "iso-16750-2", tmp_path / "authorities" / "iso-16750-2")
    (tmp_path / MADE).parent.mkdir(parents=True)
    return tmp_path


def test_the_table_in_the_tree_is_up_to_date():
    """Running the builder again would change nothing."""
    ran = run(ROOT, "--check")
    assert ran.returncode == 0, ran.stderr


def test_a_changed_figure_is_noticed(tmp_path):
    """After a change in the authority --check fails until the table is made again."""
    root = copied(tmp_path)
    assert run(root, "--check").returncode == 1
    assert run(root).returncode == 0
    table = root / "authorities" / "iso-16750-2" / "profiles.csv"
    table.write_text(table.read_text(encoding="utf-8").replace("12,II,12,4.5,", "12,II,12,4.4,"), encoding="utf-8")
    assert run(root, "--check").returncode == 1
    assert run(root).returncode == 0
    assert '"trough_V": 4.4,' in (root / MADE).read_text(encoding="utf-8")


def test_milliseconds_become_seconds(tmp_path):
    """The table's 5 ms stand in the module as 0.005 s."""
    root = copied(tmp_path)
    run(root)
    assert '"fall_s": 0.005,' in (root / MADE).read_text(encoding="utf-8")
