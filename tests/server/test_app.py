"""The application as a whole: calls under /api/, pages elsewhere, everything described."""

from __future__ import annotations

import httpx
from tests.samples.served import Server


def test_calls_are_described_and_no_page_explains_them_with_foreign_script(server: Server) -> None:
    """OpenAPI names each path of docs/api.md that phones use; there is no /docs."""
    with server.client() as client:
        paths = client.get("/api/openapi.json").json()["paths"]
        assert {"/api/enrol", "/api/day", "/api/entries", "/api/blobs/{sha256}"} <= set(paths)
        assert set(paths["/api/blobs/{sha256}"]) == {"put", "head", "get"}
        assert client.get("/docs").status_code in (404, 503)


def test_what_is_no_call_is_said_as_one(server: Server) -> None:
    """Unknown paths and methods under /api/ are refused in the one shape, never with a page."""
    with server.client() as client:
        for method, path in (("GET", "/api/nothing"), ("DELETE", "/api/day"), ("POST", "/api/blobs/x")):
            answer = client.request(method, path)
            assert (answer.status_code, answer.json()["ok"]) in [(404, False), (405, False)]


def test_pages_that_were_not_built_are_said(server: Server) -> None:
    """With how to build them."""
    with server.client() as client:
        answer = client.get("/")
    assert answer.status_code == httpx.codes.SERVICE_UNAVAILABLE
    assert "not built" in answer.text
