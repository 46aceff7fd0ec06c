"""The electrical tables are those that their authorities give."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = (
    *("awg", "iec-60228", "iso-6722", "33-cfr-183", "ac-43-13-1b", "iec-60364-5-54"),
    *("iso-8820-3", "crimp-pull", "joints", "batteries", "49-cfr-393"),
)


def run(root, *options):
    """The finished run of the builder that stands below `root`."""
    builder = root / "builders" / "build_electrics.py"
    return subprocess.run([sys.executable, builder, *options], capture_output=True, text=True, check=False)


@pytest.fixture
def tree(tmp_path):
    """A small tree with the builder and its authorities, and its tables made."""
    shutil.copytree(ROOT / "builders", tmp_path / "builders", ignore=shutil.ignore_patterns("__pycache__"))
    for folder in FOLDERS:
        shutil.copytree(ROOT / "authorities" / folder, tmp_path / "authorities" / folder)
    (tmp_path / "src" / "backprobe" / "limits").mkdir(parents=True)
    assert run(tmp_path).returncode == 0
    return tmp_path


def test_the_tables_in_the_tree_are_up_to_date():
    """Running the builder again would change nothing."""
    ran = run(ROOT, "--check")
    assert ran.returncode == 0, ran.stderr


@pytest.mark.parametrize(
    ("table", "was", "now", "module", "holds"),
    [
        ("iec-60228/most-ohm.csv", "0.5,36.0,39.0,", "0.5,36.0,39.5,", "wires", "0.5: (36.0, 39.5, 40.1),"),
        ("iso-8820-3/constants.csv", "WIRE_OVER_FUSE,1.35", "WIRE_OVER_FUSE,1.5", "fuses", "WIRE_OVER_FUSE = 1.5\n"),
        ("crimp-pull/pull.csv", "18,89.0,", "18,90.0,", "crimps", "18: (90.0, 169.0),"),
        ("joints/limits.csv", "ground_drop,100,", "ground_drop,90,", "joints", '"ground_drop",\n        90.0,'),
        ("batteries/rest-volts.csv", "a,1,12.65", "a,1,12.66", "batteries", "(12.66, 1.0),"),
    ],
)
def test_a_changed_figure_is_noticed(tree, table, was, now, module, holds):
    """After a change in an authority --check fails and names the table; made again, the figure stands in it."""
    assert run(tree, "--check").returncode == 0
    path = tree / "authorities" / table
    text = path.read_text(encoding="utf-8")
    assert was in text
    path.write_text(text.replace(was, now), encoding="utf-8")
    checked = run(tree, "--check")
    assert checked.returncode == 1
    assert f"limits/{module}.py is out of date" in checked.stderr
    assert run(tree).returncode == 0
    assert holds in (tree / "src/backprobe/limits" / f"{module}.py").read_text(encoding="utf-8")
    assert run(tree, "--check").returncode == 0


def test_an_empty_cell_is_none(tree):
    """0.34 mm² has no tinned figure, 8 AWG no military pull."""
    made = tree / "src/backprobe/limits"
    assert "0.34: (53.0, 56.0, None)," in (made / "wires.py").read_text(encoding="utf-8")
    assert "8: (400.5, None)," in (made / "crimps.py").read_text(encoding="utf-8")
