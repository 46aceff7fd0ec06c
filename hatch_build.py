"""Puts the built pages into the wheel, so that whoever installs it needs neither Node nor a build."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

INSIDE = "backprobe/pages"  # where src/backprobe/server/pages.py looks in an installed package


class PagesHook(BuildHookInterface[Any]):
    """Runs web/build.py, which does nothing where the pages are as they should be."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Builds and includes the pages; an editable installation serves web/dist, which ./start builds."""
        if version == "editable":
            return
        web = Path(self.root) / "web"
        subprocess.run([sys.executable, str(web / "build.py")], check=True)
        build_data["force_include"][str(web / "dist")] = INSIDE
