"""The pages as they were built: nothing is made here, files are handed out with the right headers.

`web/build.py` leaves a folder with `files.json`, the list of its files; whatever is not in that list is not served. A
file whose name carries its digest never changes, so a browser may keep it for ever; for the few others it asks again.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from starlette.requests import Request
from starlette.responses import FileResponse, PlainTextResponse, Response
from starlette.types import Receive, Scope, Send

import backprobe

LIST = "files.json"
INDEX = "index.html"
INSTALLED = Path(backprobe.__file__).parent / "pages"  # where a wheel carries them
BUILT = Path(backprobe.__file__).parents[2] / "web" / "dist"  # where they are in a working copy
NOT_BUILT = "the pages are not built: run ./start, or python web/build.py\n"

TYPES: Mapping[str, str] = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".wasm": "application/wasm",
    ".zip": "application/zip",
    ".svg": "image/svg+xml",
    ".woff2": "font/woff2",
    ".webmanifest": "application/manifest+json",
}
# scripts and styles from this server alone, none of them inline; the engine is WebAssembly
CONTENT_POLICY = "; ".join(
    [
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "style-src 'self'",
        "img-src 'self' blob: data:",
        "media-src 'self' blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    ]
)
HEADERS: Mapping[str, str] = {
    "Content-Security-Policy": CONTENT_POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": "camera=(self), geolocation=(self), microphone=()",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}
FOR_EVER = "public, max-age=31536000, immutable"
ASK_EACH_TIME = "no-cache"
_CARRIES_DIGEST = re.compile(r"\.[0-9a-f]{16}(?:\.|/)", re.ASCII)
_FORMS = (("br", "br"), ("gzip", "gz"))  # what a browser may accept, best first, and the ending of that form


@dataclass(frozen=True, slots=True)
class Listed:
    """One file of the list: its digest, and the endings of the packed forms beside it."""

    sha256: str
    packed: tuple[str, ...]


def built_pages() -> Path:
    """The folder of the built pages: in an installed package or in a working copy; it may not be there yet."""
    return INSTALLED if (INSTALLED / LIST).is_file() else BUILT


def listed_in(folder: Path) -> dict[str, Listed]:
    """The files that `folder` lists, by their path; empty where nothing was built."""
    found = folder / LIST
    if not found.is_file():
        return {}
    files = json.loads(found.read_text(encoding="utf-8"))["files"]
    return {
        name: Listed(str(file["sha256"]), tuple(ending for _, ending in _FORMS if file[ending] is not None))
        for name, file in files.items()
    }


class Pages:
    """An ASGI application that serves a folder of built pages; pages that are built anew meanwhile are seen."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._read_at: int | None = None  # when the list was written that was read last
        self._files: dict[str, Listed] = {}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers one request."""
        await self._answer(Request(scope)).__call__(scope, receive, send)

    def _answer(self, request: Request) -> Response:
        if request.method not in ("GET", "HEAD"):
            return PlainTextResponse("only to be read\n", 405, {**HEADERS, "Allow": "GET, HEAD"})
        self._look_again()
        if not self._files:
            return PlainTextResponse(NOT_BUILT, 503, HEADERS)
        name = path_of(request) or INDEX
        file = self._files.get(name)
        if file is None:
            return PlainTextResponse("there is no such page\n", 404, HEADERS)
        return self._handed_out(request, name, file=file)

    def _look_again(self) -> None:
        found = self._folder / LIST
        written_at = found.stat().st_mtime_ns if found.is_file() else None
        if written_at != self._read_at:
            self._files, self._read_at = listed_in(self._folder), written_at

    def _handed_out(self, request: Request, name: str, *, file: Listed) -> Response:
        encoding, ending = form_for(request.headers.get("accept-encoding", ""), file.packed)
        tag = f'"{file.sha256[:32]}{"-" if encoding else ""}{encoding}"'
        headers = {**HEADERS, "Cache-Control": lifetime(name), "ETag": tag, "Vary": "Accept-Encoding"}
        if request.headers.get("if-none-match") == tag:
            return Response(status_code=304, headers=headers)
        if encoding:
            headers["Content-Encoding"] = encoding
        media_type = TYPES.get(Path(name).suffix, "application/octet-stream")
        return FileResponse(self._folder / f"{name}{ending}", headers=headers, media_type=media_type)


def path_of(request: Request) -> str:
    """The path that is asked for, below wherever the pages are mounted."""
    path = str(request.scope["path"])
    return path.removeprefix(str(request.scope.get("root_path", ""))).lstrip("/")


def lifetime(name: str) -> str:
    """What a browser is told of how long it may keep a file.

    >>> lifetime("page.0123456789abcdef.js") == FOR_EVER, lifetime("index.html")
    (True, 'no-cache')
    """
    return FOR_EVER if _CARRIES_DIGEST.search(name) else ASK_EACH_TIME


def form_for(accepted: str, packed: tuple[str, ...]) -> tuple[str, str]:
    """The best packed form that a browser accepts: its name and the ending of its file; two empty texts for none.

    >>> form_for("gzip, deflate, br", ("br", "gz")), form_for("gzip;q=0", ("br", "gz"))
    (('br', '.br'), ('', ''))
    """
    wanted = {part.split(";")[0].strip() for part in accepted.split(",") if not part.replace(" ", "").endswith(";q=0")}
    return next(((name, f".{ending}") for name, ending in _FORMS if name in wanted and ending in packed), ("", ""))
