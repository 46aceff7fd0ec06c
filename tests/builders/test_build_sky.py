"""The generated tables are those that the authorities give."""

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def run(root, *options):
    """The exit code of the builder that stands below `root`."""
    builder = root / "builders" / "build_sky.py"
    return subprocess.run([sys.executable, builder, *options], capture_output=True, text=True, check=False)


def copied(tmp_path):
    """A small tree with the builder and its authorities, and no table made yet."""
    shutil.copytree(ROOT / "builders", tmp_path / "builders", ignore=shutil.ignore_patterns("__pycache__"))
    for table in ("gps-sps-ps", "sky"):
        shutil.copytree(ROOT / "authorities" / table, tmp_path / "authorities" / table)
    (tmp_path / "src" / "backprobe" / "limits").mkdir(parents=True)
    return tmp_path


def test_the_tables_in_the_tree_are_up_to_date():
    """Running the builder again would change nothing."""
    ran = run(ROOT, "--check")
    assert ran.returncode == 0, ran.stderr


def test_a_changed_figure_is_noticed(tmp_path):
    """After a change in an authority --check fails until the table is made again."""
    root = copied(tmp_path)
    assert run(root).returncode == 0
    table = root / "authorities" / "sky" / "limits.csv"
    table.write_text(table.read_text(encoding="utf-8").replace("fix_share,88,", "fix_share,91.5,"), encoding="utf-8")
    assert run(root, "--check").returncode == 1
    assert run(root).returncode == 0
    assert run(root, "--check").returncode == 0
    assert "91.5," in (root / "src/backprobe/limits/sky.py").read_text(encoding="utf-8")


def test_a_missing_table_is_noticed(tmp_path):
    """Without the generated files --check fails."""
    assert run(copied(tmp_path), "--check").returncode == 1
