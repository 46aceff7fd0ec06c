"""The line between a phone and the server: a relay on loopback that a test can cut."""

from __future__ import annotations

import socket
import threading
from contextlib import suppress
from urllib.parse import urlsplit

PIECE = 65_536


class Line:
    """Carries bytes between a browser and a server; while it is cut nothing gets through, not even what was open.

    `tried` counts the connections that came while it was cut, `carried` the bytes that went to the browser.
    """

    def __init__(self, server_url: str) -> None:
        self._server = (urlsplit(server_url).hostname or "", urlsplit(server_url).port or 0)
        self._door = socket.create_server(("127.0.0.1", 0))
        self._open: set[socket.socket] = set()
        self._lock = threading.Lock()
        self.is_cut = False
        self.tried = 0
        self.carried = 0
        self.url = f"http://127.0.0.1:{self._door.getsockname()[1]}"
        self._thread = threading.Thread(target=self._listen)
        self._thread.start()

    def cut(self) -> None:
        """Nothing gets through from now on."""
        self.is_cut = True
        self._drop_all()

    def mend(self) -> None:
        """Everything gets through again."""
        self.is_cut = False

    def close(self) -> None:
        """The relay ends."""
        with suppress(OSError):
            self._door.shutdown(socket.SHUT_RDWR)
        self._door.close()
        self._drop_all()
        self._thread.join()

    def _listen(self) -> None:
        carriers: list[threading.Thread] = []
        while True:
            try:
                near, _ = self._door.accept()
            except OSError:
                break
            if self.is_cut:
                self.tried += 1
                near.close()
                continue
            carriers.append(threading.Thread(target=self._relay, args=(near,)))
            carriers[-1].start()
        for carrier in carriers:
            carrier.join()

    def _relay(self, near: socket.socket) -> None:
        try:
            far = socket.create_connection(self._server)
        except OSError:
            near.close()
            return
        with self._lock:
            self._open |= {near, far}
        back = threading.Thread(target=self._carry, args=(far, near))
        back.start()
        self._carry(near, far)
        back.join()
        for end in (near, far):
            end.close()
        with self._lock:
            self._open -= {near, far}

    def _carry(self, source: socket.socket, target: socket.socket) -> None:
        with suppress(OSError):
            while piece := source.recv(PIECE):
                target.sendall(piece)
                if source.getpeername() == self._server:
                    self.carried += len(piece)
        for end in (source, target):
            with suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)

    def _drop_all(self) -> None:
        with self._lock:
            for end in self._open:
                with suppress(OSError):
                    end.shutdown(socket.SHUT_RDWR)
