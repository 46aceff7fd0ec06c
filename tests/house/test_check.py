"""./check goes on after a failure, names it, and ends with pytest's own line; skips are counted or refused."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

STANDIN = """#!/bin/bash
echo "$(basename "$0") $*" >>"$CALLS"
[ "$(basename "$0")" != "${FAILS:-}" ] || exit 1
if [ "$2" = pytest ]; then echo "== 3 passed in 0.10s =="; [ "${FAILS:-}" != pytest ] || exit 1; fi
"""
NEEDY = """
import pytest

def test_needs_data(shared_data): pass
def test_needs_data_too(shared_data): pass
def test_needs_wings(): pytest.skip("no wings here")
@pytest.mark.xfail(reason="a known fault", strict=True)
def test_known(): assert False
def test_plain(): pass
"""
NEEDY_MODULE = 'import pytest\npytest.skip("no such machine", allow_module_level=True)\n'


@pytest.fixture
def place(tmp_path: Path, root: Path) -> Path:
    """A folder with a copy of ./check in which every tool is a stand-in that notes its call."""
    shutil.copy(root / "check", tmp_path / "check")
    (tmp_path / ".venv" / "bin").mkdir(parents=True)
    (tmp_path / "builders").mkdir()
    (tmp_path / "builders" / "build_a.py").touch()
    for name in ("start", ".venv/bin/python", ".venv/bin/ruff", ".venv/bin/mypy", ".venv/bin/lint-imports"):
        (tmp_path / name).write_text(STANDIN, encoding="utf-8")
        (tmp_path / name).chmod(0o755)
    return tmp_path


def check(place: Path, fails: str) -> tuple[int, list[str], list[str]]:
    """Runs ./check from another folder with one failing tool: exit code, printed lines, calls."""
    env = {**os.environ, "CALLS": str(place / "calls.txt"), "FAILS": fails}
    done = subprocess.run([place / "check"], cwd="/", env=env, capture_output=True, text=True, check=False)
    return done.returncode, done.stdout.splitlines(), (place / "calls.txt").read_text(encoding="utf-8").splitlines()


def test_all_steps_run_and_the_last_line_is_that_of_pytest(place: Path) -> None:
    """Without a fault: every step once, exit 0, pytest's closing line last."""
    code, printed, calls = check(place, "nothing")
    assert code == 0
    assert printed[-1] == "== 3 passed in 0.10s =="
    assert calls == [
        "start --prepare --test",
        "python web/install_packages.py",
        "python web/build.py",
        "ruff check .",
        "ruff format --check .",
        "mypy ",
        "lint-imports ",
        "python builders/build_a.py --check",
        "python -m pytest -n 2",
    ]


@pytest.mark.parametrize(
    ("fails", "named"),
    [("ruff", "lint, format"), ("mypy", "types"), ("lint-imports", "layers"), ("pytest", "tests")],
)
def test_a_failing_step_stops_nothing_and_is_named(place: Path, fails: str, named: str) -> None:
    """With a fault in one tool the others still run, the fault is named last, the exit code is 1."""
    code, printed, calls = check(place, fails)
    assert code == 1
    assert printed[-1] == f"Failed: {named}"
    assert len(calls) == 9


def test_a_failed_set_up_ends_it(place: Path) -> None:
    """Where nothing could be installed, nothing is run."""
    code, _, calls = check(place, "start")
    assert code == 1
    assert calls == ["start --prepare --test"]


def run_needy(folder: Path, root: Path, *, ci: str, module: str = "") -> tuple[int, list[str]]:
    """Runs tests that need what is not there, under the rule of tests/conftest.py: exit code and printed lines."""
    tests = folder / "repo" / "tests"
    tests.mkdir(parents=True)
    shutil.copy(root / "tests" / "conftest.py", tests / "conftest.py")
    (tests / "test_needy.py").write_text(NEEDY, encoding="utf-8")
    (tests / "test_needy_module.py").write_text(module, encoding="utf-8")
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-ra", str(tests)]
    env = {**os.environ, "CI": ci}
    done = subprocess.run(command, cwd=folder / "repo", env=env, capture_output=True, text=True, check=False)
    return done.returncode, done.stdout.splitlines()


def test_skips_are_counted_with_their_reasons(tmp_path: Path, root: Path) -> None:
    """On a user's machine skips pass, and the last lines say how many there were and why."""
    code, printed = run_needy(tmp_path, root, ci="", module=NEEDY_MODULE)
    assert code == 0
    assert printed[-5:-1] == [
        "skipped: 4",
        "  2 × the real recordings (../shared/data) are not on this machine",
        "  1 × no such machine",
        "  1 × no wings here",
    ]
    assert printed[-1].startswith("1 passed, 4 skipped, 1 xfailed")


def test_on_the_build_machine_a_skip_is_a_failure(tmp_path: Path, root: Path) -> None:
    """With CI=true the same tests do not pass: 1 skips itself, 2 in their fixture; an expected failure stays one."""
    code, printed = run_needy(tmp_path, root, ci="true")
    assert code == 1
    assert printed[-2] == "skipped: 0"
    assert printed[-1].startswith("1 failed, 1 passed, 1 xfailed, 2 errors")
    assert "skipped, which is a failure where CI=true: no wings here" in printed


def test_on_the_build_machine_a_skipped_module_is_a_failure(tmp_path: Path, root: Path) -> None:
    """With CI=true a module that skips as a whole is an error."""
    code, printed = run_needy(tmp_path, root, ci="true", module=NEEDY_MODULE)
    assert code == 2
    assert "skipped, which is a failure where CI=true: no such machine" in printed
