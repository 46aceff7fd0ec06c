"""The limits of reception are those that their authority gives."""

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MADE = "src/backprobe/limits/reception.py"


def run(root, *options):
    """The finished run of the builder that stands below `root`."""
    builder = root / "builders" / "build_reception.py"
    return subprocess.run([sys.executable, builder, *options], capture_output=True, text=True, check=False)


def test_the_table_in_the_tree_is_up_to_date():
    """Running the builder again would change nothing."""
    ran = run(ROOT, "--check")
    assert ran.returncode == 0, ran.stderr


def test_a_changed_figure_is_noticed(tmp_path):
    """After a change in the authority --check fails until the table is made again."""
    shutil.copytree(ROOT / "builders", tmp_path / "builders", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(ROOT / "authorities" / "reception", tmp_path / "authorities" / "reception")
    (tmp_path / MADE).parent.mkdir(parents=True)
    assert run(tmp_path, "--check").returncode == 1
    assert run(tmp_path).returncode == 0
    table = tmp_path / "authorities" / "reception" / "limits.csv"
    table.write_text(table.read_text(encoding="utf-8").replace(",35.5,dB", ",36.5,dB"), encoding="utf-8")
    assert run(tmp_path, "--check").returncode == 1
    assert run(tmp_path).returncode == 0
