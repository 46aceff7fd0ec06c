"""Whatever is sent to the interface, by the description it gives of itself or against it: no call ends in a fault.

Calls are made up by schemathesis (schemathesis.readthedocs.io) out of the OpenAPI description, good ones and bad ones.
A refusal has the house's shape.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from tests.samples.served import Server, serving
from tests.samples.stores import new_database

from backprobe.cases.enrol import enrol
from backprobe.server.app import create_app
from backprobe.server.rates import Rate
from backprobe.server.settings import Settings

DESCRIPTION = schemathesis.openapi.from_dict(create_app(Settings()).openapi())
EXAMPLES = 15  # a call; on each of the two databases


@schemathesis.serializer("application/x-ndjson")
def as_lines(_context: object, value: object) -> bytes:
    """A made-up value as lines of JSON: one, or one for each item of a list."""
    return "\n".join(map(json.dumps, value if isinstance(value, list) else [value])).encode()


@pytest.fixture(params=["sqlite", "postgresql"], scope="module")
def fuzzed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """A server that does not count tries, on either database."""
    folder: Path = tmp_path_factory.mktemp("fuzzed")
    store = None
    if request.param == "postgresql":
        store = new_database(request.getfixturevalue("postgres"), "fuzzed")
    with serving(Settings(data=folder / "data", pages=folder, store=store)) as found:
        for rate in (found.running.logins, found.running.each_login, found.running.enrolments):
            rate.tries = 10**9
        assert isinstance(found.running.logins, Rate)
        yield found


@pytest.fixture(scope="module")
def tokens(fuzzed: Server) -> dict[str, str]:
    """What callers send along: a phone's and a feed's token, and that of the desk."""
    from backprobe.cases.desk_people import add_feed

    ines = fuzzed.person("Ines")
    phone = enrol(fuzzed.yard, fuzzed.code(ines), device="phone-a", label="").token
    feed = str(add_feed(fuzzed.yard, fuzzed.lead, label="collector", columns={})["token"])
    return {"phone": phone, "feed": feed, "desk": fuzzed.running.local_csrf}


@DESCRIPTION.parametrize()
@settings(
    max_examples=EXAMPLES,
    deadline=None,
    derandomize=True,
    database=None,
    suppress_health_check=list(HealthCheck),
)
def test_no_call_ends_in_a_fault(case: schemathesis.Case, fuzzed: Server, tokens: dict[str, str]) -> None:
    """No status from 500 up; below 500 and from 400 up, `ok`, `error` and `code`."""
    bearer = tokens["feed"] if case.path == "/api/reports" else tokens["phone"]
    headers = {"Authorization": f"Bearer {bearer}", "X-CSRF-Token": tokens["desk"]}
    answer = case.call(base_url=fuzzed.url, headers=headers)
    assert answer.status_code < 500, (case.as_curl_command(), answer.text)
    if answer.status_code >= 400 and case.method.upper() != "HEAD":
        said = answer.json()
        assert said["ok"] is False
        assert said["error"]
        assert said["code"]


def test_every_call_is_made_up() -> None:
    """The description names the calls of phone, collector and desk; none is left out of the test above."""
    paths = {operation.ok().path for operation in DESCRIPTION.get_all_operations()}
    assert {"/api/enrol", "/api/entries", "/api/blobs/{sha256}", "/api/reports", "/api/login"} <= paths
    assert {"/api/desk/jobs", "/api/desk/export.{form}", "/api/desk/rosters/import"} <= paths
    assert len(paths) > 20
