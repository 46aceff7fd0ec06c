"""Every refusal has the one shape, a status that fits, and a row in docs/api.md."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from backprobe.errors import BackprobeError, JobError, RefusedError, StoreError
from backprobe.server.refusals import STATUS, refused

ROOT = Path(__file__).resolve().parents[2]
GIVEN = re.compile(r'code="([a-z_]+)"')


@pytest.mark.parametrize(
    ("error", "status", "code"),
    [
        (RefusedError("no", code="phone_withdrawn"), 403, "phone_withdrawn"),
        (RefusedError("no", code="too_large"), 413, "too_large"),
        (JobError("no"), 422, "job"),
        (StoreError("full"), 503, "store"),
    ],
)
def test_the_status_goes_with_the_code(error: BackprobeError, status: int, code: str) -> None:
    """A database that is busy is the one thing to come again for."""
    answer = refused(error)
    assert answer.status_code == status
    assert json.loads(bytes(answer.body)) == {"ok": False, "error": error.message, "code": code}
    assert ("retry-after" in answer.headers) == (status == 503)


def test_every_code_that_is_given_has_its_status_and_is_explained() -> None:
    """The codes in the sources of cases, store and server; none is left without a status or a word in the page."""
    sources = [path for room in ("cases", "store", "server") for path in (ROOT / "src/backprobe" / room).rglob("*.py")]
    given = {code for path in sources for code in GIVEN.findall(path.read_text(encoding="utf-8"))}
    page = (ROOT / "docs/api.md").read_text(encoding="utf-8")
    assert {"phone_withdrawn", "offset", "csrf"} <= given
    assert given <= set(STATUS)
    assert [code for code in STATUS if f"`{code}`" not in page] == []
