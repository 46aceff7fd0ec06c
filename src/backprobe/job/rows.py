"""A readings table as bodies of entries: one a row, so that each can be corrected by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.errors import JobError
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.job.canonical import Body, Json

MOST_NAME = 2_000  # characters of a name: a longer one is refused, for a word cut off could be the one that forbids
MOST_TEXT = 8_000  # characters kept of a line that was passed over; the whole line is in the file's own blob


@dataclass(frozen=True, slots=True)
class Row:
    """What an entry of `kind` is to say."""

    kind: str
    body: Body
    blobs: tuple[str, ...] = ()


def rows_of(table: ReadingsTable, file: str) -> tuple[Row, ...]:
    """The rows that say all that `table` holds, read from `file`. Raises JobError where a name is far too long."""
    rows = (*_wires(table, file), *_readings(table, file), *_other_keys(table, file), *_skipped(table, file))
    return tuple(rows)


def _wires(table: ReadingsTable, file: str) -> Iterator[Row]:
    for order, wire in enumerate(table.wires):
        yield Row("wire_declared", {"file": file, "wire": _name(wire, file), "order": order})
    for order, (wire, circuit, marks) in enumerate(_facts(table)):
        named: list[Json] = [_name(mark, file) for mark in marks]
        known = None if circuit is None else _name(circuit, file)
        yield Row(
            "circuit", {"file": file, "wire": _name(wire, file), "circuit": known, "marks": named, "order": order}
        )


def _facts(table: ReadingsTable) -> Iterator[tuple[str, str | None, tuple[str, ...]]]:
    """One circuit or one mark at a time, with its wire."""
    for wire in table.wires:
        facts = table.facts.get(wire, WireFacts())
        yield from ((wire, circuit, ()) for circuit in facts.circuits)
        yield from ((wire, None, (mark,)) for mark in facts.marks)


def _readings(table: ReadingsTable, file: str) -> Iterator[Row]:
    for reading in table.readings:
        yield Row("reading", {"file": file, **reading_body(reading)})


def reading_body(reading: Reading) -> Body:
    """The body that says what `reading` says: figures as typed, amounts in the units of their names."""
    return {
        "wire": _name(reading.wire, f"line {reading.line}"),
        "key": str(reading.key),
        "volts": reading.typed,
        "capture": str(reading.capture),
        "after_min": figure(reading.after_min),
        "load_A": figure(reading.load_A),
        "line": reading.line,
    }


def figure(value: float | None) -> str | None:
    """`value` as text; whatever was typed with at most 15 digits reads back as the same value.

    >>> figure(10.0), figure(1.5), figure(0.1)
    ('10', '1.5', '0.1')
    """
    return None if value is None else f"{value:.15g}"


def _other_keys(table: ReadingsTable, file: str) -> Iterator[Row]:
    for key in sorted(table.absent_keys):
        yield Row("absent_key", {"file": file, "key": str(key)})
    for order, (wire, key) in enumerate(table.unread):
        yield Row("unread", {"file": file, "wire": _name(wire, file), "key": str(key), "order": order})


def _skipped(table: ReadingsTable, file: str) -> Iterator[Row]:
    for skipped in table.skipped:
        place = skipped.place
        text = None if place.text is None else plain(place.text)[:MOST_TEXT]
        yield Row("skipped_line", {"file": file, "text": text, "line": place.line, "expected": skipped.expected})


def plain(text: str) -> str:
    r"""`text` as UTF-8 can hold it: half characters, left by a broken file, are written out as \\udc80."""
    return text.encode("utf-8", "backslashreplace").decode("utf-8")


def short_name(name: str | None, where: str) -> str | None:
    """`name` as an entry can hold it; JobError, saying `where` it stands, if it is far longer than any name."""
    return None if name is None else _name(name, where)


def _name(name: str, where: str) -> str:
    if len(name) > MOST_NAME:
        raise JobError(f"{where}: a name of {len(name):,} characters: {name[:40]}…\nexpected: at most {MOST_NAME:,}")
    return plain(name)
