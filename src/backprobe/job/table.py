"""The readings table back from the statements that stand."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from backprobe.errors import Place, Skipped
from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.formats.figures import VOLT_UNITS, read_figure
from backprobe.job.canonical import Body
from backprobe.job.kinds import LIGHTS, SCRIPT, text, texts, whole
from backprobe.job.lineage import Statement

ROW_KINDS = frozenset({"reading", "wire_declared", "circuit", "absent_key", "unread", "skipped_line"})


def unreadable(kind: str | None, body: Body) -> str | None:
    """Why a well-formed body of a row cannot be read as evidence; None where it can."""
    if "key" in body and kind in ROW_KINDS and text(body, "key") not in set(Key):
        return f"key: {text(body, 'key')!r} is no key position known to this version"
    if kind != "reading":
        return None
    if text(body, "capture") not in set(Capture):
        return f"capture: {text(body, 'capture')!r} is no capture known to this version"
    amounts = (text(body, name) for name in ("after_min", "load_A"))
    if _volts(body) is None or any(typed is not None and read_figure(typed) is None for typed in amounts):
        return "volts, after_min, load_A: expected figures such as 12.30"
    return None


def readings_table(rows: Sequence[Statement], places: Mapping[str, int]) -> ReadingsTable:
    """The table that `rows`, in their order and each readable, make up; `places` are the lines of rows that moved.

    A disputed reading is not believed: its wire and key count as unread, to be measured again. A key position is
    absent only where that is undisputed and nothing was read there. An unread place is settled by a reading that
    stands in another file or came from another device.
    """
    by_kind: dict[str | None, list[Statement]] = defaultdict(list)
    for row in rows:
        by_kind[row.kind].append(row)
    firm = [row for row in by_kind["reading"] if not row.disputed]
    readings = tuple(_reading(row.body, place_of(row, places)) for row in firm)
    facts = _facts(by_kind["circuit"])
    wires = _wires([*by_kind["wire_declared"], *by_kind["circuit"], *by_kind["reading"], *by_kind["unread"]])
    return ReadingsTable(
        readings=readings,
        wires=wires,
        facts={wire: facts.get(wire, WireFacts()) for wire in wires},
        absent_keys=_absent(by_kind["absent_key"], readings),
        unread=_unread(by_kind, firm),
        skipped=tuple(
            _skipped(row, places) for row in by_kind["skipped_line"] if text(row.body, "file") not in (SCRIPT, LIGHTS)
        ),
    )


def place_of(row: Statement, places: Mapping[str, int]) -> int | None:
    """The row's line, or its place in a list, as last said."""
    return places.get(row.id, place_in(row.body))


def place_in(body: Body) -> int | None:
    """The line, or the place in a list, that a row's body gives."""
    line = whole(body, "line")
    return line if line is not None else whole(body, "order")


def _reading(body: Body, line: int | None) -> Reading:
    volts = _volts(body)
    value_V, count_V = volts if volts else (0.0, 0.0)  # never: `unreadable` has refused it
    return Reading(
        wire=text(body, "wire") or "",
        key=Key(text(body, "key") or ""),
        volts=value_V,
        typed=text(body, "volts") or "",
        count_V=count_V,
        capture=Capture(text(body, "capture") or ""),
        after_min=_amount(body, "after_min"),
        load_A=_amount(body, "load_A"),
        line=line,
    )


def _volts(body: Body) -> tuple[float, float] | None:
    """The voltage as typed and one count of its last digit, both in V."""
    figure = read_figure(text(body, "volts") or "")
    shift = VOLT_UNITS.get(figure.unit.lower() or "v") if figure else None
    return None if figure is None or shift is None else (figure.value(shift), figure.count(shift))


def _amount(body: Body, name: str) -> float | None:
    figure = read_figure(text(body, name) or "")
    return None if figure is None else figure.value()


def _wires(rows: Sequence[Statement]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(text(row.body, "wire") or "" for row in rows))


def _facts(rows: Sequence[Statement]) -> dict[str, WireFacts]:
    """What was declared of each wire by all devices together; disputed circuits count too: one may be forbidden."""
    circuits: dict[str, dict[str, None]] = defaultdict(dict)
    marks: dict[str, dict[str, None]] = defaultdict(dict)
    for row in rows:
        wire = text(row.body, "wire") or ""
        circuits[wire].update(dict.fromkeys(texts(row.body, "circuit")))
        marks[wire].update(dict.fromkeys(texts(row.body, "marks")))
    return {wire: WireFacts(circuits=tuple(circuits[wire]), marks=tuple(marks[wire])) for wire in circuits}


def _absent(rows: Sequence[Statement], readings: Sequence[Reading]) -> frozenset[Key]:
    said = {Key(text(row.body, "key") or "") for row in rows if not row.disputed}
    return frozenset(said - {reading.key for reading in readings})


def _unread(by_kind: dict[str | None, list[Statement]], firm: Sequence[Statement]) -> tuple[tuple[str, Key], ...]:
    read = {(_spot(row), text(row.body, "file")) for row in firm}
    waiting = [
        _spot(row)
        for row in by_kind["unread"]
        if not any(spot == _spot(row) and file != text(row.body, "file") for spot, file in read)
    ]
    return tuple(dict.fromkeys([*waiting, *(_spot(row) for row in by_kind["reading"] if row.disputed)]))


def _spot(row: Statement) -> tuple[str, Key]:
    return text(row.body, "wire") or "", Key(text(row.body, "key") or "")


def _skipped(row: Statement, places: Mapping[str, int]) -> Skipped:
    place = Place(text(row.body, "file") or "", place_of(row, places), text(row.body, "text"))
    return Skipped(place, text(row.body, "expected") or "")
