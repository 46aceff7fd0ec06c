"""Answers that a phone asks for again and again: what it has already does not go over the line a second time.

The whole answer has a mark (`ETag`); whoever names it is told 304 while nothing has changed. Its large parts have marks
of their own, so that a change in one leaves the others out.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping

from fastapi import Request, Response

from backprobe.server.packed import packed

LETTERS = 22  # of a mark: 88 bits of sha256


def mark_of(value: object) -> str:
    """The mark of a value: the same for whatever reads the same as JSON.

    >>> mark_of({"a": 1, "b": []}) == mark_of({"b": [], "a": 1}), mark_of([]) == mark_of(None)
    (True, False)
    """
    content = json.dumps(value, sort_keys=True, separators=(",", ":")).encode("utf-8")
    return hashlib.sha256(content).hexdigest()[:LETTERS]


def unless_known(
    request: Request, values: Mapping[str, object], *, known: Mapping[str, str | None], always: Mapping[str, object]
) -> Response:
    """The values with the marks of their parts; 304 without a body where the caller has all of it already.

    `known` names the parts that have a mark, each with the mark that the caller has; a part that is the same is left
    out. `always` goes with every answer that has a body, and does not count as a change.
    """
    marks = {name: mark_of(values[name]) for name in known}
    rest = {name: value for name, value in values.items() if name not in known}
    tag = f'W/"{mark_of([rest, marks])}"'
    if tag in request.headers.get("if-none-match", ""):
        return Response(status_code=304, headers={"ETag": tag, "Vary": "Accept-Encoding"})
    fresh = {name: values[name] for name, mark in known.items() if mark != marks[name]}
    answer = packed(request, {**always, **rest, **fresh, "marks": marks})
    answer.headers["ETag"] = tag
    return answer
