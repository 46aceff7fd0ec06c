"""Built pages are handed out with headers that keep them current, small and shut."""

from __future__ import annotations

import asyncio
import json
import os
from pathlib import Path

import httpx
import pytest

from backprobe.server.pages import FOR_EVER, NOT_BUILT, Pages

SCRIPT = "page.0123456789abcdef.js"
FILES = {"index.html": b"<!doctype html>", SCRIPT: b"let a = 1;", "scanner.wasm": b"\0asm"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder as the build leaves it: three files, the script with its packed forms, and one that is not listed."""
    listed = {}
    for number, (name, content) in enumerate(FILES.items()):
        (tmp_path / name).write_bytes(content)
        listed[name] = {"sha256": f"{number}" * 64, "bytes": len(content), "br": None, "gz": None}
    listed[SCRIPT] |= {"br": 3, "gz": 4}
    (tmp_path / f"{SCRIPT}.br").write_bytes(b"BR!")
    (tmp_path / f"{SCRIPT}.gz").write_bytes(b"GZ!!")
    (tmp_path / "secret.txt").write_text("not listed", encoding="utf-8")
    (tmp_path / "files.json").write_text(json.dumps({"digest": "", "files": listed}), encoding="utf-8")
    return tmp_path


async def asked(folder: Path, path: str, method: str = "GET", **headers: str) -> httpx.Response:
    """What the application answers; header names with _ for -."""
    transport = httpx.ASGITransport(app=Pages(folder))
    sent = {"accept-encoding": "identity"} | {name.replace("_", "-"): value for name, value in headers.items()}
    async with httpx.AsyncClient(transport=transport, base_url="http://yard.test") as client:
        return await client.request(method, path, headers=sent)


async def raw_answer(folder: Path, path: str, *, accepts: str) -> tuple[httpx.Headers, bytes]:
    """Headers and body as they are sent, the body still packed."""
    transport = httpx.ASGITransport(app=Pages(folder))
    client = httpx.AsyncClient(transport=transport, base_url="http://yard.test")
    async with client, client.stream("GET", path, headers={"accept-encoding": accepts}) as response:
        return response.headers, b"".join([part async for part in response.aiter_raw()])


def answer(folder: Path, path: str, method: str = "GET", **headers: str) -> httpx.Response:
    """The same, from a test that waits for it."""
    return asyncio.run(asked(folder, path, method, **headers))


def test_the_page_stands_at_the_root(folder: Path) -> None:
    """The bare address gives index.html, asked for each time so that a new version is seen."""
    said = answer(folder, "/")
    assert (said.status_code, said.content) == (200, FILES["index.html"])
    assert said.headers["cache-control"] == "no-cache"
    assert said.headers["content-type"] == "text/html; charset=utf-8"


def test_a_name_with_a_digest_is_kept_for_ever(folder: Path) -> None:
    """Equal names have equal bytes, so nobody needs to ask again."""
    assert answer(folder, f"/{SCRIPT}").headers["cache-control"] == FOR_EVER


@pytest.mark.parametrize(
    ("accepts", "encoding", "content"),
    [("gzip, br", "br", b"BR!"), ("gzip", "gzip", b"GZ!!"), ("identity", None, b"let a = 1;")],
)
def test_the_smallest_form_that_is_accepted_is_sent(
    folder: Path, accepts: str, encoding: str | None, content: bytes
) -> None:
    """Brotli before gzip before plain, with the type of what is inside."""
    headers, raw = asyncio.run(raw_answer(folder, f"/{SCRIPT}", accepts=accepts))
    assert headers.get("content-encoding") == encoding
    assert headers["content-type"] == "text/javascript; charset=utf-8"
    assert headers["vary"] == "Accept-Encoding"
    assert raw == content


def test_what_a_browser_has_is_not_sent_again(folder: Path) -> None:
    """With the tag it was given: 304 without a body."""
    tag = answer(folder, "/index.html").headers["etag"]
    again = answer(folder, "/index.html", if_none_match=tag)
    assert (again.status_code, again.content) == (304, b"")


def test_what_is_not_listed_is_not_served(folder: Path) -> None:
    """Neither a file that lies beside, nor the list, nor anything above the folder."""
    for path in ("/secret.txt", "/files.json", "/../secret.txt", "/%2e%2e/secret.txt", f"/{SCRIPT}.br"):
        assert answer(folder, path).status_code == 404, path


def test_nothing_is_written_here(folder: Path) -> None:
    """Only reading is answered."""
    said = answer(folder, "/", "POST")
    assert (said.status_code, said.headers["allow"]) == (405, "GET, HEAD")


def test_a_head_has_no_body(folder: Path) -> None:
    """HEAD gives the headers of GET alone."""
    said = answer(folder, "/", "HEAD")
    assert (said.status_code, said.content) == (200, b"")
    assert said.headers["content-length"] == str(len(FILES["index.html"]))


def test_every_answer_is_shut(folder: Path) -> None:
    """Scripts from here alone and none inline, no framing, no guessing of types; on refusals, too."""
    for path in ("/", f"/{SCRIPT}", "/nothing"):
        headers = answer(folder, path).headers
        policy = headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "script-src 'self' 'wasm-unsafe-eval';" in policy
        assert "unsafe-inline" not in policy
        assert "frame-ancestors 'none'" in policy
        assert headers["x-content-type-options"] == "nosniff"


def test_a_folder_without_pages_says_what_to_do(tmp_path: Path) -> None:
    """Nothing was built: 503 and the command."""
    said = answer(tmp_path, "/")
    assert (said.status_code, said.text) == (503, NOT_BUILT)


def test_pages_that_are_built_anew_are_seen(folder: Path) -> None:
    """A server that runs while the pages are built again serves the new ones: none of it is stale."""

    async def before_and_after() -> tuple[int, int]:
        transport = httpx.ASGITransport(app=Pages(folder))
        async with httpx.AsyncClient(transport=transport, base_url="http://yard.test") as client:
            before = await client.get("/new.css")
            (folder / "new.css").write_text("p {}", encoding="utf-8")
            listed = {"new.css": {"sha256": "9" * 64, "bytes": 4, "br": None, "gz": None}}
            (folder / "files.json").write_text(json.dumps({"digest": "", "files": listed}), encoding="utf-8")
            os.utime(folder / "files.json", ns=(1, 1))
            return before.status_code, (await client.get("/new.css")).status_code

    assert asyncio.run(before_and_after()) == (404, 200)
