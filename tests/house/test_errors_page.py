"""docs/errors.md names every error code that the product can answer with, and no other."""

from __future__ import annotations

import ast
import re

CODE_ROW = re.compile(r"^\| `([a-z_]+)` \|", re.M)


def codes(source: str) -> set[str]:
    """The values that the classes of a module give to `code`."""
    bodies = [node.body for node in ast.walk(ast.parse(source)) if isinstance(node, ast.ClassDef)]
    given = [
        (target.id, node.value.value)
        for body in bodies
        for node in body
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant)
        for target in node.targets
        if isinstance(target, ast.Name)
    ]
    return {str(value) for name, value in given if name == "code"}


def test_every_code_has_its_row(sources: dict[str, str], texts: dict[str, str]) -> None:
    """The table of codes and the error classes of the whole product agree."""
    in_product = {code for source in sources.values() for code in codes(source)}
    assert {"error", "input", "unreadable"} <= in_product
    assert set(CODE_ROW.findall(texts["docs/errors.md"])) == in_product


def test_codes_are_found() -> None:
    """A class's code is seen; other constants, and rows without one, are not."""
    assert codes('class A(E):\n    """Words."""\n    code = "torn"\n    other = "x"\ncode = "y"') == {"torn"}
    assert CODE_ROW.findall("| `torn` | words |\n| torn | words |") == ["torn"]
