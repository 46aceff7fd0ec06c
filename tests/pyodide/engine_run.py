"""What is run alike on the desk and in the browser's Python: a request comes in as JSON text, an answer goes out.

The request holds `modules` (names to import), `examples` (modules whose docstring examples are run) and `jobs` (texts
for the engine's door). The answer holds what each of them gave.
"""

import doctest
import importlib
import json
import sys


def examples_of(name: str) -> list[int]:
    """How many docstring examples of a module were tried, and how many failed."""
    results = doctest.testmod(importlib.import_module(name))
    return [results.attempted, results.failed]


def run(request: str) -> str:
    """The answer to a request, both JSON texts."""
    asked = json.loads(request)
    answer = {
        "python": sys.version.split()[0],
        "platform": sys.platform,
        "modules": [importlib.import_module(name).__name__ for name in asked["modules"]],
        "examples": {name: examples_of(name) for name in asked["examples"]},
        "jobs": [],
    }
    if asked["jobs"]:
        door = importlib.import_module("backprobe.job.door")
        answer["jobs"] = [door.judge_text(text) for text in asked["jobs"]]
    return json.dumps(answer)


if __name__ == "__main__":
    sys.stdout.write(run(sys.stdin.read()))
