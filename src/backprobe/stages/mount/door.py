"""The mount stage's door: a mount sheet and a question as JSON text in, the answer as JSON text out.

What runs in a browser's Python and what runs in a terminal meet here, so that both give the same bytes.

In: ``{"mount.toml": text, "lat": number, "lon": number, "date": "YYYY-MM-DD", "time": text|null, "nav": text|null,
"nav_name": text|null}``. Out: the answer as `backprobe sky --json` prints it, with the best place's picture under
`svg`, or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json

from backprobe.errors import BackprobeError, error_json
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.navigation import read_navigation
from backprobe.formats.parts import Parts, lines_in, parts_in
from backprobe.stages.mount.answer import sky_answer
from backprobe.stages.mount.picture import sky_picture
from backprobe.stages.mount.question import question

SHEET = "mount.toml"
DEGREES = "a number of degrees"


def sky_text(text: str) -> str:
    """The answer to a question from texts; errors come back in the same shape as everywhere.

    >>> json.loads(sky_text("{}"))["error"]
    'mount.toml: a text is expected'
    """
    try:
        return json.dumps(_answer(parts_in(text, "the question")), ensure_ascii=False, sort_keys=True)
    except BackprobeError as error:
        return json.dumps(error_json(error), ensure_ascii=False, sort_keys=True)


def _answer(parts: Parts) -> dict[str, object]:
    sheet = read_mount(parts.text(SHEET), SHEET)
    where = (parts.number("lat", expected=DEGREES), parts.number("lon", expected=DEGREES))
    asked = question(where, parts.text("date"), time=parts.maybe("time"))
    nav = parts.maybe("nav")
    orbits = None
    if nav is not None:
        name = parts.maybe("nav_name") or "nav"
        orbits = read_navigation(lines_in(nav), file=name, near_week=asked.week)
    answer = sky_answer(sheet, asked, orbits=orbits)
    return {**answer.as_json(), "svg": sky_picture(answer, answer.best)}
