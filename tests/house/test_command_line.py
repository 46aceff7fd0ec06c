"""The commands as a user meets them: each option explained, each JSON answer described, quick to start."""

from __future__ import annotations

import json
import re
import subprocess
import sys

import pytest
from jsonschema import Draft202012Validator

from backprobe.cli.parser import COMMANDS

OPTION = re.compile(r"(?<![\w-])--[a-z][\w-]*")
# slow to load, or needed only by what somebody has asked for by name
HEAVY = {"asyncio", "concurrent", "email", "http", "multiprocessing", "sqlite3", "ssl", "unittest", "urllib", "xml"}
RUN = "import sys; from backprobe.cli.main import main; sys.argv[0] = 'backprobe'; sys.exit(main())"
RUN_AND_LIST = """
import sys
before = set(sys.modules)
from backprobe.cli.main import main
try:
    main(sys.argv[1:])
except SystemExit:
    pass
print("\\nLOADED", *sorted({name.split(".")[0] for name in set(sys.modules) - before}))
"""


def printed(script: str, *arguments: str) -> str:
    """What a script of Python prints in a process of its own."""
    command = [sys.executable, "-c", script, *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


@pytest.fixture(scope="module")
def helps() -> dict[str, str]:
    """The help text of each command, by its name."""
    return {name: printed(RUN, name, "--help") for name in COMMANDS}


def unexplained(helps: dict[str, str], page: str) -> list[str]:
    """The commands and options that a page does not name; --help needs no explanation."""
    wanted = [(name, option) for name, text in helps.items() for option in sorted({name, *OPTION.findall(text)})]
    return [f"{name}: {word}" for name, word in wanted if word != "--help" and not named(word, page)]


def named(word: str, page: str) -> bool:
    """Whether a page names a word as a whole."""
    return re.search(rf"(?<![\w-]){re.escape(word)}(?![\w-])", page) is not None


def loaded(*arguments: str) -> set[str]:
    """The top-level modules that a run of the command loads."""
    return set(printed(RUN_AND_LIST, *arguments).rpartition("LOADED")[2].split())


def test_every_option_is_explained(helps: dict[str, str], texts: dict[str, str]) -> None:
    """docs/command-line.md names each command and each of its options."""
    assert {"probe", "judge"} <= set(helps)
    missing = unexplained(helps, texts["docs/command-line.md"])
    assert not missing, "\n".join(missing)


def test_an_unexplained_option_is_seen() -> None:
    """Options and commands that are not named, or only as part of a longer word, are reported."""
    helps = {"probe": "usage: backprobe probe [--help] [--no-crank] FILE"}
    assert unexplained(helps, "`probe` takes `--no-crank`") == []
    assert unexplained(helps, "`probe` takes `--no-crank-at-all`") == ["probe: --no-crank"]
    assert unexplained(helps, "`--no-crank`") == ["probe: probe"]


def test_help_loads_nothing_heavy() -> None:
    """`backprobe --help` loads nothing from outside the standard library and nothing slow from inside it."""
    names = loaded("--help")
    assert "backprobe" in names
    assert names - set(sys.stdlib_module_names) == {"backprobe"}
    assert names & HEAVY == set()


def test_heavy_loading_is_seen() -> None:
    """The list of what was loaded would show a heavy module."""
    assert "sqlite3" in printed("import sqlite3, sys; print(*sys.modules)").split()
    assert {"argparse", "json"} <= loaded("--help")


def test_schemas_are_valid(texts: dict[str, str]) -> None:
    """Each file in schemas/ is a JSON Schema of draft 2020-12 with an id of its own."""
    schemas = {path: json.loads(text) for path, text in texts.items() if path.startswith("schemas/")}
    assert schemas
    for path, schema in schemas.items():
        assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema", path
        Draft202012Validator.check_schema(schema)
    assert len({schema["$id"] for schema in schemas.values()}) == len(schemas)


def undescribed(helps: dict[str, str], paths: set[str]) -> list[str]:
    """The JSON answers without a schema: one for each command that has --json, and one for refusals."""
    names = [name for name, text in helps.items() if "--json" in OPTION.findall(text)] + ["error"]
    return [name for name in names if not any(path.startswith(f"schemas/{name}") for path in paths)]


def test_every_json_answer_is_described(helps: dict[str, str], texts: dict[str, str]) -> None:
    """Each command that prints JSON has a schema that bears its name, and so has the refusal."""
    assert undescribed(helps, set(texts)) == []


def test_an_undescribed_answer_is_seen() -> None:
    """A command without --json needs none."""
    helps = {"probe": "--json  print JSON", "serve": "--port"}
    assert undescribed(helps, {"schemas/error.schema.json"}) == ["probe"]
    assert undescribed(helps, {"schemas/probe.schema.json"}) == ["error"]
    assert undescribed(helps, {"schemas/probe.schema.json", "schemas/error.schema.json"}) == []
