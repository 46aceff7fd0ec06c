"""The examples in docstrings give what they show."""

from __future__ import annotations

import doctest
import importlib
import types
from pathlib import Path

import pytest

SRC = Path(__file__).resolve().parents[2] / "src"
WITH_EXAMPLES = sorted(
    path.relative_to(SRC).with_suffix("").as_posix().replace("/", ".").removesuffix(".__init__")
    for path in (SRC / "backprobe").rglob("*.py")
    if ">>> " in path.read_text(encoding="utf-8")
)


@pytest.mark.parametrize("module", WITH_EXAMPLES)
def test_examples_in_docstrings_hold(module: str) -> None:
    """Each >>> line of the module prints what stands below it."""
    results = doctest.testmod(importlib.import_module(module))
    assert results.attempted > 0
    assert results.failed == 0


def test_a_wrong_example_is_seen() -> None:
    """An example that shows a wrong result fails."""
    module = types.ModuleType("sample", ">>> 1 + 1\n3\n")
    assert doctest.testmod(module).failed == 1
