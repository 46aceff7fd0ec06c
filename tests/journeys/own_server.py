"""`backprobe serve` as a process of its own, to be killed and started again on the same folder."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
from pathlib import Path

import httpx

START_S = 30.0
LOOK_S = 0.05
RUN = "from backprobe.cli.main import main; raise SystemExit(main())"


class OwnServer:
    """The real command, on a port of loopback that stays the same from one start to the next."""

    def __init__(self, data: Path, pages: Path) -> None:
        with socket.create_server(("127.0.0.1", 0)) as free:
            self._port = free.getsockname()[1]
        self.url = f"http://127.0.0.1:{self._port}"
        self._data, self._pages = data, pages
        self._process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        """Starts it, and waits until it answers."""
        listen = f"127.0.0.1:{self._port}"
        options = ["serve", "--data", str(self._data), "--pages", str(self._pages), "--listen", listen]
        self._process = subprocess.Popen([sys.executable, "-c", RUN, *options], stdout=subprocess.DEVNULL)
        give_up = time.monotonic() + START_S
        while not self._answers():
            assert self._process.poll() is None, "the server ended by itself"
            assert time.monotonic() < give_up, "the server does not answer"
            time.sleep(LOOK_S)

    def kill(self) -> None:
        """Ends it as a power cut would, with nothing said before."""
        assert self._process is not None
        os.kill(self._process.pid, signal.SIGKILL)
        self._process.wait()

    def _answers(self) -> bool:
        try:
            return httpx.get(f"{self.url}/api/session").is_success
        except httpx.TransportError:
            return False
