"""The engine's modules as the browser's Python finds them: all in one file, compiled ahead by that same Python.

Half of what importing them took went into compiling what `dataclasses` writes for each class, a quarter into looking
for modules in a zip and reading them there one by one. So both stand ready in the file: `modules` by their names, each
with whether it is a package, and `written`, the compiled form of each text that `dataclasses` runs. A text that is not
there is run as ever.
"""

import dataclasses
import marshal
import sys
from importlib.machinery import ModuleSpec
from pathlib import Path
from types import ModuleType

AHEAD = marshal.loads(Path("/engine.bin").read_bytes())


class Ahead:
    """Finds the engine's modules in the file, and runs them."""

    @staticmethod
    def find_spec(name: str, *_where: object) -> ModuleSpec | None:
        """Where a module is: here, or not."""
        found = AHEAD["modules"].get(name)
        return None if found is None else ModuleSpec(name, Ahead, is_package=found[0])

    @staticmethod
    def create_module(_spec: ModuleSpec) -> None:
        """None: a module as any other."""

    @staticmethod
    def exec_module(module: ModuleType) -> None:
        """Run a module."""
        exec(marshal.loads(AHEAD["modules"][module.__name__][1]), module.__dict__)


def written(text: str, *spaces: dict[str, object]) -> None:
    """As `exec`, for what `dataclasses` has written."""
    code = AHEAD["written"].get(text)
    exec(text if code is None else marshal.loads(code), *spaces)


sys.meta_path.insert(0, Ahead)
dataclasses.exec = written
