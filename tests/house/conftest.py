"""The tree as the house's promises look at it: its folder, its files, its modules."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
NOT_OURS = {".git", ".venv", "node_modules", "__pycache__", "out", "dist", "build"}
CACHES = {".cache", ".hypothesis", ".import_linter_cache", ".mypy_cache", ".pytest_cache", ".ruff_cache"}
BELOW_THE_LINE = ("job/", "tongues/", "stages/", "drawings/", "formats/", "inference/", "limits/", "physics/")
BELOW_THE_LINE += ("evidence/", "__init__.py", "findings.py", "errors.py")


@pytest.fixture(scope="session")
def root() -> Path:
    """The repository's folder."""
    return ROOT


@pytest.fixture(scope="session")
def texts() -> dict[str, str]:
    """Every text file of the tree by its path from the root; files that are no UTF-8 text are left out."""
    found: dict[str, str] = {}
    for folder, folders, files in os.walk(ROOT):
        folders[:] = sorted(set(folders) - NOT_OURS - CACHES)
        for path in (Path(folder, name) for name in sorted(files)):
            try:
                found[path.relative_to(ROOT).as_posix()] = path.read_text(encoding="utf-8")
            except UnicodeDecodeError:
                continue
    return found


@pytest.fixture(scope="session")
def sources(texts: dict[str, str]) -> dict[str, str]:
    """The product's own modules: path below src/backprobe → source text."""
    start = "src/backprobe/"
    return {
        path.removeprefix(start): text
        for path, text in texts.items()
        if path.startswith(start) and path.endswith(".py")
    }


@pytest.fixture(scope="session")
def below(sources: dict[str, str]) -> dict[str, str]:
    """Those of the product's modules that stand below the browser line: path below src/backprobe → source text."""
    return {path: text for path, text in sources.items() if path.startswith(BELOW_THE_LINE)}
