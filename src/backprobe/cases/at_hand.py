"""The engine and the limits at hand, by their digests: a sign-off keeps those that it was judged by."""

from __future__ import annotations

import hashlib
import pkgutil
from functools import lru_cache
from importlib import import_module, resources
from importlib.resources.abc import Traversable

from backprobe import limits
from backprobe.job.limits_text import limits_text

# all that a verdict can depend on: what stands below the browser line
ENGINE = ("job", "stages", "drawings", "formats", "inference", "limits", "physics", "evidence")
ENGINE_FILES = ("findings.py", "errors.py")


@lru_cache(maxsize=1)
def engine_sha256() -> str | None:
    """The sha256 over the engine's source files, each with its path; None where the sources are not installed."""
    package = resources.files("backprobe")
    files = {name: package.joinpath(name) for name in ENGINE_FILES}
    for folder in ENGINE:
        files |= _sources(package.joinpath(folder), folder)
    if not files["findings.py"].is_file():
        return None
    rows = (f"{hashlib.sha256(files[path].read_bytes()).hexdigest()} {path}\n" for path in sorted(files))
    return hashlib.sha256("".join(rows).encode()).hexdigest()


def _sources(folder: Traversable, path: str) -> dict[str, Traversable]:
    """The Python files below a folder, by their path from the package."""
    found: dict[str, Traversable] = {}
    for item in folder.iterdir() if folder.is_dir() else ():
        name = f"{path}/{item.name}"
        if item.is_dir():
            found |= _sources(item, name)
        elif name.endswith(".py"):
            found[name] = item
    return found


@lru_cache(maxsize=1)
def limits_sha256() -> str:
    """The sha256 over all tables of limits, by their values."""
    return hashlib.sha256(limits_text(limit_tables())).hexdigest()


def limit_tables() -> dict[str, object]:
    """Every table in `backprobe.limits`: 'module.NAME' and its value."""
    tables: dict[str, object] = {}
    for found in pkgutil.iter_modules(limits.__path__):
        module = import_module(f"backprobe.limits.{found.name}")
        tables |= {f"{found.name}.{name}": value for name, value in vars(module).items() if _is_table(name)}
    return tables


def _is_table(name: str) -> bool:
    return name.isupper() and not name.startswith("_")
