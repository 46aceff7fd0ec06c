"""The bus stage's door: a log as JSON text in, its answer as JSON text out.

What runs in a browser's Python and what runs in a terminal meet here, so that both give the same bytes. A browser reads
the texts of `candump` and engine data; it has no library for other logs.

In: ``{"file": name, "log": text, "vin": text|null, "system_V": 12|24|null}``. Out: the answer as `backprobe bus --json`
prints it, with ``"picture"``, its SVG; or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from itertools import islice

from backprobe.drawings.bus_cycle import bus_cycle
from backprobe.errors import BackprobeError, InputError, Place, UnreadableError, error_json
from backprobe.formats.bus_faults import BusFaults
from backprobe.formats.candump_text import is_candump, read_candump
from backprobe.formats.obd_csv import is_engine_data
from backprobe.formats.parts import Parts, lines_in, parts_in
from backprobe.formats.recording_csv import read_recording
from backprobe.stages.bus.answer import answer
from backprobe.stages.bus.engine_data import listen_to_rows
from backprobe.stages.bus.listen import Listened, listen
from backprobe.stages.bus.picture import cycle_content

HEAD_LINES = 100
EXPECTED = "a bus log as candump writes it, or engine data as CSV with an engine speed"
SYSTEMS_V = (12, 24, None)


def bus_text(text: str) -> str:
    """Judge a bus log given as JSON text; errors come back in the same shape as everywhere.

    >>> json.loads(bus_text("{}"))["error"]
    'log: a text is expected'
    """
    try:
        found = _answer(parts_in(text, "the bus log"))
    except BackprobeError as error:
        found = error_json(error)
    return json.dumps(found, ensure_ascii=False, sort_keys=True)


def listen_to_lines(lines: Sequence[str], *, file: str) -> Listened:
    """What the lines of a text come to. Raises UnreadableError where they are neither frames nor engine data."""
    dumped = next((line for line in islice(lines, HEAD_LINES) if is_candump(line)), None)
    if dumped is not None:
        faults = BusFaults(file)
        form = "candump-log" if "#" in dumped else "candump"
        return listen(read_candump(lines, faults=faults), faults=faults, form=form)
    if is_engine_data(lines[:HEAD_LINES]):
        return listen_to_rows(read_recording(lambda: lines, file=file, thresholds_V=()))
    first = next((line for line in lines if line.strip()), "")
    raise UnreadableError(Place(file, 1, first), EXPECTED)


def _answer(parts: Parts) -> dict[str, object]:
    log, system_V = parts.text("log"), parts.values.get("system_V")
    if system_V not in SYSTEMS_V or not isinstance(system_V, int | None):
        raise InputError("system_V: 12 or 24 is expected, or null")
    listened = listen_to_lines(lines_in(log), file=parts.maybe("file") or "log")
    found = answer(listened.heard, vin=parts.maybe("vin"), system_V=system_V)
    picture = bus_cycle(cycle_content(listened, system_V=found.system_V))
    return {**found.as_json(), "picture": picture}
