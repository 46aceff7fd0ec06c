"""The commands as a user meets them: each option explained, each JSON answer described, quick to start."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

OPTION = re.compile(r"(?<![\w-])--[a-z][a-z-]+")
# slow to load, or needed only by what somebody has asked for by name
HEAVY = {"asyncio", "concurrent", "email", "http", "multiprocessing", "sqlite3", "ssl", "unittest", "urllib", "xml"}
LIST_LOADED = """
import sys
before = set(sys.modules)
from backprobe.cli.main import main
sys.argv = ["backprobe", *{arguments}]
try:
    main()
except SystemExit:
    pass
print("\\nLOADED", *sorted({{name.split(".")[0] for name in set(sys.modules) - before}}))
"""


def help_of(*command: str) -> str:
    """What a command prints for --help."""
    program = Path(sys.executable).with_name("backprobe")
    return subprocess.run([program, *command, "--help"], capture_output=True, text=True, check=True).stdout


@pytest.fixture(scope="module")
def helps() -> dict[str, str]:
    """The help text of each command, by its name."""
    listed = re.search(r"\{([a-z,-]+)\}", help_of())
    assert listed, "backprobe --help lists its commands as {probe,judge,…}"
    return {name: help_of(name) for name in listed[1].split(",")}


def unexplained(helps: dict[str, str], page: str) -> list[str]:
    """The commands and options that a page does not name; --help needs no explanation."""
    wanted = [(name, option) for name, text in helps.items() for option in sorted({name, *OPTION.findall(text)})]
    return [f"{name}: {word}" for name, word in wanted if word != "--help" and not named(word, page)]


def named(word: str, page: str) -> bool:
    """Whether a page names a word as a whole."""
    return re.search(rf"(?<![\w-]){re.escape(word)}(?![\w-])", page) is not None


def loaded(*arguments: str) -> set[str]:
    """The top-level modules that a start of the command loads."""
    script = LIST_LOADED.format(arguments=list(arguments))
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    return set(done.stdout.rpartition("LOADED")[2].split())


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


def test_schemas_are_valid(texts: dict[str, str]) -> None:
    """Each file in schemas/ is a JSON Schema of draft 2020-12 with an id of its own."""
    jsonschema = pytest.importorskip("jsonschema")
    schemas = {path: json.loads(text) for path, text in texts.items() if path.startswith("schemas/")}
    assert schemas
    for path, schema in schemas.items():
        assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema", path
        jsonschema.Draft202012Validator.check_schema(schema)
    assert len({schema["$id"] for schema in schemas.values()}) == len(schemas)
