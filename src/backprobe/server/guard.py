"""What every call passes first: the server's name, the size of the body. And the headers of every answer."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from typing import Any

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from backprobe.errors import RefusedError
from backprobe.server.refusals import refused
from backprobe.server.settings import Settings
from backprobe.server.spoken import say_of

MOST_BODY_BYTES = 40_000_000  # 500 entries of 64 kB, as JSON text
MOST_UPLOAD_BYTES = 101_000_000
MOST_SMALL_BYTES = 16_000  # what anybody may send who is not known yet
UPLOADS = ("/api/blobs/",)
FOR_STRANGERS = ("/api/enrol", "/api/login")
TOO_LARGE = 413
YEAR_S = 31_536_000

HEADERS: Mapping[str, str] = {
    "Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cache-Control": "no-store",
}


class Guard:
    """Wraps the whole application."""

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        self._app = app
        self._settings = settings

    async def __call__(self, scope: Scope, *channels: Callable[..., Awaitable[Any]]) -> None:
        """Let a call through, or answer it here; `channels` are how to receive and how to send."""
        receive, send = channels
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        headers, most = Headers(scope=scope), _most_bytes(str(scope["path"]))
        answer = self._with_headers(send)
        said = headers.get("content-length", "0")
        if not self._settings.answers_to(headers.get("host", "")):
            error = RefusedError("this server answers to the names of its own machine only", code="host")
            await refused(error, say=say_of(headers))(scope, receive, answer)
        elif not said.isdecimal() or int(said) > most:
            await refused(_too_large(most), say=say_of(headers))(scope, receive, answer)
        else:
            await self._app(scope, _counted(receive, most), answer)

    def _with_headers(self, send: Send) -> Send:
        async def sent(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
                if self._settings.is_secure:
                    headers.setdefault("Strict-Transport-Security", f"max-age={YEAR_S}")
            await send(message)

        return sent


def _most_bytes(path: str) -> int:
    if path in FOR_STRANGERS:
        return MOST_SMALL_BYTES
    return MOST_UPLOAD_BYTES if path.startswith(UPLOADS) else MOST_BODY_BYTES


def _too_large(most: int) -> RefusedError:
    return RefusedError(f"at most {most // 1_000} kB are taken in one call", code="too_large")


def _counted(receive: Receive, most: int) -> Receive:
    """The body as it comes, up to `most` bytes: its length may not have been said, or not truly."""
    taken = 0

    async def received() -> Message:
        nonlocal taken
        message = await receive()
        if message["type"] == "http.request":
            taken += len(message.get("body", b""))
            if taken > most:
                raise HTTPException(TOO_LARGE, _too_large(most).message)  # the one kind that passes the framework
        return message

    return received
