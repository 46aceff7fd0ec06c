"""A line that strikes at a chosen moment: when a call is answered, or when so much of a file has gone out."""

from __future__ import annotations

import socket
from collections.abc import Callable
from contextlib import suppress

from tests.journeys.line import PIECE, Line


class WatchedLine(Line):
    """A line on which something happens while bytes are under way.

    After `strike_at_answer` the next call that begins with `call` reaches the server, and `deed` is done when its
    answer comes, which the browser never gets; after `strike_within` it is done when `after_bytes` have gone out since
    such a call began. `struck` says that it was done, `out` counts the bytes that went to the server.
    """

    def __init__(self, server_url: str) -> None:
        self._call: bytes | None = None
        self._deed: Callable[[], None] = lambda: None
        self._after_bytes: int | None = None
        self._begun_at: int | None = None
        self.struck = False
        self.out = 0
        super().__init__(server_url)

    def strike_at_answer(self, call: bytes, deed: Callable[[], None]) -> None:
        """Do `deed` when the server answers `call`, before the browser hears it."""
        self._arm(call, deed, None)

    def strike_within(self, call: bytes, deed: Callable[[], None], *, after_bytes: int) -> None:
        """Do `deed` when so many bytes went to the server since `call` began."""
        self._arm(call, deed, after_bytes)

    def _arm(self, call: bytes, deed: Callable[[], None], after_bytes: int | None) -> None:
        self.struck, self._begun_at = False, None
        self._deed, self._after_bytes, self._call = deed, after_bytes, call

    def _carry(self, source: socket.socket, target: socket.socket) -> None:
        with suppress(OSError):
            outward = target.getpeername() == self._server
            while piece := source.recv(PIECE):
                if self._strikes(piece, outward=outward):
                    self._call, self.struck = None, True
                    self._deed()
                    break
                target.sendall(piece)
                self.out += len(piece) if outward else 0
                self.carried += 0 if outward else len(piece)
        for end in (source, target):
            with suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)

    def _strikes(self, piece: bytes, *, outward: bool) -> bool:
        """Whether this is the moment; the phone makes one call after another."""
        if self._call is None:
            return False
        if outward and self._begun_at is None and piece.startswith(self._call):
            self._begun_at = self.out
        if self._begun_at is None:
            return False
        if self._after_bytes is None:
            return not outward
        return outward and self.out - self._begun_at >= self._after_bytes
