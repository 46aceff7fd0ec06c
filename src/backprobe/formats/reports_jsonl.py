"""Reports as JSON, one object a line: made into the table that everything else reads."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Sequence

from backprobe.errors import Place, Skipped

EXPECTED = "one JSON object a line, with texts, numbers, true, false or null in it"
MOST_COLUMNS = 200
SKIPPED_KEPT = 20


def table_of_json_lines(lines: Iterable[str], *, file: str) -> tuple[list[str], tuple[Skipped, ...], int]:
    """The lines of a CSV table with a heading, the first lines that are no object, and how many of those there are.

    Empty lines are passed over; what stands in lists and objects within is left out.

    >>> table_of_json_lines(['{"t": "2026-03-31T08:05:00Z", "ignition": true}', "{"], file="push")[0]
    ['t,ignition', '2026-03-31T08:05:00Z,true']
    """
    rows: list[dict[str, str]] = []
    skipped: list[Skipped] = []
    count = 0
    for number, line in enumerate(lines, 1):
        row = _row(line) if line.strip() else {}
        if row is None:
            count += 1
            if len(skipped) < SKIPPED_KEPT:
                skipped.append(Skipped(Place(file, number, line), EXPECTED))
        elif row:
            rows.append(row)
    names = list(dict.fromkeys(name for row in rows for name in row))[:MOST_COLUMNS]
    return [_written(names), *(_written([row.get(name, "") for name in names]) for row in rows)], tuple(skipped), count


def _row(line: str) -> dict[str, str] | None:
    try:
        values = json.loads(line)
    except (ValueError, RecursionError):
        return None
    if not isinstance(values, dict):
        return None
    return {name: text for name, value in values.items() if (text := _text(value)) is not None}


def _text(value: object) -> str | None:
    """A value as a cell; None for what is no single value."""
    if isinstance(value, str):
        return " ".join(value.split())
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    return repr(value) if isinstance(value, (int, float)) else None


def _written(cells: Sequence[str]) -> str:
    held = io.StringIO()
    csv.writer(held, lineterminator="").writerow(cells)
    return held.getvalue()
