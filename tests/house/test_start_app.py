"""./start as it is: on the demo fleet, with the real commands and a real server, until Ctrl-C."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

PATIENCE_S = 120


@pytest.fixture
def port() -> int:
    """A port on which nobody listens."""
    with socket.socket() as held:
        held.bind(("127.0.0.1", 0))
        return int(held.getsockname()[1])


def put(path: Path, script: str) -> None:
    """Writes an executable script."""
    path.write_text(script, encoding="utf-8")
    path.chmod(0o755)


class Opened:
    """./start as it is, on the real fleet with the real commands; only what would be installed and built is there."""

    def __init__(self, folder: Path, root: Path, port: int) -> None:
        self.repo, self.port, self.bin = folder / "repo", port, folder / "bin"
        self.repo.mkdir()
        self.bin.mkdir()
        self.browser = folder / "browser.txt"
        for name in ("start", "pyproject.toml"):
            shutil.copy(root / name, self.repo / name)
        shutil.copytree(root / "demo", self.repo / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
        venv = self.repo / ".venv"
        (venv / "bin").mkdir(parents=True)
        put(venv / "bin" / "python", "#!/bin/bash\n")
        run = f"import sys; sys.path.insert(0, {str(root / 'src')!r})\nfrom backprobe.cli.main import main\n"
        put(venv / "bin" / "backprobe", f"#!{sys.executable}\n{run}sys.exit(main())\n")
        put(self.bin / "xdg-open", f'#!/bin/bash\necho "$*" >>"{self.browser}"\n')
        digest = hashlib.sha256((self.repo / "pyproject.toml").read_bytes()).hexdigest()
        (venv / "backprobe-installed").write_text(f"{self.repo}\n{digest}  -\n-\n", encoding="utf-8")
        self.running: subprocess.Popen[str] | None = None

    def open(self, *more: str, display: str) -> None:
        """Starts it and waits until the desk answers."""
        path = f"{self.bin}{os.pathsep}{os.environ['PATH']}"
        env = {**os.environ, "PATH": path, "DISPLAY": display, "WAYLAND_DISPLAY": ""}
        words = [self.repo / "start", "--port", str(self.port), *more]
        pipe = subprocess.PIPE
        self.running = subprocess.Popen(words, env=env, stdout=pipe, stderr=pipe, text=True, start_new_session=True)
        until = time.monotonic() + PATIENCE_S
        while not self.answers():
            assert self.running.poll() is None, self.running.communicate()
            assert time.monotonic() < until
            time.sleep(0.2)

    def answers(self) -> bool:
        """Whether the server answers."""
        with socket.socket() as tried:
            return tried.connect_ex(("127.0.0.1", self.port)) == 0

    def asked(self, path: str, said: object = None) -> dict[str, Any]:
        """The answer of the server to a question of the desk; posts what is said."""
        body = None if said is None else json.dumps(said).encode()
        headers = {"Content-Type": "application/json"}
        if body is not None:
            headers["X-CSRF-Token"] = self.asked("/api/session")["csrf"]
        request = urllib.request.Request(f"http://127.0.0.1:{self.port}{path}", data=body, headers=headers)
        with urllib.request.urlopen(request, timeout=PATIENCE_S) as answer:
            return dict(json.loads(answer.read()))

    def end(self) -> tuple[int, str, str]:
        """Ctrl-C: exit code, what was printed, what was complained of."""
        assert self.running is not None
        os.killpg(self.running.pid, signal.SIGINT)
        out, complaint = self.running.communicate(timeout=PATIENCE_S)
        return self.running.returncode, out, complaint


@pytest.fixture
def opened(tmp_path: Path, root: Path, port: int) -> Iterator[Opened]:
    """./start on a copy of the demo; stopped at the end where it still runs."""
    made = Opened(tmp_path, root, port)
    yield made
    if made.running is not None and made.running.poll() is None:
        os.killpg(made.running.pid, signal.SIGKILL)
        made.running.communicate()


def test_the_whole_fleet_is_on_the_desk_and_stays(opened: Opened) -> None:
    """Every folder of the demo is a job; who is added is there after the next start; Ctrl-C ends each with 0."""
    opened.open(display=":7")
    listed = opened.asked("/api/desk/jobs")
    folders = list((opened.repo / "demo" / "linden-yard").glob("*/job.toml"))
    jobs = listed["jobs"]
    assert len(jobs) == len(folders) > 1
    assert {who["name"] for job in jobs for who in job["people"]} >= {"Ines Okafor", "Tomas Brandl"}
    opened.asked("/api/desk/people", {"name": "Dov Castellan"})
    until = time.monotonic() + PATIENCE_S
    while not opened.browser.is_file() and time.monotonic() < until:
        time.sleep(0.1)
    assert opened.browser.read_text(encoding="utf-8") == f"http://127.0.0.1:{opened.port}/desk.html\n"
    code, out, complaint = opened.end()
    assert (code, complaint) == (0, "")
    assert "Handing in the demo fleet" in out

    opened.open("--no-browser", display=":7")
    assert "Dov Castellan" in json.dumps(opened.asked("/api/desk/people"))
    assert opened.asked("/api/desk/jobs")["jobs"] == jobs
    code, out, complaint = opened.end()
    assert (code, complaint) == (0, "")
    assert "Handing in" not in out
    assert opened.browser.read_text(encoding="utf-8").count("desk.html") == 1
