"""What is run alike on the desk and in the browser's Python: a request comes in as JSON text, an answer goes out.

The request holds `modules` (names to import), `examples` (modules whose docstring examples are run) and `calls`
(functions of the engine, with their arguments by position and by name). The answer holds what each of them gave.
"""

import array
import dataclasses
import doctest
import importlib
import json
import sys


def examples_of(name: str) -> list[int]:
    """How many docstring examples of a module were tried, and how many failed."""
    results = doctest.testmod(importlib.import_module(name))
    return [results.attempted, results.failed]


def plain(value: object) -> object:
    """A value of the engine as JSON can hold it; floats keep every digit."""
    if dataclasses.is_dataclass(value):
        return {field.name: getattr(value, field.name) for field in dataclasses.fields(value)}
    if isinstance(value, set | frozenset):
        return sorted(value)
    if isinstance(value, array.array):
        return list(value)
    raise TypeError(f"no JSON for {type(value).__name__}")


def called(call: dict) -> str:
    """What a function returns: {"function": "package.module:name", "by_position": […], "by_name": {…}} → JSON text."""
    module, _, name = call["function"].partition(":")
    result = getattr(importlib.import_module(module), name)(*call["by_position"], **call["by_name"])
    return json.dumps(result, default=plain)


def run(request: str) -> str:
    """The answer to a request, both JSON texts."""
    asked = json.loads(request)
    answer = {
        "platform": sys.platform,
        "modules": [importlib.import_module(name).__name__ for name in asked["modules"]],
        "examples": {name: examples_of(name) for name in asked["examples"]},
        "calls": {label: called(call) for label, call in asked["calls"].items()},
    }
    return json.dumps(answer)


if __name__ == "__main__":
    sys.stdout.write(run(sys.stdin.read()))
