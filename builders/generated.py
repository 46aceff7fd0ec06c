"""What all builders do with the text they made: write it, or check that it stands in the tree already."""

from __future__ import annotations

import argparse
import csv
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def rows(table: str) -> list[dict[str, str]]:
    """The rows of `authorities/<table>`, a CSV file with a header line; '#' lines are comments."""
    text = (ROOT / "authorities" / table).read_text(encoding="utf-8")
    return list(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))


def quoted(text: str) -> str:
    """`text` as a Python string in double quotes."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def settle(made: dict[str, str]) -> int:
    """Write each text to its path below the root; with --check only compare. Returns 1 if a file was out of date."""
    parser = argparse.ArgumentParser(description="Make the tables of src/backprobe/limits from authorities/.")
    parser.add_argument("--check", action="store_true", help="write nothing; exit 1 if a table is out of date")
    check = parser.parse_args().check
    stale = [path for path, text in made.items() if current(path) != text]
    for path in stale:
        if check:
            print(f"{path} is out of date: run {sys.argv[0]}", file=sys.stderr)
        else:
            (ROOT / path).write_text(made[path], encoding="utf-8")
            print(f"wrote {path}")
    return 1 if check and stale else 0


def current(path: str) -> str | None:
    """What stands at `path` below the root now; None where there is no such file."""
    file = ROOT / path
    return file.read_text(encoding="utf-8") if file.exists() else None
