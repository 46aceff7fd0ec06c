"""Below the browser line there is the standard library and nothing that touches the world around it.

The engine runs on a phone without a file system, a clock to be trusted or threads, and must say there exactly what it
says on a desk (docs/decisions/0001). So each module below the line may import only from the list here.
"""

from __future__ import annotations

import ast

import pytest

ALLOWED = {
    *("__future__", "abc", "array", "base64", "binascii", "bisect", "codecs", "collections", "contextlib", "copy"),
    *("csv", "dataclasses", "datetime", "decimal", "difflib", "enum", "fractions", "functools", "hashlib", "heapq"),
    *("html", "io", "itertools", "json", "keyword", "math", "operator", "re", "statistics", "string", "struct"),
    *("textwrap", "tomllib", "types", "typing", "unicodedata", "uuid", "zlib"),
    "backprobe",
}
# of these modules only the names given: the rest opens files, asks the clock or rolls dice
ONLY = {
    "io": {"StringIO", "BytesIO", "TextIOWrapper"},
    "uuid": {"UUID", "uuid5", "NAMESPACE_DNS", "NAMESPACE_URL", "NAMESPACE_OID", "NAMESPACE_X500"},
}
REFUSED_BUILTINS = {"open", "print", "input", "exec", "eval", "__import__", "breakpoint", "exit", "quit"}
REFUSED_CALLS = {"hash", "id"}  # differ from run to run
REFUSED_ATTRIBUTES = {
    *("now", "today", "utcnow", "open", "read_text", "read_bytes", "write_text", "write_bytes"),
    *("environ", "getenv", "uuid1", "uuid4", "uuid6", "uuid7", "uuid8"),
}
NEEDS_ZONE = {"fromtimestamp": 2, "astimezone": 1}  # with fewer arguments they ask this machine's time zone


def import_faults(node: ast.AST) -> list[str]:
    """What is wrong with an import: a module off the list, or a name of a module that is allowed only in part."""
    if isinstance(node, ast.Import):
        return [f"imports {name.name}" for name in node.names if name.name.split(".")[0] not in ALLOWED]
    if not isinstance(node, ast.ImportFrom) or node.level:
        return []
    module = str(node.module)
    if module.split(".")[0] not in ALLOWED:
        return [f"imports {module}"]
    only = ONLY.get(module)
    taken = [name.name for name in node.names]
    return [f"imports {module}.{name}" for name in taken if only is not None and name not in only]


def use_faults(node: ast.AST) -> list[str]:
    """What is wrong with the use of a name: builtins, attributes and calls that reach outside."""
    if isinstance(node, ast.Name) and node.id in REFUSED_BUILTINS and isinstance(node.ctx, ast.Load):
        return [f"uses {node.id}"]
    if isinstance(node, ast.Attribute):
        owner = node.value.id if isinstance(node.value, ast.Name) else ""
        refused = node.attr in REFUSED_ATTRIBUTES or (owner in ONLY and node.attr not in ONLY[owner])
        return [f"uses .{node.attr}"] if refused else []
    if isinstance(node, ast.Call):
        return call_faults(node)
    return []


def call_faults(call: ast.Call) -> list[str]:
    """What is wrong with a call: values that differ from run to run, or with the place it runs at."""
    if isinstance(call.func, ast.Name) and call.func.id in REFUSED_CALLS:
        return [f"calls {call.func.id}()"]
    least = NEEDS_ZONE.get(call.func.attr, 0) if isinstance(call.func, ast.Attribute) else 0
    return [f"calls .{call.func.attr}() without a time zone"] if len(call.args) + len(call.keywords) < least else []


def faults(source: str) -> list[str]:
    """Everything in a module's source that must not stand below the line, each with its line number."""
    nodes = sorted((n for n in ast.walk(ast.parse(source)) if hasattr(n, "lineno")), key=lambda n: n.lineno)
    return [f"line {node.lineno} {fault}" for node in nodes for fault in (*import_faults(node), *use_faults(node))]


def test_nothing_below_the_line_reaches_outside(below: dict[str, str]) -> None:
    """Every module below the line keeps to the list."""
    assert len(below) > 10
    found = [f"{path} {fault}" for path, text in below.items() for fault in faults(text)]
    assert not found, "\n".join(found)


def test_every_module_is_on_one_side(sources: dict[str, str], below: dict[str, str]) -> None:
    """What is not known to stand above the line is looked at as below it."""
    above = ("cli/", "server/", "cases/", "store/", "watch/", "campaign/", "paper/", "keys/", "files/")
    assert {path for path in sources if not path.startswith(above)} == set(below)


@pytest.mark.parametrize(
    "line",
    [
        "import os",
        "import sys",
        "import time",
        "import random",
        "import threading",
        "import numpy as np",
        "import importlib.resources",
        "from pathlib import Path",
        "from io import FileIO",
        "from uuid import uuid4",
        "from os.path import join",
        "text = open('a')",
        "print('a')",
        "ask = input",
        "code = eval('1')",
        "at = datetime.now(UTC)",
        "at = datetime.datetime.utcnow()",
        "day = date.today()",
        "at = datetime.fromtimestamp(0)",
        "at = stamp.astimezone()",
        "name = uuid.uuid1()",
        "name = uuid.uuid7()",
        "handle = io.open('a')",
        "text = path.read_text()",
        "order = hash('a')",
        "key = id(thing)",
    ],
)
def test_reaching_outside_is_seen(line: str) -> None:
    """Each of these lines is refused, also deep inside a function."""
    assert faults(line) != []
    assert faults(f"def f(volts):\n    if volts:\n        {line}\n") != []


@pytest.mark.parametrize(
    "line",
    [
        "import math",
        "from io import StringIO",
        "from uuid import UUID, uuid5",
        "from backprobe.errors import InputError",
        "from collections.abc import Iterable",
        "at = datetime.fromisoformat(text)",
        "at = datetime.fromtimestamp(0, tz=UTC)",
        "total = math.fsum(volts)",
        "class Counts:\n    open: int = 0",
    ],
)
def test_plain_work_is_let_through(line: str) -> None:
    """None of these lines is refused."""
    assert faults(line) == []
