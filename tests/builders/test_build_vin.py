"""The VIN tables in the tree are those that the authorities give."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def test_the_table_in_the_tree_is_up_to_date():
    """Running the builder again would change nothing."""
    command = [sys.executable, ROOT / "builders" / "build_vin.py", "--check"]
    ran = subprocess.run(command, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stderr
