"""Whose word on a job stands in the day's list: the phone's own or the server's."""

from __future__ import annotations

import pytest
from tests.web.test_core import Call, call, phone

__all__ = ["phone"]


def word(by: str, cursor: int | None) -> dict[str, object]:
    """A word on a job, and up to which entry it knows it."""
    return {"by": by} if cursor is None else {"by": by, "cursor": cursor}


@pytest.mark.parametrize(
    ("own", "servers", "newest", "stands"),
    [
        (None, None, 4, None),
        (None, word("server", 3), 4, "server"),  # better than nothing
        (word("phone", 4), None, 4, "phone"),
        (word("phone", 4), word("server", 4), 4, "phone"),  # both know all
        (word("phone", 4), word("server", 5), 6, "phone"),  # the server has not looked at all of it yet
        (word("phone", 4), word("server", 6), 6, "server"),  # somebody else has worked on it
        (word("phone", None), word("server", 6), 6, "server"),  # kept before it was noted what it knows
    ],
)
def test_the_phones_own_stands_unless_the_server_knows_more(
    phone: Call, own: object, servers: object, newest: int, stands: str | None
) -> None:
    """And knows all that it has."""
    answer = phone([call("later-word.ts", "laterWord", own, servers, newest)])[0]["value"]
    assert (answer and answer["by"]) == stands
