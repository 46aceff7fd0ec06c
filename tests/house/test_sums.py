"""Below the browser line fractions are added with math.fsum.

Python 3.12 and later add floats with the builtin sum() more exactly than 3.11 does, so the same evidence could give
other figures on the phone than on the desk. Whole numbers may be added with sum().
"""

from __future__ import annotations

import ast

import pytest


def is_sum(node: ast.AST | None) -> bool:
    """Whether a node calls sum()."""
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "sum"


def whole_sums(tree: ast.AST) -> set[ast.AST]:
    """The calls of sum() that are known to add whole numbers.

    Those are counts (`sum(1 for …)`, of lengths, of comparisons), and those whose result is declared an int, where
    the type check would object to a float: `total: int = sum(…)`, also `… % 11`, and `return sum(…)` of `-> int`.
    """
    sums = {node for node in ast.walk(tree) if is_sum(node) and isinstance(node, ast.Call) and only_counts(node)}
    declared = [n.value for n in ast.walk(tree) if isinstance(n, ast.AnnAssign) and is_int(n.annotation)]
    for function in ast.walk(tree):
        if isinstance(function, ast.FunctionDef) and is_int(function.returns):
            declared += [node.value for node in ast.walk(function) if isinstance(node, ast.Return)]
    return sums | {left for value in declared if is_sum(left := leftmost(value)) and left is not None}


def is_int(annotation: ast.expr | None) -> bool:
    """Whether an annotation says int."""
    return isinstance(annotation, ast.Name) and annotation.id == "int"


def leftmost(value: ast.expr | None) -> ast.expr | None:
    """The first operand of an arithmetic expression."""
    return leftmost(value.left) if isinstance(value, ast.BinOp) else value


def only_counts(call: ast.Call) -> bool:
    """Whether a sum() adds nothing but 1, len(…), int(…) or comparisons."""
    each = call.args[0].elt if isinstance(call.args[0], ast.GeneratorExp | ast.ListComp) else call.args[0]
    if isinstance(each, ast.Call):
        return isinstance(each.func, ast.Name) and each.func.id in {"len", "int", "bool", "ord"}
    return isinstance(each, ast.Compare) or (isinstance(each, ast.Constant) and isinstance(each.value, int))


def faults(source: str) -> list[str]:
    """The calls of sum() in a module that may add fractions."""
    tree = ast.parse(source)
    unsure = {node for node in ast.walk(tree) if is_sum(node)} - whole_sums(tree)
    lines = sorted(node.lineno for node in unsure if isinstance(node, ast.Call))
    return [f"line {line} calls sum(): math.fsum, or declare the result an int" for line in lines]


def test_fractions_are_added_the_same_way_everywhere(below: dict[str, str]) -> None:
    """No module below the line adds fractions with sum()."""
    found = [f"{path} {fault}" for path, text in below.items() for fault in faults(text)]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    "line",
    [
        "total = sum(volts)",
        "total = sum(x * x for x in volts)",
        "total = sum([0.1, 0.2])",
        "total = sum(count(x) for x in volts)",
        "total: float = sum(volts)",
        "total: int = round(sum(volts))",
        "def total(volts) -> float:\n    return sum(volts)",
    ],
)
def test_a_sum_of_fractions_is_seen(line: str) -> None:
    """Each of these may add fractions."""
    assert len(faults(line)) == 1


@pytest.mark.parametrize(
    "line",
    [
        "count = sum(1 for wire in wires)",
        "count = sum(len(wire) for wire in wires)",
        "count = sum(wire.volts > 9.0 for wire in wires)",
        "total: int = sum(weights) % 11",
        "def total(weights) -> int:\n    return sum(weights)",
        "total = math.fsum(volts)",
    ],
)
def test_a_sum_of_whole_numbers_is_let_through(line: str) -> None:
    """Each of these adds whole numbers, or is exact."""
    assert faults(line) == []
