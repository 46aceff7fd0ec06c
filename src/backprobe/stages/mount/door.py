"""The mount stage's door: a mount sheet and a question as JSON text in, the answer as JSON text out.

What runs in a browser's Python and what runs in a terminal meet here, so that both give the same bytes.

In: ``{"mount.toml": text, "lat": number, "lon": number, "date": "YYYY-MM-DD", "time": text|null, "nav": text|null,
"nav_name": text|null}``. Out: the answer as `backprobe sky --json` prints it, with the best place's picture under
`svg`, or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json

from backprobe.errors import BackprobeError, InputError, error_json
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.navigation import read_navigation
from backprobe.stages.mount.answer import sky_answer
from backprobe.stages.mount.picture import sky_picture
from backprobe.stages.mount.question import question

SHEET = "mount.toml"


def sky_text(text: str) -> str:
    """The answer to a question from texts; errors come back in the same shape as everywhere.

    >>> json.loads(sky_text("{}"))["error"]
    'mount.toml: a text is expected'
    """
    try:
        return json.dumps(_answer(_parts(text)), ensure_ascii=False, sort_keys=True)
    except BackprobeError as error:
        return json.dumps(error_json(error), ensure_ascii=False, sort_keys=True)


def _answer(parts: dict[str, object]) -> dict[str, object]:
    sheet = read_mount(_text(parts, SHEET), SHEET)
    asked = question((_number(parts, "lat"), _number(parts, "lon")), _text(parts, "date"), time=_maybe(parts, "time"))
    nav = _maybe(parts, "nav")
    orbits = None
    if nav is not None:
        name = _maybe(parts, "nav_name") or "nav"
        lines = nav.replace("\r\n", "\n").replace("\r", "\n").split("\n")
        orbits = read_navigation(lines, file=name, near_week=asked.week)
    answer = sky_answer(sheet, asked, orbits=orbits)
    return {**answer.as_json(), "svg": sky_picture(answer, answer.best)}


def _parts(text: str) -> dict[str, object]:
    try:
        parts = json.loads(text)
    except (ValueError, RecursionError) as fault:
        raise InputError(f"the question is no JSON: {fault}") from None
    if not isinstance(parts, dict):
        raise InputError("the question is no JSON object")
    return parts


def _text(parts: dict[str, object], name: str) -> str:
    text = _maybe(parts, name)
    if text is None:
        raise InputError(f"{name}: a text is expected")
    return text


def _maybe(parts: dict[str, object], name: str) -> str | None:
    text = parts.get(name)
    if text is not None and not isinstance(text, str):
        raise InputError(f"{name}: a text is expected")
    return text


def _number(parts: dict[str, object], name: str) -> float:
    value = parts.get(name)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise InputError(f"{name}: a number of degrees is expected")
    return float(value)
