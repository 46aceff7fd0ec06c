"""What was seen of the unit's lights: columns `light,pattern` and, where it was timed, `after_s`, in any order."""

from __future__ import annotations

from collections.abc import Iterable

from backprobe.errors import Place, Skipped, UnreadableError
from backprobe.evidence.light_seen import LightSeen
from backprobe.formats.cells import cells_of, delimiter_of, numbered
from backprobe.formats.figures import read_figure

COLUMNS = ("light", "pattern", "after_s")
MOST_ROWS = 200
MOST_AFTER_S = 86_400.0


def read_lights(lines: Iterable[str], *, file: str) -> tuple[tuple[LightSeen, ...], tuple[Skipped, ...]]:
    """What was seen, and the rows that were passed over. Raises UnreadableError where there is no usable header.

    >>> read_lights(["light,pattern,after_s", "network,one flash a second,41"], file="lights.csv")[0][0].after_s
    41.0
    """
    rows = numbered(lines, file=file)
    number, header = next(rows, (None, ""))
    delimiter = delimiter_of(header, COLUMNS)
    names = [name.lower() for name in cells_of(header, delimiter)]
    if number is None or not {"light", "pattern"} <= set(names):
        place = Place(file) if number is None else Place(file, number, header)
        raise UnreadableError(place, f"a header line: {','.join(COLUMNS)}")
    seen: list[LightSeen] = []
    skipped: list[Skipped] = []
    for line, text in rows:
        if len(seen) + len(skipped) >= MOST_ROWS:
            raise UnreadableError(Place(file, line), f"at most {MOST_ROWS} rows")
        read = _row(dict(zip(names, cells_of(text, delimiter), strict=False)), line)
        if isinstance(read, str):
            skipped.append(Skipped(Place(file, line, text), read))
        else:
            seen.append(read)
    return tuple(seen), tuple(skipped)


def _row(cells: dict[str, str], line: int) -> LightSeen | str:
    """What was seen in a row, or what was expected instead."""
    light, pattern, after = (cells.get(name, "") for name in COLUMNS)
    if not light or not pattern:
        return "the name of a light, and the pattern it showed"
    if not after:
        return LightSeen(light=light, pattern=pattern, line=line)
    figure = read_figure(after)
    if figure is None or figure.unit not in ("", "s") or not 0 <= figure.value() <= MOST_AFTER_S:
        return f"seconds since power-up, from 0 to {MOST_AFTER_S:.0f}"
    return LightSeen(light=light, pattern=pattern, after_s=figure.value(), line=line)
